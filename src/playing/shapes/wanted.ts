import { writtenMask, type WrittenChord } from '../../music/chord/writtenChord';
import { pitchClassOf } from '../../music/noteName';

/** A chord as the finder wants it: sets of sounding pitch classes, bit 0 is C, bit 11 is B. */
export interface WantedChord {
  /** Pitch class of the root; undefined where the name says that it need not sound, or there is none. */
  readonly root: number | undefined;
  /** What must sound: what names the chord, a third always. */
  readonly required: number;
  /** What may be left out: a perfect fifth, the ninth of an eleventh … */
  readonly optional: number;
  /** The perfect fifth, where it may be left out; 0 else. A shape without it alone is `reduced`. */
  readonly fifth: number;
  /** At least one of these must sound: the altered tones of an `alt` chord. 0 where nothing is asked. */
  readonly oneOf: number;
  /** Pitch class of the bass behind a slash: the lowest sounding pitch. Undefined without one. */
  readonly bass: number | undefined;
}

/** Degrees that a plain name may leave out; any other one that may be left out is an altered tone. */
const PLAIN: ReadonlySet<string> = new Set(['3', '5', '9', '11', '13']);

/**
 * What a written name asks of a shape; undefined for `N.C.`. The third is asked for even where a reader would pass it
 * over, as in a dominant eleventh: without it the shape sounds as another chord.
 * @param by half steps by which everything sounds above its name, as under a full capo
 * @example wantedChord(readChordName('G7').value) // required G, B, F; optional and fifth D
 */
export function wantedChord(written: WrittenChord, by = 0): WantedChord | undefined {
  if (!written.root) return undefined;
  const root = (pitchClassOf(written.root) + by) % 12;
  const turned = (mask: number): number => ((mask << root) | (mask >> (12 - root))) & 0xfff;
  let required = writtenMask(written, 'must');
  let optional = writtenMask(written, 'may');
  let fifth = 0;
  let oneOf = 0;
  for (const { degree, need } of written.tones) {
    const bit = 1 << degree.halfSteps;
    if (degree.number === 3) {
      required |= bit;
      optional &= ~bit;
    } else if (need === 'may' && degree.text === '5') fifth |= bit;
    else if (need === 'may' && !PLAIN.has(degree.text)) oneOf |= bit;
  }
  const bass = written.bass && (pitchClassOf(written.bass) + by) % 12;
  const bassBit = bass === undefined ? 0 : 1 << bass;
  required = turned(required) | bassBit;
  return {
    root: written.rootNeed === 'must' ? root : undefined,
    required,
    optional: turned(optional) & ~required,
    fifth: turned(fifth) & ~required,
    oneOf: turned(oneOf) & required ? 0 : turned(oneOf),
    bass,
  };
}

/**
 * The chord of given sounding pitches, all of them asked for, the lowest one in the bass: for a shape that has no
 * everyday name.
 * @param midis sounding MIDI numbers; undefined for an empty list
 */
export function wantedSet(midis: readonly number[]): WantedChord | undefined {
  if (midis.length === 0) return undefined;
  const classOf = (midi: number): number => ((Math.round(midi) % 12) + 12) % 12;
  const required = midis.reduce((mask, midi) => mask | (1 << classOf(midi)), 0);
  return { root: undefined, required, optional: 0, fifth: 0, oneOf: 0, bass: classOf(Math.min(...midis)) };
}

/** How many pitch classes a set holds. */
export function countTones(mask: number): number {
  let count = 0;
  for (let rest = mask; rest; rest &= rest - 1) count++;
  return count;
}
