import type { Section, System, TabDocument } from '../../notation/tabDocument';

/** What one part has of one section: its systems there, in order. */
export interface Stretch {
  /** As written; undefined for what stands before the first `part`. */
  readonly part: string | undefined;
  readonly section: Section | undefined;
  /** Indices in `document.systems`, at least one. Indices stay while systems are edited and take each other's place. */
  readonly systems: readonly number[];
}

/** Two stretches that are meant to be played together; `later` belongs to the part that begins later. */
export interface StretchPair {
  readonly earlier: Stretch;
  readonly later: Stretch;
}

/**
 * The stretches of a document's parts that clearly belong together, each beside the first part that has it too. Parts
 * that stand under one heading share that section. Parts with headings of their own share those of the same name, the
 * first with the first and so on. What stands before any heading belongs together when the same section follows it in
 * both, or none does.
 */
export function pairsOf(document: TabDocument): readonly StretchPair[] {
  const { parts } = document;
  if (parts.length < 2) return [];
  const byPart = stretchesOf(document);
  const pairs: StretchPair[] = [];
  parts.forEach((part, at) => {
    const told = new Set<Stretch>();
    for (const before of parts.slice(0, at)) {
      const [first, second] = [byPart.get(before) ?? [], byPart.get(part) ?? []];
      for (const [earlier, later] of together(first, second)) {
        if (told.has(later)) continue;
        told.add(later);
        pairs.push({ earlier, later });
      }
    }
  });
  return pairs;
}

function stretchesOf({ systems }: TabDocument): ReadonlyMap<string | undefined, readonly Stretch[]> {
  const byPart = new Map<string | undefined, Stretch[]>();
  const open = new Map<string | undefined, { section: Section | undefined; systems: number[] }>();
  systems.forEach(({ header: { part }, section }, index) => {
    const last = open.get(part);
    if (last && last.section === section) {
      last.systems.push(index);
      return;
    }
    const next = { part, section, systems: [index] };
    open.set(part, next);
    const list = byPart.get(part);
    if (list) list.push(next);
    else byPart.set(part, [next]);
  });
  return byPart;
}

function together(first: readonly Stretch[], all: readonly Stretch[]): (readonly [Stretch, Stretch])[] {
  const second = headless(first, all);
  const shared = second.some(({ section }) => section && first.some((other) => other.section === section));
  const keysOf = (list: readonly Stretch[]): readonly unknown[] =>
    shared ? list.map(({ section }) => section) : namesInOrder(list);
  const [firstKeys, secondKeys] = [keysOf(first), keysOf(second)];
  const found: (readonly [Stretch, Stretch])[] = [];
  second.forEach((later, at) => {
    const key = secondKeys[at];
    const there = later.section === undefined ? 0 : firstKeys.indexOf(key);
    const earlier = first[there];
    if (!earlier || (earlier.section === undefined) !== (later.section === undefined)) return;
    if (later.section === undefined && (at !== 0 || firstKeys[1] !== secondKeys[1])) return;
    found.push([earlier, later]);
  });
  return found;
}

/**
 * A part that is written below another one begins under that one's last heading, which it need not mean. Where that
 * heading is all that the two share, and not all that they have, the part is taken to begin before any heading.
 */
function headless(first: readonly Stretch[], second: readonly Stretch[]): readonly Stretch[] {
  const [begin, ...rest] = second;
  const heading = begin?.section;
  if (!begin || !heading || first.at(-1)?.section !== heading) return second;
  if (first.length === 1 && rest.length === 0) return second;
  const more = rest.some(({ section }) => first.some((other) => other.section === section));
  return more ? second : [{ ...begin, section: undefined }, ...rest];
}

/** `verse 0`, `chorus 0`, `verse 1`: a heading's name and how often it came before in its part. */
function namesInOrder(list: readonly Stretch[]): readonly (string | undefined)[] {
  const seen = new Map<string, number>();
  return list.map(({ section }) => {
    if (!section) return undefined;
    const name = section.name.trim().toLowerCase();
    const before = seen.get(name) ?? 0;
    seen.set(name, before + 1);
    return `${name} ${before}`;
  });
}

/** Whether a system's bars, meter and repeats are the same as those of the one it took the place of. */
export function sameBars(a: System, b: System): boolean {
  if (a.header.meter !== b.header.meter) return false;
  const [one, other] = [a.reading, b.reading];
  return (
    one.bars.length === other.bars.length &&
    one.bars[0]?.pickup === other.bars[0]?.pickup &&
    one.repeats.length === other.repeats.length &&
    one.repeats.every((repeat, i) => {
      const its = other.repeats[i];
      return (
        its?.firstBar === repeat.firstBar && its.lastBar === repeat.lastBar && its.times === repeat.times
      );
    })
  );
}
