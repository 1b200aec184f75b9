import { rewriteSystem } from '../../notation/print/rewriteSystem';
import type { Place, System, TabDocument } from '../../notation/tabDocument';
import { placeAsItIs } from '../change/rewrite';
import { insertionLine } from './assemble';
import { newCanvas, type Canvas } from './canvas';

/** Where new bars go. */
export type NewBarsPlace =
  /** Before a line, as paragraphs of their own. */
  | { readonly line: number }
  /** Into a system, which is divided at a bar sign. */
  | { readonly system: System; readonly before: readonly string[]; readonly after: readonly string[] };

/** A canvas of new bars alone, and where they go. */
export interface NewBars {
  readonly canvas: Canvas;
  readonly at: NewBarsPlace;
}

/** New bars outside of bars that are there: behind the system at a place, or near the place outside of systems. */
export function newBarsNear(document: TabDocument, { line }: Place): NewBars {
  const system = document.systemAt(line);
  const at = system ? lineBehind(system) : insertionLine(document, line);
  const header = system?.header ?? document.headerAt(at - 1);
  const before = document.systems.findLast(
    ({ firstLine, header: { part } }) => firstLine < at && part === header.part,
  );
  const number = before ? document.placeOf(before).firstBar + before.reading.bars.length : 1;
  return { canvas: newCanvas(header, number), at: { line: at } };
}

/**
 * New bars behind the bar at a place in a system, which is divided there; behind the system where it cannot be divided
 * or ends there.
 */
export function newBarsBehind(document: TabDocument, system: System, place: Place): NewBars {
  const last = system.reading.bars.length - 1;
  const bar = uncutBar(system, barAtPlace(system, place));
  const before = bar < last ? barsOf(system, 0, bar) : undefined;
  const after = before && barsOf(system, bar + 1, last);
  if (!before || !after) return newBarsNear(document, place);
  const canvas = newCanvas(system.header, document.placeOf(system).firstBar + bar + 1);
  return { canvas, at: { system, before, after } };
}

/** The line behind a system. */
export function lineBehind({ firstLine, lines }: System): number {
  return firstLine + lines.length;
}

function barAtPlace({ firstLine, lines, reading: { bars } }: System, { line, character }: Place): number {
  const text = lines[line - firstLine];
  if (text?.kind !== 'string' && text?.kind !== 'row') return bars.length - 1;
  const at = bars.findIndex(({ endColumn }) => character - text.bodyStart < endColumn);
  return at < 0 ? bars.length - 1 : at;
}

/** The bar itself, or the first one behind it at whose end no joined notes are cut apart and no remark is divided. */
function uncutBar({ reading: { notes, bars, repeats }, lines }: System, wanted: number): number {
  const remarked = lines.some((line) => line.kind === 'string' && line.remark?.times !== undefined);
  if (remarked && repeats.length > 0) return bars.length - 1;
  let bar = wanted;
  for (const note of notes) {
    const from = note.joinedFrom === undefined ? undefined : notes[note.joinedFrom];
    if (from && from.bar <= bar && note.bar > bar) bar = note.bar;
  }
  return bar;
}

function barsOf(system: System, firstBar: number, lastBar: number): string[] | undefined {
  return rewriteSystem({
    system,
    firstBar,
    lastBar,
    header: system.header,
    place: (index) => placeAsItIs(system, index),
    keepLabels: true,
    strings: system.reading.strings.map(({ number }) => number),
    position: firstBar === 0 ? system : { firstInPart: false, firstInSection: false },
  });
}
