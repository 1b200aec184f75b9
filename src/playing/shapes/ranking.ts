/** What makes a shape worse beside what it costs the hand; in the hand's unit (1 is a shift with a finger down). */
export const SHAPE_CONSTANTS = {
  noFifth: { value: 3, reason: 'a full chord is asked for; the fifth is missed least (engineering value)' },
  noExtension: { value: 1, reason: 'a ninth or eleventh that the name implies (engineering value)' },
  inversion: {
    value: 4,
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
  thin: { value: 4, reason: 'each sounding string short of four (engineering value)' },
  innerMuted: {
    value: 3,
    reason: "a string muted between two that sound, on top of the hand's own 2 (engineering value)",
  },
} as const;

/** Strings that make a chord full enough; on fewer it is thin. */
export const FULL_STRINGS = 4;

/** Shapes of one place on the neck that are shown before others have had their turn. */
export const SHOWN_A_PLACE = 2;
