import { equal, type Fraction, subtract, ZERO } from '../../music/fraction';
import { widthOfText } from '../columns';
import type { NoteReading, SystemReading, Technique, TechniqueKind } from '../reading';
import type { System } from '../tabDocument';
import { piecesOf, type NotePlace, type Passage, type PlaceNote } from './pieces';
import { passageOf, stretches } from './signs';

/** What a passage says when its notes have gone to their new places; times count from its start. */
export interface Expected {
  readonly notes: readonly ExpectedNote[];
  readonly stops: readonly { readonly string: number; readonly onset: Fraction }[];
  /** Whether stops may come at another moment: what is struck goes before what is ended. */
  readonly stopsAnywhere?: boolean;
  /** The times of the marks of each row that has some, the count left out. */
  readonly marks: readonly (readonly Fraction[])[];
  readonly bars: readonly Fraction[];
}

export interface ExpectedNote {
  readonly note: NoteReading;
  readonly place: NotePlace;
  readonly onset: Fraction;
  readonly techniques: readonly ExpectedTechnique[];
  /** Index of the expected note that it is joined to. */
  readonly joinedFrom: number | undefined;
}

interface ExpectedTechnique {
  readonly kind: TechniqueKind;
  readonly toFret: number | undefined;
  readonly onset: Fraction | undefined;
}

/** How much of what was expected lines say: all of it, or all but the times of marks and of what a hand does later. */
export type Says = 'everything' | 'the notes' | 'something else';

/** What the bars of a system from one to another are to say. */
export function expectedOf(system: System, firstBar: number, lastBar: number, place: PlaceNote): Expected {
  const { reading } = system;
  const passage = passageOf(system, firstBar, lastBar);
  const start = reading.bars[firstBar]?.onset ?? ZERO;
  const fromStart = (onset: Fraction): Fraction => subtract(onset, start);
  const places = reading.notes.map((note, i) =>
    note.bar >= firstBar && note.bar <= lastBar ? place(i) : undefined,
  );
  const chosen = reading.notes.flatMap((note, i) => {
    const to = places[i];
    return to ? [{ note, place: to }] : [];
  });
  const indexOf = (joined: number): number => chosen.findIndex(({ note }) => note === reading.notes[joined]);
  const pieces = reading.stops.length > 0 ? piecesOf(system, passage, place) : [];
  const stops = pieces.flatMap(({ stops: ends, string, column }) =>
    ends === undefined ? [] : [{ string, onset: fromStart(timeOf(reading, column)) }],
  );
  return {
    notes: chosen.map((one) => {
      const joinedFrom = one.note.joinedFrom === undefined ? -1 : indexOf(one.note.joinedFrom);
      return {
        ...one,
        onset: fromStart(one.note.onset),
        techniques: techniquesOf(one.note, one.place, reading, passage, fromStart),
        joinedFrom: joinedFrom < 0 ? undefined : joinedFrom,
      };
    }),
    stops,
    marks: reading.rows
      .filter(({ row }) => row !== 'count')
      .map(({ row, marks }) =>
        marks.flatMap((mark) => {
          if (mark.column >= passage.marksFrom) {
            return mark.column < passage.marksEnd ? [fromStart(mark.onset)] : [];
          }
          const covers = row === 'palm mute' || stretches(mark.text);
          const width = widthOfText(mark.text);
          return covers && mark.column + width > (reading.bars[firstBar]?.startColumn ?? 0) ? [ZERO] : [];
        }),
      )
      .filter((times) => times.length > 0),
    bars: reading.bars.slice(firstBar, lastBar + 1).map(({ length }) => length),
  };
}

function timeOf({ columnTimes, length }: SystemReading, column: number): Fraction {
  return columnTimes[column] ?? length;
}

/** A note's techniques; a slide over the end of the passage goes to nowhere, one over its start comes from nowhere. */
function techniquesOf(
  note: NoteReading,
  place: NotePlace,
  { notes }: SystemReading,
  { firstBar, lastBar }: Passage,
  fromStart: (onset: Fraction) => Fraction,
): ExpectedTechnique[] {
  const from = note.joinedFrom === undefined ? undefined : notes[note.joinedFrom];
  const slid = from !== undefined && from.bar < firstBar && from.techniques.some(isSlide);
  const goal = notes.find(({ joinedFrom }) => joinedFrom !== undefined && notes[joinedFrom] === note);
  const leaves = goal !== undefined && goal.bar > lastBar;
  const own = note.techniques.map(({ kind, toFret, onset }): ExpectedTechnique => ({
    kind: leaves && kind === 'slide' ? 'slide-to-nowhere' : kind,
    toFret: toFret === undefined ? undefined : toFret + (place.targetsBy ?? place.fret - (note.fret ?? 0)),
    onset: onset && fromStart(onset),
  }));
  return slid ? [{ kind: 'slide-from-nowhere', toFret: undefined, onset: undefined }, ...own] : own;
}

