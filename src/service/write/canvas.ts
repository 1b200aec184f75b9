import { add, compare, equal, fraction, multiply, subtract, ZERO, type Fraction } from '../../music/fraction';
import { barLength } from '../../music/meter';
import { columnsFrom } from '../../notation/columns';
import type { Header } from '../../notation/header';
import type { Place, System, TabDocument } from '../../notation/tabDocument';

/** A system that is written into. */
export interface Stretch {
  readonly system: System;
  /** When it begins on the canvas, in quarter notes. */
  readonly start: Fraction;
}

/**
 * What is written on: systems that follow each other under the same fields, and new bars behind them. Times are quarter
 * notes from the start of the first system; without one, from the start of the first new bar.
 */
export interface Canvas {
  readonly header: Header;
  readonly stretches: readonly Stretch[];
  /** Where writing begins. */
  readonly from: Fraction;
  /** The end of the bars that are there: new ones begin here. */
  readonly end: Fraction;
  /** Number of the bar that begins at time 0. */
  readonly firstBar: number;
}

/** Whether a system has lines that notes can be written on. */
export function hasStringLines({ lines }: System): boolean {
  return lines.some(({ kind }) => kind === 'string');
}

/** The canvas from a place in a system on. */
export function canvasIn(document: TabDocument, system: System, place: Place): Canvas {
  const stretches: Stretch[] = [{ system, start: ZERO }];
  let end = system.reading.length;
  for (const next of following(document, system)) {
    stretches.push({ system: next, start: end });
    end = add(end, next.reading.length);
  }
  return {
    header: system.header,
    stretches,
    from: timeAt(system, place),
    end,
    firstBar: document.placeOf(system).firstBar,
  };
}

/** New bars alone. */
export function newCanvas(header: Header, firstBar: number): Canvas {
  return { header, stretches: [], from: ZERO, end: ZERO, firstBar };
}

/** The systems that go on where one ends: of its part and heading, under its fields, with strings. */
function following(document: TabDocument, system: System): readonly System[] {
  const found: System[] = [];
  for (const next of document.systems.slice(document.systems.indexOf(system) + 1)) {
    if (next.header.part !== system.header.part) continue;
    if (next.header !== system.header || next.section !== system.section || !hasStringLines(next)) break;
    found.push(next);
  }
  return found;
}

/** The time of the column at a place: of a label the start, past the last bar sign the end. */
function timeAt({ firstLine, lines, reading }: System, { line, character }: Place): Fraction {
  const text = lines[line - firstLine];
  if (text?.kind !== 'string' && text?.kind !== 'row') return ZERO;
  const end = text.kind === 'string' ? text.bodyEnd : text.text.length;
  const column = columnsFrom(text.text, text.bodyStart)(Math.min(character, end));
  const last = reading.bars.at(-1);
  if (!last || column >= last.endColumn) return reading.length;
  return reading.columnTimes[Math.max(column, reading.bars[0]?.startColumn ?? 0)] ?? reading.length;
}

/** A bar of a canvas. */
export interface CanvasBar {
  readonly number: number;
  readonly start: Fraction;
  readonly length: Fraction;
}

/** The bar that a time lies in; a time at a bar sign lies in the bar that begins there. */
export function barAt(canvas: Canvas, time: Fraction): CanvasBar {
  let number = canvas.firstBar;
  for (const { system, start } of canvas.stretches) {
    for (const { onset, length } of system.reading.bars) {
      const begin = add(start, onset);
      if (compare(time, add(begin, length)) < 0) return { number, start: begin, length };
      number += 1;
    }
  }
  const length = barLength(canvas.header.meter);
  const passed = subtract(time, canvas.end);
  const count = Math.floor((passed.n * length.d) / (passed.d * length.n));
  return { number: number + count, start: add(canvas.end, multiply(length, fraction(count))), length };
}

/** The next time at which a bar begins; the time itself where one begins there. */
export function nextBar(canvas: Canvas, time: Fraction): Fraction {
  const { start, length } = barAt(canvas, time);
  return equal(start, time) ? time : add(start, length);
}
