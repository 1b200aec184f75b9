/** What makes a shape worse beside what it costs the hand; in the hand's unit (1 is a shift with a finger down). */
export const SHAPE_CONSTANTS = {
  noFifth: { value: 1.5, reason: 'a full chord is asked for; the fifth is missed least (engineering value)' },
  noExtension: { value: 1, reason: 'a ninth or eleventh that the name implies (engineering value)' },
  inversion: {
    value: 3,
    reason: 'the root in the bass is what is expected of a name without a slash (engineering value)',
  },
  inversionReentrant: {
    value: 0.4,
    reason: 'where the strings do not rise in order, the lowest pitch is a weak bass (chord-names facts, §1)',
  },
  silent: { value: 0.8, reason: 'each string less makes the chord thinner (engineering value)' },
  innerMuted: {
    value: 1.5,
    reason: "a string muted between two that sound, on top of the hand's own 2 (engineering value)",
  },
} as const;

/** Shapes of one place on the neck that are shown before others have had their turn. */
export const SHOWN_A_PLACE = 3;
