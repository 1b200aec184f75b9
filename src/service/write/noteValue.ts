import { fraction, multiply, type Fraction } from '../../music/fraction';
import { failed, ok, type Result } from '../../music/result';

/** The lengths that a note may have, in quarter notes, and the letter that players write for each (common practice). */
const VALUES: readonly { readonly word: string; readonly letter: string; readonly length: Fraction }[] = [
  { word: 'whole', letter: 'w', length: fraction(4) },
  { word: 'half', letter: 'h', length: fraction(2) },
  { word: 'quarter', letter: 'q', length: fraction(1) },
  { word: 'eighth', letter: 'e', length: fraction(1, 2) },
  { word: 'sixteenth', letter: 's', length: fraction(1, 4) },
];

/** What is taken where nothing is said. */
export const USUAL_VALUE = 'eighth';

const DOTTED = fraction(3, 2);
const TRIPLET = fraction(2, 3);

/**
 * Reads the length of a note in words: `quarter`, `dotted eighth`, `eighth triplet`; or as players shorten it: `q`,
 * `e.`, `et`.
 * @returns its length in quarter notes; error `note-value`
 * @example readNoteValue('dotted quarter') // 3/2
 */
export function readNoteValue(text: string): Result<Fraction> {
  const written = text.trim().toLowerCase();
  const words = /^(?:(dotted)[\s-]+)?([a-z]+?)(?:[\s-]+notes?)?(?:[\s-]+(triplets?)(?:[\s-]+notes?)?)?$/.exec(
    written,
  );
  const letters = /^([whqes])([.t]?)$/.exec(written);
  const value = letters
    ? VALUES.find(({ letter }) => letter === letters[1])
    : VALUES.find(({ word }) => word === words?.[2]);
  const dotted = letters ? letters[2] === '.' : words?.[1] !== undefined;
  const triplet = letters ? letters[2] === 't' : words?.[3] !== undefined;
  if (!value || (dotted && triplet))
    return failed(
      'note-value',
      `“${text.trim()}” is no length of a note: whole, half, quarter, eighth or sixteenth is expected, with dotted before it or triplet behind it, or in short w h q e s with . or t.`,
      0,
      text.length,
      ['eighth', 'dotted quarter'],
    );
  return ok(
    dotted ? multiply(value.length, DOTTED) : triplet ? multiply(value.length, TRIPLET) : value.length,
  );
}
