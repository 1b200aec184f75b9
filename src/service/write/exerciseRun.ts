import { failed, ok, type Result } from '../../music/result';
import type { Header } from '../../notation/header';
import { fingerboardOf } from '../../notation/headerViews';
import type { ExerciseTones } from './exerciseTones';
import { pitchesIn, type Position } from './position';
import type { Direction } from './writeRequest';

/** The pitches of an exercise going up, and what is to be said of them. */
export interface Run {
  /** Sounding MIDI numbers, rising. */
  readonly pitches: readonly number[];
  readonly remarks: readonly string[];
  /** Octaves that were asked for or found, for the heading; undefined where it is no whole number of them. */
  readonly octaves: number | undefined;
}

export const MOST_OCTAVES = 4;

/**
 * The pitches between the lowest first tone and the one some octaves above it. In a position both lie within it, and
 * without a number of octaves there are as many as fit; where not one fits it is all that the position holds.
 * Error: `octaves`, too many for this neck or position.
 */
export function runOf(
  tones: ExerciseTones,
  header: Header,
  position: Position | undefined,
  octaves: number | undefined,
): Result<Run> {
  if (octaves !== undefined && !(Number.isInteger(octaves) && octaves >= 1 && octaves <= MOST_OCTAVES))
    return failed(
      'octaves',
      `Octaves are a whole number from 1 to ${MOST_OCTAVES}; ${octaves} is none.`,
      0,
      1,
    );
  const all = position ? pitchesIn(position, header, true) : neckOf(header);
  const low = all.find((midi) => midi % 12 === tones.first) ?? Infinity;
  let most = 0;
  while (all.includes(low + 12 * (most + 1))) most += 1;
  const wanted = octaves ?? (position ? most : 1);
  const where = position ? `in ${position.words}` : 'on this neck';
  if (!position && wanted === 1 && tones.stacked) {
    const pitches = tones.stacked.flatMap((step) => (low === Infinity ? [] : [low + step]));
    return ok({ pitches, remarks: [], octaves: undefined });
  }
  if (octaves !== undefined && octaves > most)
    return failed(
      'octaves',
      most < 1
        ? `${tones.title} has no whole octave ${where}; ask for another position, or for none.`
        : `${tones.title} has no more than ${most === 1 ? '1 octave' : `${most} octaves`} ${where}.`,
      0,
      1,
    );
  if (wanted >= 1) {
    const pitches = between(tones, low, low + 12 * wanted);
    return ok({ pitches, remarks: [], octaves: wanted });
  }
  const held = between(tones, all[0] ?? 0, all.at(-1) ?? -1).filter((midi) => all.includes(midi));
  return ok({
    pitches: held,
    remarks: [`There is no whole octave ${where}, so it is all that lies there.`],
    octaves: undefined,
  });
}

function between({ first, steps }: ExerciseTones, low: number, high: number): number[] {
  const pitches: number[] = [];
  for (let midi = low; midi <= high; midi++)
    if (steps.includes((((midi - first) % 12) + 12) % 12)) pitches.push(midi);
  return pitches;
}

/** Every pitch from the lowest open string to the highest fret. */
function neckOf(header: Header): readonly number[] {
  const board = fingerboardOf(header);
  const pitches = new Set<number>();
  header.tuning.strings.forEach((_, index) => {
    for (let fret = 0; fret <= board.frets; fret++) {
      const [midi] = board.pitches(index, fret) ?? [];
      if (midi !== undefined) pitches.add(Math.round(midi));
    }
  });
  return [...pitches].sort((a, b) => a - b);
}

/**
 * The pitches in the order in which they are played; the top is played once.
 * @example directed([48, 50, 52], 'up and down') // [48, 50, 52, 50, 48]
 */
export function directed(pitches: readonly number[], direction: Direction): readonly number[] {
  switch (direction) {
    case 'up':
      return pitches;
    case 'down':
      return [...pitches].reverse();
    case 'up and down':
      return [...pitches, ...[...pitches].reverse().slice(1)];
  }
}
