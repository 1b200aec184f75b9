import { compare, equal, subtract, type Fraction } from '../../music/fraction';
import { parseLine } from '../../notation/parseLine';
import { rewriteSystem, setUnder } from '../../notation/print/rewriteSystem';
import type { NoteReading, PlacedMark } from '../../notation/reading';
import { readSystem } from '../../notation/systemReading';
import type { System, TabDocument } from '../../notation/tabDocument';
import { writeCount } from '../../notation/time/writeCount';
import { momentAt } from '../hover/column';
import { stringList } from '../grip/fingerWords';
import { columnAt } from '../locate';
import type { Place } from '../records';
import type { ServiceError } from '../serviceApi';
import { placeAsItIs } from '../change/rewrite';
import type { StringSign, StringSigns } from './putFretsRequest';
import { columnFor, notesAt, spotAt } from './signColumns';

/** A system with signs put at one moment. */
export interface PutSystem {
  readonly system: System;
  /** The lines that take the place of the system's own. */
  readonly lines: readonly string[];
  /** Notes that stood at the moment on the strings named. */
  readonly before: readonly NoteReading[];
}

/**
 * Puts several signs at the moment of a cursor in a system. Every other note keeps its string, fret and onset: where a
 * second digit needs room it gets a column without time, or a count row is written, and the result is read again before
 * it is believed. An error says what is in the way. Nothing of the document changes.
 */
export function putFrets(document: TabDocument, place: Place, signs: StringSigns): PutSystem | ServiceError {
  const system = document.systemAt(place.line);
  const column = system && columnAt(system, place);
  if (!system || column === undefined)
    return { error: 'Nothing can be put there: place the cursor on a column of a system, such as a dash.' };
  return putAt(system, column, signs);
}

/** The same at a column, counted from the opening bar sign. */
export function putAt(given: System, column: number, signs: StringSigns): PutSystem | ServiceError {
  const trouble = signTrouble(given, signs);
  if (trouble !== undefined) return { error: trouble };
  const bar = given.reading.bars.find(
    ({ startColumn, endColumn }) => column >= startColumn && column < endColumn,
  );
  if (!bar) return { error: 'A bar sign stands there: place the cursor on a column between two bar signs.' };
  const time = momentAt(given, column);
  const whole = withAllStrings(given, signs);
  if (!whole) return { error: 'This system leaves out a string that is needed: write its line as well.' };
  // Where strings were added nothing else has moved, so the moment tells the column again.
  const at = whole === given ? column : columnOfTime(whole, time, column);
  const before = notesAt(given, time).flatMap(({ note }) => (signs.has(note.string) ? [note] : []));
  const lines = put(whole, at, time, signs) ?? put(counted(whole, at, time), at, time, signs);
  if (!lines)
    return { error: `Other onsets would move: write the count of this system first, then put it there.` };
  if ('error' in lines) return lines;
  return { system: given, lines, before };
}

/** What keeps signs from being put, whatever stands there. */
function signTrouble({ header, reading }: System, signs: StringSigns): string | undefined {
  if (reading.strings.length === 0)
    return 'This system has no string lines: write them first, or fill its chords with shapes.';
  const count = header.tuning.strings.length;
  for (const string of signs.keys()) {
    if (!Number.isInteger(string) || string < 1 || string > count)
      return `There is no string ${string} in this tuning: its strings are 1 to ${count}.`;
  }
  return undefined;
}

/** The system with a line for each string that is to sound; undefined where none can be written. */
function withAllStrings(system: System, signs: StringSigns): System | undefined {
  const missing = [...signs].some(
    ([string, sign]) => sign !== 'nothing' && !system.reading.strings.some(({ number }) => number === string),
  );
  if (!missing) return system;
  const lines = rewriteSystem({
    system,
    firstBar: 0,
    lastBar: system.reading.bars.length - 1,
    header: system.header,
    place: (index) => placeAsItIs(system, index),
    keepLabels: false,
    position: system,
  });
  return lines && systemOf(system, lines);
}

/** The system with other lines in place of its own, read anew where it stands. */
export function systemOf(system: System, lines: readonly string[]): System {
  const parsed = lines.map(parseLine);
  const { firstLine, header, section, firstInPart, firstInSection, ringVersion } = system;
  const reading = readSystem(parsed, header, system);
  return { firstLine, lines: parsed, header, section, firstInPart, firstInSection, reading, ringVersion };
}

function columnOfTime({ reading }: System, time: Fraction, otherwise: number): number {
  for (const { startColumn, endColumn } of reading.bars) {
    for (let column = startColumn; column < endColumn; column++) {
      const own = reading.columnTimes[column];
      if (own && equal(own, time)) return column;
    }
  }
  return otherwise;
}

/** Lines with the signs; undefined where another onset would move, an error where something is in the way. */
function put(
  system: System | undefined,
  column: number,
  time: Fraction,
  signs: StringSigns,
): readonly string[] | ServiceError | undefined {
  if (!system) return undefined;
  const sketched = sketch(system, column, time, signs);
  if ('error' in sketched) return sketched;
  const { drawn, fresh } = sketched;
  const moves = drawn !== system && !sameOnsets(system, drawn, fresh, time);
  if (moves) return undefined;
  const here = new Set(notesAt(drawn, time).map(({ index }) => index));
  for (const [index, note] of drawn.reading.notes.entries())
    if (fresh.has(`${note.line}:${note.numberStart}`)) here.add(index);
  return rewriteSystem({
    system: drawn,
    firstBar: 0,
    lastBar: drawn.reading.bars.length - 1,
    header: drawn.header,
    place: (index) => {
      const note = drawn.reading.notes[index];
      const sign: StringSign | undefined = note && here.has(index) ? signs.get(note.string) : undefined;
      if (sign === 'nothing') return undefined;
      const old = placeAsItIs(drawn, index);
      return typeof sign === 'number' && old ? { string: old.string, fret: sign } : old;
    },
    keepLabels: true,
    strings: drawn.reading.strings.map(({ number }) => number),
    position: drawn,
  });
}

