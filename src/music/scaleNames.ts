export type ScaleName = keyof typeof TABLE_NAMES;

/** The trade's name of each scale (common practice, no source) and what the table of scales calls it. */
export const TABLE_NAMES = {
  major: 'major',
  minor: 'aeolian',
  dorian: 'dorian',
  phrygian: 'phrygian',
  lydian: 'lydian',
  mixolydian: 'mixolydian',
  locrian: 'locrian',
  'major pentatonic': 'major pentatonic',
  'minor pentatonic': 'minor pentatonic',
  blues: 'minor blues',
  'major blues': 'major blues',
  'harmonic minor': 'harmonic minor',
  'melodic minor': 'melodic minor',
  'whole tone': 'whole tone',
  chromatic: 'chromatic',
} as const;

/** Every scale that has a name here, the modes first. */
export const SCALE_NAMES: readonly ScaleName[] = Object.keys(TABLE_NAMES) as ScaleName[];
