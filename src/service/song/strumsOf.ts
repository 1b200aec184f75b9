import { compare, type Fraction } from '../../music/fraction';
import { pitchClassOf } from '../../music/noteName';
import { writtenMask, type WrittenChord } from '../../music/chord/writtenChord';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf } from '../../notation/headerViews';
import type { System } from '../../notation/tabDocument';
import type { PlayedChord } from './chooseShapes';
import { beatsOf } from './timesOnBeats';
import type { Strum, StrumCell } from './writeStrums';

/** What rings on each string, by the number players give it, as sounding MIDI numbers. */
export type Ringing = ReadonlyMap<number, readonly number[]>;

/** What is struck in one system, and what rings on and holds on behind it. */
export interface SystemStrums {
  readonly strums: readonly Strum[];
  readonly ringing: Ringing;
  /** The chord that still holds at the end; undefined for none. */
  readonly holds: PlayedChord | undefined;
  /** Whether a `.` was needed to end what would have blurred a chord. */
  readonly stopped: boolean;
}

/**
 * The strums of a system's chords: a shape where its name stands, `x` on a string that must be silent between two that
 * sound, `.` where a string that is not played would ring on into a chord it does not belong to.
 * @param before what rings into the system and which chord still holds
 */
export function strumsOf(
  system: System,
  header: Header,
  chords: readonly PlayedChord[],
  strum: 'once' | 'beats',
  before: { readonly ringing: Ringing; readonly holds: PlayedChord | undefined },
): SystemStrums {
  const strums: Strum[] = [];
  let { ringing, holds } = before;
  let stopped = false;
  const { length, bars } = system.reading;
  const beats = strum === 'beats' ? bars.flatMap((bar) => beatsOf(bar, system.header.meter)) : [];

  const strike = (chord: PlayedChord, time: Fraction, column: number | undefined): void => {
    const { cells, after, stops } = struck(chord, header, ringing);
    if (stops) stopped = true;
    if (cells.size > 0) strums.push({ time, column, cells });
    ringing = after;
  };
  const strikeBeats = (from: Fraction | undefined, to: Fraction): void => {
    if (!holds?.played) return;
    for (const beat of beats) {
      if ((from && compare(beat, from) <= 0) || compare(beat, to) >= 0) continue;
      strike(holds, beat, undefined);
    }
  };

  strikeBeats(undefined, chords[0]?.event.time ?? length);
  chords.forEach((chord, i) => {
    const { event } = chord;
    strike(chord, event.time, event.column);
    holds = chord.played ? chord : undefined;
    strikeBeats(event.time, chords[i + 1]?.event.time ?? length);
  });
  return { strums, ringing, holds, stopped };
}

interface Struck {
  readonly cells: ReadonlyMap<number, StrumCell>;
  readonly after: Ringing;
  readonly stops: boolean;
}

function struck({ event, played }: PlayedChord, header: Header, ringing: Ringing): Struck {
  const cells = new Map<number, StrumCell>();
  const after = new Map(ringing);
  const strings = header.tuning.strings.length;
  if (!played) {
    // Where no chord is to sound, what rings is ended; a name that cannot be played leaves all as it is.
    const silence = event.chord && !event.chord.root;
    if (!silence) return { cells, after, stops: false };
    for (const string of [...ringing.keys()].sort((a, b) => a - b)) cells.set(string, '.');
    return { cells, after: new Map(), stops: false };
  }
  const { frets, shape } = played.shape;
  const board = fingerboardOf(header);
  const pitches = frets.map((fret, index) => (fret === null ? [] : (board.pitches(index, fret) ?? [])));
  const lowest = Math.min(...pitches.flat());
  let stops = false;
  frets.forEach((fret, index) => {
    const string = strings - index;
    if (fret !== null) {
      cells.set(string, fret);
      after.set(string, pitches[index] ?? []);
    } else if ((shape.innerMuted >> index) & 1) {
      cells.set(string, 'x');
      after.delete(string);
    } else if (ringing.get(string)?.some((midi) => blurs(midi, lowest, event.chord, capoShift(header)))) {
      cells.set(string, '.');
      after.delete(string);
      stops = true;
    }
  });
  return { cells, after, stops };
}

/** Whether a pitch is no tone of a chord, or lies below its bass. */
function blurs(midi: number, lowest: number, chord: WrittenChord | undefined, shift: number): boolean {
  if (!chord?.root || midi < lowest) return true;
  const pitchClass = (((Math.round(midi) - shift) % 12) + 12) % 12;
  const above = (pitchClass - pitchClassOf(chord.root) + 12) % 12;
  const isBass = chord.bass !== undefined && pitchClassOf(chord.bass) === pitchClass;
  return !isBass && !((writtenMask(chord) >> above) & 1);
}

/** What rings into a system from tab that stands before it. */
export function ringingFrom(
  notes: readonly { readonly string: number; readonly midis: readonly number[] }[],
): Ringing {
  return new Map(notes.filter(({ midis }) => midis.length > 0).map(({ string, midis }) => [string, midis]));
}
