import { fullness, SHAPE_CONSTANTS as K } from './ranking';
import type { StringChoice } from './strings';
import { countTones, type WantedChord } from './wanted';

/** What a choice of strings sounds, and what is thin or upside down about it. */
export interface Weighed {
  readonly sounding: number;
  readonly leftOut: number;
  /** Pitch class of the lowest pitch. */
  readonly bass: number;
  /** Bits of strings that are silent between two that sound. */
  readonly innerMuted: number;
  /** Whether the lowest pitch is the one asked for: the bass behind a slash, else the root. */
  readonly rooted: boolean;
  /** What ranks it beside the hand's cost; infinite where the bass is not the one asked for. */
  readonly extra: number;
}

/**
 * Weighs a choice of strings against the chord asked for; see `ranking.ts`.
 * @param reentrant whether some open string is lower than the one before it
 */
export function weigh(
  choices: readonly (StringChoice | undefined)[],
  wanted: WantedChord,
  reentrant: boolean,
): Weighed {
  const first = choices.findIndex((choice) => choice !== undefined);
  const last = choices.findLastIndex((choice) => choice !== undefined);
  let [sounding, lowest, strings, innerMuted] = [0, Infinity, 0, 0];
  for (let index = first; index <= last; index++) {
    const choice = choices[index];
    if (!choice) {
      innerMuted |= 1 << index;
      continue;
    }
    strings++;
    sounding |= choice.mask;
    lowest = Math.min(lowest, choice.lowest);
  }
  const full = fullness(wanted);
  const bass = ((lowest % 12) + 12) % 12;
  const leftOut = (wanted.required | wanted.optional) & ~sounding;
  let extra = first * full.silentLow + (choices.length - 1 - last) * full.silentHigh;
  extra += countTones(innerMuted) * K.innerMuted.value;
  if (strings < full.strings) extra += (full.strings - strings) * K.thin.value;
  if (leftOut & wanted.fifth) extra += K.noFifth.value;
  extra += countTones(leftOut & ~wanted.fifth) * K.noExtension.value;
  const ofBass = bassCost(bass, wanted, reentrant);
  return { sounding, leftOut, bass, innerMuted, rooted: ofBass === 0, extra: extra + ofBass };
}

/** What a lowest pitch class costs; infinite where another one is asked for. */
export function bassCost(bass: number, wanted: WantedChord, reentrant: boolean): number {
  if (wanted.bass !== undefined) return bass === wanted.bass ? 0 : Infinity;
  if (wanted.root === undefined || bass === wanted.root) return 0;
  return reentrant ? K.inversionReentrant.value : K.inversion.value;
}