/**
 * The system with a one-digit stand-in on each string where no fretted note stands at the moment, so that no column
 * moves; the true frets are printed over them.
 */
function sketch(
  system: System,
  column: number,
  time: Fraction,
  signs: StringSigns,
): { readonly drawn: System; readonly fresh: ReadonlySet<string> } | ServiceError {
  const notes = notesAt(system, time);
  const at = columnFor(
    notes.map(({ note }) => note),
    column,
  );
  const texts = system.lines.map(({ text }) => text);
  const fresh = new Set<string>();
  const blocked: number[] = [];
  for (const [string, sign] of signs) {
    if (sign === 'nothing') continue;
    const line = system.reading.strings.find(({ number }) => number === string)?.line;
    const own = line === undefined ? undefined : system.lines[line];
    if (line === undefined || own?.kind !== 'string') continue;
    const old = notes.find(({ note }) => note.string === string)?.note;
    if (old?.kind === 'fretted' && sign !== 'x') continue;
    if (old?.kind === 'muted' && sign === 'x') continue;
    let text = texts[line] ?? '';
    let offset: number;
    if (old) {
      offset = old.numberStart;
      text = text.slice(0, old.start) + '-'.repeat(old.end - old.start) + text.slice(old.end);
    } else {
      const spot = spotAt(own, at);
      // A number beside another one would be read as one of two digits.
      const isFree = spot && /[-–—─−.]/.test(spot.sign) && !/\d/.test(spot.before) && !/\d/.test(spot.after);
      if (!isFree) {
        blocked.push(string);
        continue;
      }
      ({ offset } = spot);
    }
    const letter = sign === 'x' ? 'x' : STAND_IN;
    texts[line] = text.slice(0, offset) + letter + text.slice(offset + 1);
    fresh.add(`${line}:${offset}`);
  }
  if (blocked.length > 0)
    return {
      error: `Something else stands on ${stringList(blocked)} there: place the cursor on a column with a dash on both sides.`,
    };
  return { drawn: fresh.size === 0 ? system : systemOf(system, texts), fresh };
}

const STAND_IN = '0';

/** Whether all other notes keep their onsets, and the new ones have the moment's. */
function sameOnsets(
  { reading: old }: System,
  { reading: now }: System,
  fresh: ReadonlySet<string>,
  time: Fraction,
): boolean {
  const onsets = new Map(now.notes.map((note) => [`${note.line}:${note.numberStart}`, note.onset]));
  const isFresh = (note: NoteReading): boolean => fresh.has(`${note.line}:${note.numberStart}`);
  const kept = old.notes.every((note) => {
    const onset = onsets.get(`${note.line}:${note.numberStart}`);
    return isFresh(note) || (onset !== undefined && equal(onset, note.onset));
  });
  const came = now.notes.filter(isFresh);
  const isThere = came.every(({ onset }) => equal(onset, time));
  return kept && came.length === fresh.size && isThere && old.bars.length === now.bars.length;
}

/** The system under a count row that pins every onset and the moment; undefined where no row can say them. */
export function counted(system: System, column: number, time: Fraction): System | undefined {
  const { reading, header } = system;
  if (reading.timing === 'counted' && reading.notes.some(({ onset }) => equal(onset, time))) return undefined;
  const notes = notesAt(system, time);
  const own = columnFor(
    notes.map(({ note }) => note),
    column,
  );
  const bars = reading.bars.map((bar) => ({ ...bar, start: bar.startColumn, end: bar.endColumn }));
  const bodyFor = (marks: readonly PlacedMark[]): string | undefined => {
    const times = new Map(
      [...marks, ...reading.notes, ...reading.stops].map((one) => [one.column, one.onset]),
    );
    times.set(own, time);
    const onsets = [...times].flatMap(([at, onset]) => {
      const bar = bars.findIndex(({ end }) => at < end);
      const begin = bars[bar]?.onset;
      return begin && compare(onset, begin) >= 0 ? [{ column: at, bar, time: subtract(onset, begin) }] : [];
    });
    return writeCount(header.meter, bars, onsets);
  };
  const marks = reading.rows.flatMap((row) => (row.row === 'count' ? [] : row.marks));
  // What rows say keeps its time as well, where a count can say so.
  const body = bodyFor(marks) ?? bodyFor([]);
  if (body === undefined) return undefined;
  const lines = system.lines.flatMap((line) =>
    line.kind === 'row' && line.row === 'count' ? [] : [line.text],
  );
  const result = systemOf(system, setUnder('count', body, lines));
  const same = result.reading.notes.every((note, i) => {
    const old = reading.notes[i];
    return old !== undefined && equal(old.onset, note.onset) && old.string === note.string;
  });
  return same && result.reading.notes.length === reading.notes.length ? result : undefined;
}
