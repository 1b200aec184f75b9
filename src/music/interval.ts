/** Names of 0…24 half steps in the trade; twelve and above are compound (common practice, no source). */
const WORDS = [
  'unison',
  'minor second',
  'major second',
  'minor third',
  'major third',
  'perfect fourth',
  'tritone',
  'perfect fifth',
  'minor sixth',
  'major sixth',
  'minor seventh',
  'major seventh',
  'octave',
  'minor ninth',
  'major ninth',
  'minor tenth',
  'major tenth',
  'perfect eleventh',
  'octave and a tritone',
  'perfect twelfth',
  'minor thirteenth',
  'major thirteenth',
  'minor fourteenth',
  'major fourteenth',
  'two octaves',
] as const;

const OCTAVES = [
  '',
  'octave',
  'two octaves',
  'three octaves',
  'four octaves',
  'five octaves',
  'six octaves',
] as const;

/**
 * The name of an interval: `major third`, `octave`, `major tenth`, `two octaves and a perfect fifth`.
 * @param halfSteps any number; its sign does not count, decimals are rounded to the half step.
 * @example intervalWords(16) // 'major tenth'
 */
export function intervalWords(halfSteps: number): string {
  const size = Math.abs(Math.round(halfSteps));
  const word = WORDS[size];
  if (word !== undefined) return word;
  const octaves = Math.floor(size / 12);
  const rest = size % 12;
  const whole = OCTAVES[octaves] ?? `${octaves} octaves`;
  return rest === 0 ? whole : `${whole} and a ${WORDS[rest] ?? ''}`;
}
