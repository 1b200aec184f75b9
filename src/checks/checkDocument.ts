import type { FieldGroup, RingingNote, System, TabDocument } from '../notation/tabDocument';
import type { CheckSettings, Diagnostic, Finding, Scene, Severity, SystemFinding } from './check';
import { FIELD_CHECKS, NEAR_MISS_CHECKS, NEIGHBOUR_CHECKS, PARTS_CHECKS, SYSTEM_CHECKS } from './checks';
import { placeFinding } from './support/place';
import { pairsOf, sameBars, type StretchPair } from './support/stretches';

/** What a check found, with the check's code and its severity by default. */
interface Found<F> {
  readonly code: string;
  readonly severity: Severity;
  readonly finding: F;
}

interface Remembered {
  /** Undefined where no check asked what rings into the system. */
  readonly ringVersion: number | undefined;
  readonly reach: number;
  readonly found: readonly Found<SystemFinding>[] | undefined;
}

/** What systems were found to have, wherever they stand. */
const bySystem = new WeakMap<System, Remembered>();

/** The diagnostics of a document as they were last worked out, in the order of its systems. */
interface Memo {
  settings: CheckSettings;
  groups: readonly FieldGroup[];
  nearMisses: readonly number[];
  systems: System[];
  rings: number[];
  /** Undefined for a system with nothing to tell, as nearly all are. */
  diagnostics: (readonly Diagnostic[] | undefined)[];
  /** The same for what a system and the one before it are together. */
  pairs: (readonly Diagnostic[] | undefined)[];
  /** What parts have of the sections that they share, and what is to tell of each pair. */
  stretches: readonly StretchPair[];
  parts: (readonly Diagnostic[] | undefined)[];
  fields: readonly Diagnostic[];
  lines: readonly Diagnostic[];
  /** All of them, as long as nothing has changed. */
  all: readonly Diagnostic[];
}

const memos = new WeakMap<TabDocument, Memo>();

/**
 * Every diagnostic of a document, in the order of the text. What was found is remembered system by system, so that
 * after an edit inside one system only that one is checked again; the same list comes back as long as nothing changed.
 * @example checkDocument(new Document('G|--5q--|'), { reach: 130, severities: {} })[0].code // 'unknown-sign'
 */
export function checkDocument(document: TabDocument, settings: CheckSettings): readonly Diagnostic[] {
  const known = memos.get(document);
  const memo = known && sameSettings(known.settings, settings) ? known : emptyMemo(settings);
  if (memo !== known) memos.set(document, memo);
  let changed = memo !== known;
  const { systems, fieldGroups, nearMisses } = document;
  const moved = memo.groups !== fieldGroups || memo.systems.length !== systems.length;
  if (moved) {
    changed = true;
    memo.groups = fieldGroups;
    memo.systems = [];
    memo.rings = [];
    memo.diagnostics = Array<undefined>(systems.length).fill(undefined);
    memo.pairs = Array<undefined>(systems.length).fill(undefined);
    memo.fields = checkFields(document, settings);
    memo.stretches = pairsOf(document);
    memo.parts = memo.stretches.map((pair) => checkParts(document, pair, settings));
  }
  if (moved || memo.nearMisses !== nearMisses) {
    changed = true;
    memo.nearMisses = nearMisses;
    memo.lines = checkNearMisses(document, settings);
  }
  let above = false;
  for (let i = 0; i < systems.length; i++) {
    const system = systems[i];
    if (!system || (memo.systems[i] === system && memo.rings[i] === system.ringVersion)) continue;
    changed = true;
    const before = memo.systems[i];
    if (before && before !== system && memo.stretches.length > 0 && !sameBars(before, system))
      renewParts(memo, document, i, settings);
    if (before !== system) {
      memo.pairs[i] = checkPair(document, systems[i - 1], system, settings);
      const next = systems[i + 1];
      if (next && memo.systems[i + 1] === next)
        memo.pairs[i + 1] = checkPair(document, system, next, settings);
    }
    // What stands right above a system is told by what the system is.
    if (before !== system && !moved && nearMisses.includes(system.firstLine - 1)) above = true;
    memo.systems[i] = system;
    memo.rings[i] = system.ringVersion;
    memo.diagnostics[i] = checkSystem(document, system, settings);
  }
  if (above) memo.lines = checkNearMisses(document, settings);
  if (changed) memo.all = collect(memo);
  return memo.all;
}

function sameSettings(a: CheckSettings, b: CheckSettings): boolean {
  return a === b || (a.reach === b.reach && a.severities === b.severities && a.strain === b.strain);
}

