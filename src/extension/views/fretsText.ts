/**
 * Frets as players write a shape, the highest string number first: `x 3 2 0 1 0`, `x-3-2-0-1-0`, or `x32010` where no
 * fret has two digits. `x` is a string that is not played.
 * @returns undefined for anything else, such as a chord's name
 * @example readFrets('x32010') // [null, 3, 2, 0, 1, 0]
 */
export function readFrets(text: string): readonly (number | null)[] | undefined {
  const own = text.trim().toLowerCase();
  const signs = /^[0-9x]{4,14}$/.test(own) ? [...own] : own.split(/[\s,-]+/);
  if (signs.length < 4 || !signs.every((sign) => /^(?:\d{1,2}|x)$/.test(sign))) return undefined;
  return signs.map((sign) => (sign === 'x' ? null : Number(sign)));
}
