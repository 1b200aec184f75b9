import { createFingerboard } from '../../../src/instrument/sounding';
import type { Capo } from '../../../src/instrument/capo';
import type { Tuning } from '../../../src/instrument/tuning';
import type { PassageNote } from '../../../src/playing/passage';
import type { Target } from '../../../src/playing/target';

/** A tuning as bare numbers: open strings as MIDI numbers, low-placed string first. */
export interface Board {
  readonly opens: readonly number[];
  readonly frets: number;
  readonly scaleLength: number;
  readonly capo?: Capo;
  readonly firstFrets?: readonly number[];
}

/** MIDI numbers of the open strings: facts of the trade, shared/facts/tunings.md (common practice, no source). */
export const OPENS = {
  standard: [40, 45, 50, 55, 59, 64],
  dropD: [38, 45, 50, 55, 59, 64],
  dadgad: [38, 45, 50, 55, 57, 62],
  openG: [38, 43, 50, 55, 59, 62],
  ukulele: [67, 60, 64, 69],
  bass: [28, 33, 38, 43],
  banjo: [67, 50, 55, 59, 62],
} as const;

export function guitar(opens: readonly number[], capo?: Capo): Board {
  return { opens, frets: 22, scaleLength: 648, ...(capo ? { capo } : {}) };
}

export function targetOf(board: Board, more: Partial<Target> = {}): Target {
  const tuning: Tuning = {
    strings: board.opens.map((midi, index) => ({
      pitches: [{ name: { letter: 'C', alter: 0, octave: 4 }, midi }],
      firstFret: board.firstFrets?.[index] ?? 0,
      octaveInferred: false,
    })),
    name: undefined,
    text: '',
  };
  const fingerboard = createFingerboard(tuning, board.capo, board.frets);
  return { fingerboard, scaleLength: board.scaleLength, reach: 130, slide: false, ...more };
}

/** A plain note; the string it came from is string 1 unless said. */
export function note(
  id: number,
  midi: number | undefined,
  onset: number,
  more: Partial<PassageNote> = {},
): PassageNote {
  return {
    id,
    midi,
    onset,
    end: onset + 1,
    string: 1,
    joinedTo: undefined,
    need: 'any',
    reaches: [],
    ...more,
  };
}

/** One note after another. */
export function melody(midis: readonly number[]): PassageNote[] {
  return midis.map((midi, at) => note(at, midi, at));
}

/** All notes at once. */
export function chord(midis: readonly (number | undefined)[]): PassageNote[] {
  return midis.map((midi, at) => note(at, midi, 0));
}
