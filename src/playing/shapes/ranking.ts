import { countTones, type WantedChord } from './wanted';

/** What makes a shape worse beside what it costs the hand; in the hand's unit (1 is a shift with a finger down). */
export const SHAPE_CONSTANTS = {
  noFifth: { value: 3, reason: 'a full chord is asked for; the fifth is missed least (engineering value)' },
  noExtension: { value: 1, reason: 'a ninth or eleventh that the name implies (engineering value)' },
  inversion: {
    value: 6,
    reason: 'the root in the bass is what is expected of a name without a slash (engineering value)',
  },
  inversionReentrant: {
    value: 0.4,
    reason: 'where the strings do not rise in order, the lowest pitch is a weak bass (chord-names facts, §1)',
  },
  silentLow: {
    value: 0.8,
    reason: 'a low-placed string not played: usual where the bass lies on the next one (engineering value)',
  },
  silentHigh: {
    value: 2,
    reason: 'a string not played at the top: the chord loses its treble (engineering value)',
  },
  silentHighPower: {
    value: 0.3,
    reason:
      'the same in a chord of two tones, which is played on the low strings (common practice, no source)',
  },
  silentLowPower: {
    value: 1.6,
    reason: 'a chord of two tones is played on the low strings (common practice, no source)',
  },
  thin: { value: 4, reason: 'each sounding string short of four (engineering value)' },
  innerMuted: {
    value: 3,
    reason: "a string muted between two that sound, on top of the hand's own 2 (engineering value)",
  },
} as const;

/** Strings that make a chord full enough, and a chord of two tones; on fewer it is thin. */
const FULL_STRINGS = 4;
const FULL_STRINGS_POWER = 3;

/** How full a chord is to be, and what strings cost that are not played below and above it. */
export interface Fullness {
  readonly strings: number;
  readonly silentLow: number;
  readonly silentHigh: number;
}

export function fullness({ required, optional }: WantedChord): Fullness {
  const { silentLow, silentHigh, silentLowPower, silentHighPower } = SHAPE_CONSTANTS;
  return countTones(required | optional) > 2
    ? { strings: FULL_STRINGS, silentLow: silentLow.value, silentHigh: silentHigh.value }
    : { strings: FULL_STRINGS_POWER, silentLow: silentLowPower.value, silentHigh: silentHighPower.value };
}

/** A shape is told with further strings where they make it so little dearer (engineering value). */
export const FULLER = 1.4;

/**
 * Shapes of one place on the neck that are shown before others have had their turn, those with the root in the bass and
 * others counted apart.
 */
export const SHOWN_A_PLACE = 2;
