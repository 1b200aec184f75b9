import { subtract, ZERO } from '../../music/fraction';
import { sameTuning } from '../../instrument/tuningFormat';
import type { Header } from '../../notation/header';
import type { NotePlace } from '../../notation/print/pieces';
import { rewriteSystem, type RewriteRequest } from '../../notation/print/rewriteSystem';
import type { RowLine, RowMark } from '../../notation/parsedLine';
import type { System, TabDocument } from '../../notation/tabDocument';
import { sameFields } from './fieldsInForce';
import { withOmitted, type OmittedNote } from './omitted';
import { hasStrings, isWhole, notesOf, type Slice } from './slices';

/** What becomes of a passage: the fields it will stand under and the place of each of its notes. */
export interface Rewriting {
  /** The fields over a slice as they will be. */
  readonly header: (slice: Slice) => Header;
  /** The new place of a note (by its index in the system's reading); undefined leaves it out. */
  readonly place: (slice: Slice, index: number) => NotePlace | undefined;
  /** New text of a row's mark. */
  readonly rewrite?: (slice: Slice, row: RowLine, mark: RowMark) => string;
  readonly keepLabels: boolean;
  /** The name to leave in the text where a note that has no place stood; undefined for none. */
  readonly omitted?: (slice: Slice, index: number) => string | undefined;
}

/** A stretch of lines and the header that must be in force over it. */
export interface Block {
  readonly lines: readonly string[];
  readonly header: Header;
}

/** The blocks that take the place of a system. */
export interface Replacement {
  readonly system: System;
  readonly blocks: readonly Block[];
}

export type RewriteResult =
  | {
      readonly ok: true;
      readonly replacements: readonly Replacement[];
      /** Notes that have a place and yet could not be written beside the others, by `keyOf`. */
      readonly unwritten: ReadonlySet<string>;
    }
  /** `cut` when it is the cut through the slice's system that cannot be written. */
  | { readonly ok: false; readonly slice: Slice; readonly cut: boolean };

/** Names a note of a passage. */
export function keyOf(slice: Slice, index: number): string {
  return `${slice.index}:${index}`;
}

/**
 * Writes the slices anew; what stands before and after a slice in its system is split off at the bar sign. As few notes
 * as can be are left out where their signs cannot be written on the strings that they went to.
 */
export function rewriteSlices(slices: readonly Slice[], rewriting: Rewriting): RewriteResult {
  const replacements: Replacement[] = [];
  const unwritten = new Set<string>();
  for (const slice of slices) {
    const around = partsAround(slice, rewriting);
    if (!around) return { ok: false, slice, cut: true };
    let block = around === 'nothing changes' ? asItStands(slice, rewriting) : blockOf(slice, rewriting);
    if (!block) {
      const fewer = leavingOut(slice, rewriting);
      if (!fewer) return { ok: false, slice, cut: !isWhole(slice) };
      block = fewer.block;
      for (const index of fewer.left) unwritten.add(keyOf(slice, index));
    }
    const [before, after] = around === 'nothing changes' ? [[], []] : around;
    const told = tellingOmitted(slice, rewriting, block, unwritten);
    replacements.push({ system: slice.system, blocks: [...before, told, ...after] });
  }
  return { ok: true, replacements, unwritten };
}

/** The block with a row that names what was left out of the slice, where that is wanted. */
function tellingOmitted(
  slice: Slice,
  rewriting: Rewriting,
  block: Block,
  unwritten: ReadonlySet<string>,
): Block {
  const { system, firstBar } = slice;
  const start = system.reading.bars[firstBar]?.onset ?? ZERO;
  const notes = notesOf(slice).flatMap(({ index, note }): OmittedNote[] => {
    const isOut = rewriting.place(slice, index) === undefined || unwritten.has(keyOf(slice, index));
    const name = isOut ? rewriting.omitted?.(slice, index) : undefined;
    return name === undefined ? [] : [{ name, onset: subtract(note.onset, start) }];
  });
  if (notes.length === 0) return block;
  return { ...block, lines: withOmitted(block.lines, notes, block.header, positionOf(system, firstBar)) };
}

/** More rewrites than this are not tried for one system. */
const MOST_TRIES = 60;

/** The slice without the notes that cannot be written: one, if that will do, else as many from the first as it takes. */
function leavingOut(
  slice: Slice,
  rewriting: Rewriting,
): { readonly block: Block; readonly left: readonly number[] } | undefined {
  const placed = notesOf(slice).filter(({ index }) => rewriting.place(slice, index) !== undefined);
  // Notes with signs about them first: a plain note can be written anywhere.
  const signs = ({ note }: (typeof placed)[number]): number =>
    -note.techniques.length - (note.joinedFrom === undefined ? 0 : 1);
  const order = [...placed].sort((a, b) => signs(a) - signs(b)).map(({ index }) => index);
  const without = (left: readonly number[]): Block | undefined =>
    blockOf(slice, {
      ...rewriting,
      place: (one, index) => (left.includes(index) ? undefined : rewriting.place(one, index)),
    });
  for (const index of order.slice(0, MOST_TRIES)) {
    const block = without([index]);
    if (block) return { block, left: [index] };
  }
  for (let count = 2; count <= Math.min(order.length, MOST_TRIES); count++) {
    const left = order.slice(0, count);
    const block = without(left);
    if (block) return { block, left };
  }
  return undefined;
}

