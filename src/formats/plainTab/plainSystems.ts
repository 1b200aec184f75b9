import type { PlainLine } from './plainLines';
import { stringCandidate, type StringCandidate } from './stringCandidate';

/** Lines that are played together, top line first. */
export interface PlainSystem {
  readonly strings: readonly StringCandidate[];
  /** Whether every line has a label. */
  readonly labelled: boolean;
}

/** Neither fewer nor more lines without labels are taken for a staff. */
const LEAST_BARE = 4;
const MOST_LINES = 14;

/**
 * Finds the systems of a text: runs of lines that look like strings, parted where their labels start again or, without
 * labels, by a number of lines that an instrument has.
 * @param usual the number of strings the text speaks of, where it does
 */
export function plainSystems(lines: readonly PlainLine[], usual: number | undefined): PlainSystem[] {
  const systems: PlainSystem[] = [];
  let count = usual;
  for (const block of blocks(lines)) {
    for (const strings of parted(block, count)) {
      const system = checked(strings);
      if (!system) continue;
      systems.push(system);
      if (system.strings.length >= LEAST_BARE) count ??= system.strings.length;
    }
  }
  return systems;
}

function blocks(lines: readonly PlainLine[]): StringCandidate[][] {
  const sure = lines.map(({ columns, index }) => stringCandidate(columns, index));
  const candidates = sure.map((candidate, i) => {
    const line = lines[i];
    const beside = [sure[i - 1], sure[i + 1]].some((other) => other !== undefined && other.label !== '');
    return candidate ?? (line && beside ? stringCandidate(line.columns, line.index, true) : undefined);
  });
  const found: StringCandidate[][] = [];
  for (let i = 0; i < candidates.length; i++) {
    if (!candidates[i]) continue;
    const spread = spreadBlock(lines, candidates, i);
    const block = spread ?? [];
    if (!spread) for (let at = i, next = candidates[at]; next; next = candidates[++at]) block.push(next);
    found.push(block);
    i = block.at(-1)?.line ?? i;
  }
  return found;
}

/** A staff with a blank line after every string, as some pages give it. */
function spreadBlock(
  lines: readonly PlainLine[],
  candidates: readonly (StringCandidate | undefined)[],
  from: number,
): StringCandidate[] | undefined {
  const block: StringCandidate[] = [];
  for (let at = from; ; at += 2) {
    const candidate = candidates[at];
    if (!candidate || candidate.label === '') break;
    block.push(candidate);
    if (candidates[at + 1] || lines[at + 1]?.columns.trim() !== '') break;
  }
  return block.length >= LEAST_BARE ? block : undefined;
}

function parted(block: readonly StringCandidate[], usual: number | undefined): StringCandidate[][] {
  const strings = withTrueLabels(block);
  const n = strings.length;
  const size = strings.every(({ label }) => label !== '') ? labelPeriod(strings) : bareSize(n, usual);
  if (size === n) return [strings];
  return Array.from({ length: Math.ceil(n / size) }, (_, i) => strings.slice(i * size, (i + 1) * size));
}

/** Numbers that do not count strings are frets on lines without labels. */
function withTrueLabels(block: readonly StringCandidate[]): StringCandidate[] {
  const numbers = block.filter(({ label }) => /^\d/.test(label));
  if (numbers.length === 0 || counts(numbers.map(({ label }) => Number(label)))) return [...block];
  return block.map((candidate) =>
    /^\d/.test(candidate.label) ? { ...candidate, label: '', ...candidate.unlabelled } : candidate,
  );
}

/** Whether numbers go up or down by one, as the strings of one or more systems do. */
function counts(numbers: readonly number[]): boolean {
  const steps = numbers.slice(1).map((number, i) => number - (numbers[i] ?? 0));
  return (
    numbers.length > 1 && (steps.every((s) => s === 1 || s < 0) || steps.every((s) => s === -1 || s > 0))
  );
}

/** After how many lines the labels start again; all of them where they do not. */
function labelPeriod(strings: readonly StringCandidate[]): number {
  const labels = strings.map(({ label }) => label.toLowerCase());
  const n = labels.length;
  for (let size = 2; size <= Math.min(n / 2, MOST_LINES); size++) {
    if (n % size === 0 && labels.every((label, i) => i < size || label === labels[i - size])) return size;
  }
  return n <= MOST_LINES ? n : Math.max(1, restart(labels));
}

/** Where the first label comes again, for systems that do not all have the same lines. */
function restart(labels: readonly string[]): number {
  const again = labels.indexOf(labels[0] ?? '', 5);
  return again > 0 ? again : MOST_LINES;
}

function bareSize(n: number, usual: number | undefined): number {
  if (usual !== undefined && n % usual === 0) return usual;
  if (n <= 8) return n;
  return [6, 4, 5, 7, 8].find((size) => n % size === 0) ?? n;
}

function checked(strings: readonly StringCandidate[]): PlainSystem | undefined {
  const n = strings.length;
  const labelled = strings.every(({ label }) => label !== '');
  if (n > MOST_LINES || n < (labelled ? 2 : LEAST_BARE)) return undefined;
  // One letter over and over is a list, no staff.
  if (labelled && new Set(strings.map(({ label }) => label.toLowerCase())).size < 2) return undefined;
  const drawn = strings.filter(({ spaced }) => spaced).length;
  if (drawn === n && n < 3) return undefined;
  const played = strings.some(({ run }) => /\d|[xX]/.test(run));
  return played || labelled ? { strings, labelled } : undefined;
}
