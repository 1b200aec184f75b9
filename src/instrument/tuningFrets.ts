import { createFingerboard } from './sounding';
import { stringNumber, type Tuning } from './tuning';

/**
 * How to hear by ear whether a string is in tune: one of two strings is stopped, the other rings open. Strings by the
 * player's number; without a capo.
 */
export interface EarCheck {
  /** The string that is tuned. */
  readonly string: number;
  /** The string that it is compared with. */
  readonly by: number;
  /** Where one of them is stopped, as written; 0 when both ring open. */
  readonly fret: number;
  /** Which one is stopped. */
  readonly stops: 'by' | 'string';
  /**
   * Half steps from what `by` then sounds up to what `string` then sounds: 0 for the same note, ±12 and ±24 for octaves;
   * decimals where the tuning is written with cents.
   */
  readonly apart: number;
}

const OCTAVE = 12;

/**
 * For each string, low string first, the half steps up to the next one: the fret that tunes it. Negative where the
 * next string is lower; undefined for the last one. Of a course the first note counts.
 * @example stepsToNext(dadgad) // [7, 5, 5, 2, 5, undefined]
 */
export function stepsToNext(tuning: Tuning): readonly (number | undefined)[] {
  return tuning.strings.map(({ pitches }, index) => {
    const next = tuning.strings[index + 1];
    return next && hundredths(next.pitches[0].midi - pitches[0].midi);
  });
}

/**
 * How each string is tuned from its neighbour, from the lowest-placed string on: stopped at a fret it gives the next
 * one (common practice; the frets are column Δ of the handbook table of tunings). Where the next string is lower, it is
 * stopped instead and must give the one before. A string that begins up the neck is left out of the chain and comes
 * last, compared with string 1, as banjo players do (string 1, fret 5, in open G). Where no fret reaches, an octave is
 * heard instead.
 * @param frets how many the neck has
 * @example tuneByFrets(dropD, 22)[0] // { string: 5, by: 6, fret: 7, stops: 'by', apart: 0 }
 */
export function tuneByFrets(tuning: Tuning, frets: number): readonly EarCheck[] {
  const long = tuning.strings.flatMap((string, index) => (string.firstFret === 0 ? [index] : []));
  const short = tuning.strings.flatMap((string, index) => (string.firstFret > 0 ? [index] : []));
  const checks = long.flatMap((index, at) => {
    const before = long[at - 1];
    return before === undefined ? [] : [neighbourCheck(tuning, index, before, frets)];
  });
  const first = long.at(-1);
  if (first === undefined) return checks;
  return [...checks, ...short.map((index) => neighbourCheck(tuning, index, first, frets))];
}

function neighbourCheck(tuning: Tuning, index: number, by: number, frets: number): EarCheck {
  const above = midiOf(tuning, index) - midiOf(tuning, by);
  const strings = { string: stringNumber(tuning, index), by: stringNumber(tuning, by) };
  const halfSteps = Math.round(above);
  const cents = hundredths(above - halfSteps);
  const begins = halfSteps < 0 ? (tuning.strings[index]?.firstFret ?? 0) : 0;
  // A short string has no fret below its own start, and every neck ends.
  let fret = Math.abs(halfSteps);
  let octaves = 0;
  while (fret + begins > frets) {
    fret -= OCTAVE;
    octaves += halfSteps > 0 ? OCTAVE : -OCTAVE;
  }
  if (fret < 0) return { ...strings, fret: 0, stops: 'by', apart: hundredths(above) };
  const stops = halfSteps < 0 && fret > 0 ? 'string' : 'by';
  return { ...strings, fret: fret === 0 ? 0 : fret + begins, stops, apart: hundredths(octaves + cents) };
}

/** The highest fret at which an octave is looked for; above it an easier one is always near. Engineering value. */
const OCTAVE_FRETS = 10;

/**
 * For each string that has one, where another string sounds its octave: the lowest fret, of equals on the nearest
 * string. Low string first.
 * @param frets how many the neck has
 * @example octaveChecks(standard, 22)[0] // { string: 6, by: 4, fret: 2, stops: 'by', apart: -12 }
 */
export function octaveChecks(tuning: Tuning, frets: number): readonly EarCheck[] {
  const board = createFingerboard(tuning, undefined, frets);
  return tuning.strings.flatMap((_, index) => {
    const own = midiOf(tuning, index);
    let best: { check: EarCheck; cost: number } | undefined;
    tuning.strings.forEach((_other, by) => {
      if (by === index) return;
      for (const octave of [-OCTAVE, OCTAVE]) {
        const fret = board.fretFor(by, own - octave);
        if (fret === undefined || fret > OCTAVE_FRETS) continue;
        const cost = fret * tuning.strings.length + Math.abs(by - index);
        if (best && best.cost <= cost) continue;
        const sounds = board.pitches(by, fret)?.[0] ?? NaN;
        const check: EarCheck = {
          string: stringNumber(tuning, index),
          by: stringNumber(tuning, by),
          fret,
          stops: 'by',
          apart: hundredths(own - sounds),
        };
        best = { check, cost };
      }
    });
    return best ? [best.check] : [];
  });
}

function midiOf(tuning: Tuning, index: number): number {
  return tuning.strings[index]?.pitches[0].midi ?? NaN;
}

/** Without the dust of binary fractions: to a hundredth of a cent. */
function hundredths(halfSteps: number): number {
  const rounded = Math.round(halfSteps * 1e4) / 1e4;
  return rounded === 0 ? 0 : rounded;
}