/** What is split off before and after a slice; undefined when it cannot be written by itself. */
function partsAround(
  slice: Slice,
  rewriting: Rewriting,
): readonly [Block[], Block[]] | 'nothing changes' | undefined {
  const { system, firstBar, lastBar } = slice;
  const last = system.reading.bars.length - 1;
  const header = rewriting.header(slice);
  if (staysAsItIs(slice, rewriting, header) && (sameFields(system.header, header) || isWhole(slice)))
    return 'nothing changes';
  const before = firstBar > 0 ? asItIs(system, 0, firstBar - 1) : [];
  const after = lastBar < last ? asItIs(system, lastBar + 1, last) : [];
  return before && after && [before, after];
}

function asItStands(slice: Slice, rewriting: Rewriting): Block {
  return { lines: slice.system.lines.map((line) => line.text), header: rewriting.header(slice) };
}

function blockOf(slice: Slice, rewriting: Rewriting): Block | undefined {
  const { system, firstBar, lastBar } = slice;
  const header = rewriting.header(slice);
  const request: RewriteRequest = {
    system,
    firstBar,
    lastBar,
    header,
    place: (index) => {
      const bar = system.reading.notes[index]?.bar ?? -1;
      return bar >= firstBar && bar <= lastBar ? rewriting.place(slice, index) : placeAsItIs(system, index);
    },
    keepLabels: rewriting.keepLabels,
    position: positionOf(system, firstBar),
    rewrite: (row, mark) => rewriting.rewrite?.(slice, row, mark) ?? mark.text,
  };
  const strings = fewerStrings(slice, rewriting, header);
  const lines =
    (strings && rewriteSystem({ ...request, strings })) ??
    rewriteSystem(request) ??
    // Rather than lose a note, what is ended may end at another moment.
    rewriteSystem({ ...request, stopsMayMove: true });
  return lines && { lines, header };
}

/** Whether not a sign of a slice changes: its notes, its rows and its labels stay. */
function staysAsItIs(slice: Slice, rewriting: Rewriting, header: Header): boolean {
  const { system } = slice;
  if (!rewriting.keepLabels && !sameTuning(system.header.tuning, header.tuning)) return false;
  const rows = system.lines.every(
    (line) =>
      line.kind !== 'row' || line.marks.every((mark) => rewriting.rewrite?.(slice, line, mark) === mark.text),
  );
  return (
    (rows || !rewriting.rewrite) &&
    notesOf(slice).every(({ index }) => samePlace(rewriting.place(slice, index), placeAsItIs(system, index)))
  );
}

function samePlace(a: NotePlace | undefined, b: NotePlace | undefined): boolean {
  return a?.string === b?.string && a?.fret === b?.fret && a?.touched === b?.touched;
}

function stringsOf(system: System): number[] {
  return system.reading.strings.map(({ number }) => number);
}

/**
 * The strings to print of a system that leaves strings out: no more than its notes need, and those that it has where
 * the tuning stays. Undefined for all of them.
 */
function fewerStrings(slice: Slice, { place, keepLabels }: Rewriting, header: Header): number[] | undefined {
  if (!hasStrings(slice)) return [];
  const own = stringsOf(slice.system);
  const count = header.tuning.strings.length;
  if (own.length >= slice.system.header.tuning.strings.length || own.some((number) => number < 1))
    return undefined;
  const needed = notesOf(slice).flatMap(({ index }) => place(slice, index)?.string ?? []);
  const stay = keepLabels || needed.length === 0;
  const wanted = new Set(stay ? [...own.filter((number) => number <= count), ...needed] : needed);
  // A string between two others is printed with them.
  if (!stay)
    for (let number = Math.min(...needed); number < Math.max(...needed); number++) wanted.add(number);
  return wanted.size === 0 ? undefined : [...wanted].sort((a, b) => a - b);
}

function positionOf(system: System, firstBar: number): { firstInPart: boolean; firstInSection: boolean } {
  return firstBar > 0 ? { firstInPart: false, firstInSection: false } : system;
}

function asItIs(system: System, firstBar: number, lastBar: number): Block[] | undefined {
  const lines = rewriteSystem({
    system,
    firstBar,
    lastBar,
    header: system.header,
    place: (index) => placeAsItIs(system, index),
    keepLabels: true,
    strings: stringsOf(system),
    position: positionOf(system, firstBar),
  });
  return lines && [{ lines, header: system.header }];
}

/** Where a note stands. */
export function placeAsItIs(system: System, index: number): NotePlace | undefined {
  const note = system.reading.notes[index];
  if (!note) return undefined;
  return {
    string: note.string,
    fret: note.fret ?? 0,
    ...(note.touched === undefined ? {} : { touched: note.touched }),
  };
}

/** The lines of a document with replacements in place, and the header each new block must stand under. */
export function replaced(
  document: TabDocument,
  replacements: readonly Replacement[],
): { lines: string[]; required: Map<number, Header> } {
  const bySystem = new Map(replacements.map((replacement) => [replacement.system.firstLine, replacement]));
  const systems = new Map(document.systems.map((system) => [system.firstLine, system]));
  const lines: string[] = [];
  const required = new Map<number, Header>();
  for (let i = 0; i < document.lineCount; i++) {
    const replacement = bySystem.get(i);
    const system = systems.get(i);
    if (!replacement) {
      if (system) required.set(lines.length, system.header);
      lines.push(document.line(i).text);
      continue;
    }
    replacement.blocks.forEach((block, k) => {
      if (k > 0) lines.push('');
      required.set(lines.length, block.header);
      lines.push(...block.lines);
    });
    i += replacement.system.lines.length - 1;
  }
  return { lines, required };
}
