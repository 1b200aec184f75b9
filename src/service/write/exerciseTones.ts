import { formatPitchName, pitchClassOf, type PitchName } from '../../music/noteName';
import { readChordName } from '../../music/chord/readChordName';
import { failed, ok, type Result } from '../../music/result';
import { formatScale, readScale, scaleSteps } from '../../music/scale';
import type { Header } from '../../notation/header';
import { capoShift } from '../../notation/headerViews';
import { nameAtFifths, nearestFifths } from '../../music/lineOfFifths';

/** The tones of an exercise as they sound. */
export interface ExerciseTones {
  /** As played: `D dorian`, `Am7 arpeggio`. */
  readonly title: string;
  /** As it sounds where a full capo makes that another name; undefined elsewhere. */
  readonly sounds: string | undefined;
  /** The pitch class on which it begins and ends, 0…11. */
  readonly first: number;
  /** Pitch classes within the octave above the first, as half steps above it, 0…11, rising. */
  readonly steps: readonly number[];
  /**
   * What one run of an arpeggio goes through in half steps above the first tone, where the chord reaches past the
   * octave: a ninth chord up to its ninth. Undefined where a run ends on the octave.
   */
  readonly stacked: readonly number[] | undefined;
}

/**
 * The tones of a scale; one without a first note begins on that of the key in force.
 * Errors: those of `readScale`; `scale-key` where there is neither.
 */
export function scaleTones(text: string, header: Header): Result<ExerciseTones> {
  const read = readScale(text);
  if (!read.ok) return read;
  const { name } = read.value;
  const tonic = read.value.tonic ?? header.key?.tonic;
  if (!tonic)
    return failed(
      'scale-key',
      `Say on which note the ${name} scale begins, such as D ${name}; no key is in force here.`,
      0,
      text.length,
    );
  const shift = capoShift(header);
  return ok({
    title: formatScale({ tonic, name }),
    sounds: shift === 0 ? undefined : formatScale({ tonic: raised(tonic, shift), name }),
    first: (pitchClassOf(tonic) + shift) % 12,
    steps: scaleSteps(name),
    stacked: undefined,
  });
}

/** The tones of a chord, from its bass up. Errors: those of `readChordName`; `chord-none` for a name without notes. */
export function chordTones(text: string, header: Header): Result<ExerciseTones> {
  const read = readChordName(text);
  if (!read.ok) return read;
  const { root, bass, tones, rootNeed, text: name } = read.value;
  if (!root)
    return failed('chord-none', `${name} names no notes; name a chord, such as Am7.`, 0, text.length);
  const above = [...(rootNeed === 'must' ? [0] : []), ...tones.map(({ degree }) => stacked(degree))];
  const shift = capoShift(header);
  const rootClass = pitchClassOf(root) + shift;
  const low = bass ? pitchClassOf(bass) + shift - rootClass : Math.min(...above);
  const steps = [...new Set([...above, low].map((step) => (((step - low) % 12) + 12) % 12))];
  const run = above.map((step) => step - low).sort((a, b) => a - b);
  return ok({
    title: `${name} arpeggio`,
    sounds: shift === 0 ? undefined : `the same chord on ${formatPitchName(raised(root, shift))}`,
    first: (((rootClass + low) % 12) + 12) % 12,
    steps: steps.sort((a, b) => a - b),
    stacked: !bass && Math.max(...run) > 12 ? run : undefined,
  });
}

/** Ninths, elevenths and thirteenths lie above the octave. */
function stacked({ number, halfSteps }: { readonly number: number; readonly halfSteps: number }): number {
  return halfSteps + (number > 8 ? 12 : 0);
}

/** A name some half steps up, the nearest to it on the line of fifths. */
function raised(name: PitchName, halfSteps: number): PitchName {
  const sounding = (pitchClassOf(name) + halfSteps) % 12;
  return nameAtFifths(nearestFifths(sounding, 1.5));
}
