import type { Frame } from '../hand/frame';
import type { WantedChord } from './wanted';

/** What a string can give to a chord. */
export interface StringChoice {
  /** As written; 0 is open. */
  readonly written: number;
  /** From the nut; of an open string where it begins to sound. */
  readonly fret: number;
  readonly open: boolean;
  /** Its pitch classes, two for some courses. */
  readonly mask: number;
  /** The lowest MIDI number, in whole half steps. */
  readonly lowest: number;
}

/** Beyond this from a half step a pitch is no tone of a chord; as in naming. */
const OFF_PITCH = 0.25;

/**
 * For each string, low-placed first, everything on it up to a fret that belongs to the chord; open first, then by fret.
 * @param highestFret as frets are written
 */
export function choicesOf(
  wanted: WantedChord,
  frame: Frame,
  highestFret: number,
  openStrings: boolean,
  allowed: readonly number[] | undefined,
): readonly (readonly StringChoice[])[] {
  const board = frame.target.fingerboard;
  const chord = wanted.required | wanted.optional;
  const last = Math.min(highestFret, board.frets, frame.caps.highestFret ?? Infinity);
  return board.tuning.strings.map((_, index) => {
    if (allowed && !allowed.includes(frame.strings - index)) return [];
    const choices: StringChoice[] = [];
    const stop = board.absoluteFret(index, 0);
    for (let written = 0; written <= last; written++) {
      const read = board.read(index, written);
      // Under a partial capo the capo's own number is the open string once more.
      if (!read.ok || (written > 0 && read.stopFret === stop)) continue;
      if (written === 0 && !openStrings) continue;
      let mask = 0;
      let lowest = Infinity;
      let isOff = false;
      for (const midi of read.midis) {
        const whole = Math.round(midi);
        if (Math.abs(midi - whole) > OFF_PITCH) isOff = true;
        mask |= 1 << (((whole % 12) + 12) % 12);
        lowest = Math.min(lowest, whole);
      }
      if (!isOff && mask !== 0 && (mask & ~chord) === 0)
        choices.push({ written, fret: read.stopFret, open: written === 0, mask, lowest });
    }
    return choices;
  });
}
