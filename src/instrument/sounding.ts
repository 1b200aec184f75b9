import type { Capo } from './capo';
import { fretDistance } from './neck';
import { stringIndex, stringNumber, type Tuning, type TuningString } from './tuning';

/** Where the number 0 of a string is counted from. */
export type Zero =
  /** The nut: an open string. */
  | 'nut'
  /** A full capo: 0 is at the capo, and 3 is three frets above it. */
  | 'capo'
  /** A string that begins up the neck: 0 is open, other numbers are counted from the nut. */
  | 'string start'
  /** A string under a partial capo: 0 sounds at the capo, other numbers are counted from the nut. */
  | 'partial capo';

/** What a written fret number gives. */
export type FretReading = SoundingFret | SilentFret;

export interface SoundingFret {
  readonly ok: true;
  /** MIDI numbers, with decimals for cents: one, or the two of a course in the tuning's order. */
  readonly midis: readonly number[];
  /** What the string sounds for a written 0, with the capo. */
  readonly openMidis: readonly number[];
  /** The fret, counted from the nut, at which the string is stopped; the capo, nut or string's start for an open string. */
  readonly stopFret: number;
  readonly zero: Zero;
}

export interface SilentFret {
  readonly ok: false;
  readonly reason:
    /** Between the nut and a partial capo that covers the string. */
    | 'below-capo'
    /** Beyond the last fret. */
    | 'past-neck'
    /** At or below the fret where the string begins. */
    | 'below-string-start'
    | 'no-such-string';
  /** The least number other than 0 that can be played on the string; undefined when there is none. */
  readonly least: number | undefined;
  /** The greatest number that can be played on the string; 0 when only the open string can. */
  readonly most: number;
  /** The fret, counted from the nut, at which the string can first sound: of the partial capo, the string's start. */
  readonly limit: number;
}

/**
 * The neck of one instrument as a player meets it: a tuning, a capo and a number of frets. Every way from a written
 * number to a pitch goes through here. Strings are given by their index in `tuning.strings` (0 is the highest-numbered).
 */
export interface Fingerboard {
  readonly tuning: Tuning;
  readonly capo: Capo | undefined;
  readonly frets: number;
  /** What a written number means on a string. */
  read(index: number, fret: number): FretReading;
  /** The MIDI numbers that a written number sounds, or undefined where it cannot be played. */
  pitches(index: number, fret: number): readonly number[] | undefined;
  /** The first MIDI number of the open string as it rings, with the capo; NaN when there is no such string. */
  openMidi(index: number): number;
  /**
   * The number a player writes for a pitch on a string: the fret nearest to it, for the course's first note.
   * Undefined when the string cannot sound it. 0 wins over another number for the same pitch.
   */
  fretFor(index: number, midi: number): number | undefined;
  /**
   * A written number, decimals allowed, as a fret counted from the nut, without regard to bounds: for the touching
   * place of a harmonic and the target of a bend. For 0 it is where the open string is stopped.
   */
  absoluteFret(index: number, fret: number): number;
  /**
   * The pitches at a fret counted from the nut, decimals allowed, without regard to the neck's end: what a bend
   * reaches. Empty when there is no such string.
   */
  midisAt(index: number, absoluteFret: number): readonly number[];
  /** Millimetres from the nut to where a written number stops the string; undefined where it cannot be played. */
  positionMm(index: number, fret: number, scaleLength: number): number | undefined;
}

/**
 * What fret number `fret` gives on the string at `index` of the tuning, under the rules of the notation:
 * - no capo: counted from the nut;
 * - full capo: counted from the capo, 0 at the capo;
 * - partial capo: always counted from the nut; a covered string sounds at the capo for 0 and for the capo's own
 *   fret, lower numbers are an error;
 * - a string that begins up the neck (the banjo's fifth, at its fifth fret): 0 is open, other numbers are counted
 *   from the nut, so 7 is two above open; 1 to 5 are an error. Under a full capo its open string is raised by as much
 *   as the others, as players do with a spike, and its numbers count from the capo like theirs (common practice, no
 *   source). A partial capo below its start leaves it alone.
 * `fret` is a whole number, 0 or more.
 * @example soundFret(standard, { fret: 4, strings: undefined }, 22, 0, 3) // MIDI 47: B2
 */
export function soundFret(
  tuning: Tuning,
  capo: Capo | undefined,
  frets: number,
  index: number,
  fret: number,
): FretReading {
  return createFingerboard(tuning, capo, frets).read(index, fret);
}

const BOARDS = new WeakMap<Tuning, Map<string, Fingerboard>>();