function emptyMemo(settings: CheckSettings): Memo {
  return {
    settings,
    groups: [],
    nearMisses: [],
    systems: [],
    rings: [],
    diagnostics: [],
    pairs: [],
    stretches: [],
    parts: [],
    fields: [],
    lines: [],
    all: [],
  };
}

/** Checks again the stretches that a system belongs to. */
function renewParts(memo: Memo, document: TabDocument, index: number, settings: CheckSettings): void {
  memo.stretches.forEach((pair, at) => {
    if (pair.earlier.systems.includes(index) || pair.later.systems.includes(index))
      memo.parts[at] = checkParts(document, pair, settings);
  });
}

function collect({ diagnostics, pairs, parts, fields, lines }: Memo): readonly Diagnostic[] {
  const all: Diagnostic[] = [...fields, ...lines];
  for (const pair of parts) if (pair) for (const item of pair) all.push(item);
  for (let i = 0; i < diagnostics.length; i++) {
    const pair = pairs[i];
    const own = diagnostics[i];
    if (pair) for (const item of pair) all.push(item);
    if (own) for (const item of own) all.push(item);
  }
  return all.sort(byPlace);
}

function byPlace(a: Diagnostic, b: Diagnostic): number {
  return a.range.start.line - b.range.start.line || a.range.start.character - b.range.start.character;
}

function shown(
  { code, severity }: { readonly code: string; readonly severity: Severity },
  finding: Finding,
  settings: CheckSettings,
): Diagnostic | undefined {
  const chosen = settings.severities[code] ?? finding.severity ?? severity;
  return chosen === 'off' ? undefined : { ...finding, code, severity: chosen };
}

// ---- what is checked

function checkSystem(
  document: TabDocument,
  system: System,
  settings: CheckSettings,
): readonly Diagnostic[] | undefined {
  const found = findInSystem(document, system, settings.reach);
  if (!found) return undefined;
  return found.flatMap((item) => shown(item, placeFinding(item.finding, document, system), settings) ?? []);
}

function findInSystem(document: TabDocument, system: System, reach: number): Remembered['found'] {
  const known = bySystem.get(system);
  const current = known?.ringVersion === undefined || known.ringVersion === system.ringVersion;
  if (known && current && known.reach === reach) return known.found;
  const { reading, header, ringVersion } = system;
  let ringing: readonly RingingNote[] | undefined;
  const scene: Scene = {
    system,
    reading,
    header,
    reach,
    // Looked up only where a check asks: most systems have no chords to compare.
    get ringing() {
      return (ringing ??= document.ringingInto(system));
    },
  };
  const found: Found<SystemFinding>[] = [];
  for (const { code, severity, run } of SYSTEM_CHECKS) {
    for (const finding of run(scene)) found.push({ code, severity, finding });
  }
  const result = found.length === 0 ? undefined : found;
  bySystem.set(system, { ringVersion: ringing && ringVersion, reach, found: result });
  return result;
}

function checkPair(
  document: TabDocument,
  before: System | undefined,
  system: System | undefined,
  settings: CheckSettings,
): readonly Diagnostic[] | undefined {
  if (!before || !system) return undefined;
  const found: Diagnostic[] = [];
  for (const check of NEIGHBOUR_CHECKS) {
    for (const finding of check.run(document, before, system)) {
      const item = shown(check, finding, settings);
      if (item) found.push(item);
    }
  }
  return found.length === 0 ? undefined : found;
}

function checkParts(
  document: TabDocument,
  pair: StretchPair,
  settings: CheckSettings,
): readonly Diagnostic[] | undefined {
  const found = PARTS_CHECKS.flatMap((check) =>
    check.run(document, pair).flatMap((finding) => shown(check, finding, settings) ?? []),
  );
  return found.length === 0 ? undefined : found;
}

function checkFields(document: TabDocument, settings: CheckSettings): readonly Diagnostic[] {
  return document.fieldGroups.flatMap((group) =>
    FIELD_CHECKS.flatMap((check) =>
      check.run(group, document, settings).flatMap((finding) => shown(check, finding, settings) ?? []),
    ),
  );
}

function checkNearMisses(document: TabDocument, settings: CheckSettings): readonly Diagnostic[] {
  return document.nearMisses.flatMap((line) =>
    NEAR_MISS_CHECKS.flatMap((check) =>
      check.run(document, line).flatMap((finding) => shown(check, finding, settings) ?? []),
    ),
  );
}