function isSlide({ kind }: Technique): boolean {
  return kind === 'slide';
}

/** Holds a reading against what was expected. */
export function compareWith(reading: SystemReading, expected: Expected): Says {
  const { bars, notes, rows } = reading;
  // A stop in the moment in which its string is struck again says nothing.
  const stops = reading.stops.filter(
    (stop) => !notes.some((note) => note.string === stop.string && equal(note.onset, stop.onset)),
  );
  const marks = rows.filter((row) => row.row !== 'count' && row.marks.length > 0).map((row) => row.marks);
  const sameBars =
    bars.length === expected.bars.length &&
    bars.every(({ length }, i) => equal(length, expected.bars[i] ?? ZERO));
  const asMany =
    notes.length === expected.notes.length &&
    stops.length === expected.stops.length &&
    marks.map(({ length }) => length).join() === expected.marks.map(({ length }) => length).join();
  if (!sameBars || !asMany) return 'something else';
  const found = inPairs(reading, expected);
  const sameNotes = expected.notes.every((wanted, i) => {
    const note = found[i];
    if (!note || !isAsWanted(note, wanted)) return false;
    const joined = note.joinedFrom === undefined ? undefined : reading.notes[note.joinedFrom];
    return joined === (wanted.joinedFrom === undefined ? undefined : found[wanted.joinedFrom]);
  });
  const sameStops = expected.stops.every(({ string, onset }) =>
    stops.some((stop) => stop.string === string && (expected.stopsAnywhere || equal(stop.onset, onset))),
  );
  if (!sameNotes || !sameStops) return 'something else';
  const sameMarks = expected.marks.every((times, row) =>
    times.every((time, i) => equal(time, marks[row]?.[i]?.onset ?? ZERO)),
  );
  const sameHand = expected.notes.every(({ techniques }, i) =>
    techniques.every(({ onset }, k) => sameTime(found[i]?.techniques[k]?.onset, onset)),
  );
  return sameMarks && sameHand ? 'everything' : 'the notes';
}

/** For each note expected the one that was read: string by string in the order in which they are written. */
export function inPairs({ notes }: SystemReading, expected: Expected): (NoteReading | undefined)[] {
  const next = new Map<number, NoteReading[]>();
  for (const note of [...notes].sort((a, b) => a.start - b.start)) {
    const list = next.get(note.string);
    if (list) list.push(note);
    else next.set(note.string, [note]);
  }
  const order = expected.notes
    .map(({ note }, i) => ({ note, i }))
    .sort((a, b) => a.note.column - b.note.column || a.note.start - b.note.start);
  const found: (NoteReading | undefined)[] = expected.notes.map(() => undefined);
  for (const { i } of order) {
    const string = expected.notes[i]?.place.string;
    found[i] = string === undefined ? undefined : next.get(string)?.shift();
  }
  return found;
}

function isAsWanted(note: NoteReading, { note: old, place, onset, techniques }: ExpectedNote): boolean {
  return (
    note.kind === old.kind &&
    note.ghost === old.ghost &&
    (note.kind === 'muted' || note.kind === 'natural-harmonic' || note.fret === place.fret) &&
    (note.touched === undefined || isNear(note.touched, place.touched ?? old.touched ?? 0)) &&
    equal(note.onset, onset) &&
    note.techniques.length === techniques.length &&
    techniques.every(({ kind, toFret }, i) => {
      const read = note.techniques[i];
      if (read?.kind !== kind) return false;
      return toFret === undefined ? read.toFret === undefined : isNear(read.toFret ?? NaN, toFret);
    })
  );
}

function isNear(a: number, b: number): boolean {
  return Math.abs(a - b) < 0.01;
}

function sameTime(a: Fraction | undefined, b: Fraction | undefined): boolean {
  return a === undefined || b === undefined ? a === b : equal(a, b);
}