/** The fingerboard of a tuning, a capo and a number of frets; the same three give the same board. */
export function createFingerboard(tuning: Tuning, capo: Capo | undefined, frets: number): Fingerboard {
  let boards = BOARDS.get(tuning);
  if (boards === undefined) BOARDS.set(tuning, (boards = new Map<string, Fingerboard>()));
  const key = `${frets} ${capo?.fret ?? ''} ${capo?.strings?.join(',') ?? ''}`;
  let board = boards.get(key);
  if (board === undefined) boards.set(key, (board = buildFingerboard(tuning, capo, frets)));
  return board;
}

/** One string under the capo. Frets counted from the nut are called absolute. */
interface BoardString {
  readonly string: TuningString;
  /** Absolute fret where the open string is stopped. */
  readonly stop: number;
  /** What is added to a written number other than 0 to get its absolute fret. */
  readonly shift: number;
  readonly zero: Zero;
  /** One reading for every number from 0 up to `most`. */
  readonly readings: readonly FretReading[];
  readonly most: number;
  readonly least: number | undefined;
}

const NO_STRING: SilentFret = { ok: false, reason: 'no-such-string', least: undefined, most: 0, limit: 0 };

function buildFingerboard(tuning: Tuning, capo: Capo | undefined, frets: number): Fingerboard {
  const strings = tuning.strings.map((string, index) =>
    boardString(string, stringNumber(tuning, index), capo, frets),
  );
  const read = (index: number, fret: number): FretReading => {
    const string = strings[index];
    if (string === undefined) return NO_STRING;
    return string.readings[fret] ?? silent(string, fret < 0 ? belowReason(string) : 'past-neck');
  };
  const absoluteFret = (index: number, fret: number): number => {
    const string = strings[index];
    if (string === undefined) return NaN;
    return fret === 0 ? string.stop : fret + string.shift;
  };
  return {
    tuning,
    capo,
    frets,
    read,
    absoluteFret,
    pitches(index, fret) {
      const reading = read(index, fret);
      return reading.ok ? reading.midis : undefined;
    },
    openMidi(index) {
      const reading = read(index, 0);
      return reading.ok ? (reading.midis[0] ?? NaN) : NaN;
    },
    fretFor(index, midi) {
      const string = strings[index];
      if (string === undefined) return undefined;
      const above = Math.round(midi - midiAt(string.string, string.stop));
      if (above === 0) return 0;
      const fret = string.stop + above - string.shift;
      return string.readings[fret]?.ok === true && fret > 0 && above > 0 ? fret : undefined;
    },
    midisAt(index, absolute) {
      const string = strings[index];
      return string === undefined ? [] : midisAt(string.string, absolute);
    },
    positionMm(index, fret, scaleLength) {
      const reading = read(index, fret);
      return reading.ok ? fretDistance(reading.stopFret, scaleLength) : undefined;
    },
  };
}

function boardString(
  string: TuningString,
  number: number,
  capo: Capo | undefined,
  frets: number,
): BoardString {
  const start = string.firstFret;
  let shift = 0;
  let stop = start;
  let zero: Zero = start > 0 ? 'string start' : 'nut';
  if (capo !== undefined && capo.strings === undefined) {
    shift = capo.fret;
    stop = start + capo.fret;
    if (start === 0) zero = 'capo';
  } else if (capo?.strings?.includes(number) === true && capo.fret > start) {
    stop = capo.fret;
    zero = 'partial capo';
  }
  const most = Math.max(frets - shift, 0);
  const lowest = zero === 'partial capo' ? stop : stop - shift + 1;
  const least = lowest <= most ? lowest : undefined;
  const readings: FretReading[] = [];
  const base = { string, stop, shift, zero, most: least === undefined ? 0 : most, least };
  const openMidis = midisAt(string, stop);
  for (let fret = 0; fret <= most; fret++) {
    const open = fret === 0 || (zero === 'partial capo' && fret === stop);
    const absolute = open ? stop : fret + shift;
    if (!open && absolute <= stop) readings.push(silent(base, belowReason(base)));
    else readings.push({ ok: true, midis: midisAt(string, absolute), openMidis, stopFret: absolute, zero });
  }
  return { ...base, readings };
}

type Limits = Pick<BoardString, 'zero' | 'stop' | 'least' | 'most'>;

function belowReason(string: Limits): SilentFret['reason'] {
  return string.zero === 'partial capo' ? 'below-capo' : 'below-string-start';
}

function silent(string: Limits, reason: SilentFret['reason']): SilentFret {
  return { ok: false, reason, least: string.least, most: string.most, limit: string.stop };
}

/** Pitch rises one half step a fret from where the string begins. */
function midisAt(string: TuningString, absolute: number): readonly number[] {
  return string.pitches.map((pitch) => pitch.midi + absolute - string.firstFret);
}

function midiAt(string: TuningString, absolute: number): number {
  return string.pitches[0].midi + absolute - string.firstFret;
}

/** The same for a string number as players count, 1 at the top of the tab. */
export function soundFretOnString(board: Fingerboard, number: number, fret: number): FretReading {
  return board.read(stringIndex(board.tuning, number), fret);
}
