import { failed, ok, type Result } from '../music/result';
import { writtenRange } from './frets';

/**
 * A capo. Under a full capo tab is counted from the capo; under a partial one always from the nut.
 */
export interface Capo {
  readonly fret: number;
  /** String numbers that a partial capo covers; undefined for a full capo. A capo on every string is full. */
  readonly strings: readonly number[] | undefined;
}

/** Whether the capo leaves some string free. */
export function isPartial(capo: Capo | undefined): boolean {
  return capo?.strings !== undefined;
}

const NONE = /^(?:none|no|off|0|no capo|without)?$/i;
const FULL = /^(?:(?:at|on|fret|at fret|on fret)\s+)?(?:the\s+)?(\d{1,3})(?:st|nd|rd|th)?(?:\s+fret)?$/i;
const PARTIAL =
  /^((?:(?:at|fret|at fret)\s+)?(?:the\s+)?(\d{1,3})(?:st|nd|rd|th)?(?:\s+fret)?\s+on\s+)((?:the\s+)?(?:strings?\s+)?)(.*)$/i;

/**
 * Reads the value of `capo:`: `3`, `3rd fret`, `none`; partial, with string numbers: `2 on 5 4 3`, `2 on 5-3`,
 * `2 on strings 5, 4 and 3`. Undefined for no capo. A capo on every string is full, however it is written.
 * Errors: `capo`, `capo-fret` (1 to one below the last fret), `capo-string` with the number that is no string.
 * @param frets how many the neck has
 * @example readCapo('2 on 5-3', 6, 22) // { ok: true, value: { fret: 2, strings: [5, 4, 3] } }
 */
export function readCapo(text: string, stringCount: number, frets: number): Result<Capo | undefined> {
  const { start, end } = writtenRange(text);
  const written = text.trim().replace(/\s/g, ' ');
  if (NONE.test(written)) return ok(undefined);
  const full = FULL.exec(written);
  const partial = full ? null : PARTIAL.exec(written);
  if (!full && !partial) {
    return failed(
      'capo',
      'Write the fret of the capo, such as 3 or none; for a partial capo add the strings, such as 2 on 5 4 3.',
      start,
      end,
      mendsFor(written, stringCount),
    );
  }
  const fretText = full?.[1] ?? partial?.[2] ?? '';
  const fret = Number(fretText);
  if (fret < 1 || fret >= frets) {
    const at = start + written.indexOf(fretText);
    return failed(
      'capo-fret',
      `A capo stands at a fret from 1 to ${Math.max(frets - 1, 1)} on this neck of ${frets}; ${fret} is none of them.`,
      at,
      at + fretText.length,
      fret < 1 ? ['none'] : [],
    );
  }
  if (!partial) return ok({ fret, strings: undefined });
  const list = partial[4] ?? '';
  const listStart = start + (partial[1] ?? '').length + (partial[3] ?? '').length;
  const strings = readStringNumbers(list, listStart, stringCount);
  if (!strings.ok) return strings;
  if (strings.value.length === stringCount) return ok({ fret, strings: undefined });
  return ok({ fret, strings: strings.value });
}

/** The value of `capo:` that reads back to the same capo: `none`, `3`, `2 on 5 4 3`. */
export function formatCapo(capo: Capo | undefined): string {
  if (capo === undefined) return 'none';
  return capo.strings === undefined ? String(capo.fret) : `${capo.fret} on ${capo.strings.join(' ')}`;
}

/** `5 4 3`, `5-3`, `5, 4 and 3`, `all strings`, as numbers from high to low, each once. */
function readStringNumbers(list: string, offset: number, stringCount: number): Result<readonly number[]> {
  const whole = Array.from({ length: stringCount }, (_, index) => stringCount - index);
  if (/^(?:all|all strings|every string)$/i.test(list)) return ok(whole);
  const covered = new Set<number>();
  const pattern = /(\d+)(?:\s*(?:-|–|—|to)\s*(\d+))?|[^\s,;&+]+/gi;
  for (const match of list.matchAll(pattern)) {
    const start = offset + match.index;
    const end = start + match[0].length;
    if (match[1] === undefined) {
      if (/^(?:and|strings?)$/i.test(match[0])) continue;
      return failed(
        'capo-string',
        `“${match[0]}” is no string number. Write the numbers of the strings the capo covers, such as 5 4 3.`,
        start,
        end,
      );
    }
    const first = Number(match[1]);
    const last = Number(match[2] ?? match[1]);
    const wrong = [first, last].find((number) => number < 1 || number > stringCount);
    if (wrong !== undefined) {
      return failed(
        'capo-string',
        `There is no string ${wrong}: the strings are numbered 1 to ${stringCount}, string 1 at the top of the tab.`,
        start,
        end,
      );
    }
    for (let number = Math.min(first, last); number <= Math.max(first, last); number++) covered.add(number);
  }
  if (covered.size > 0) return ok(whole.filter((number) => covered.has(number)));
  return failed(
    'capo-string',
    'Write the numbers of the strings the capo covers, such as 5 4 3.',
    offset,
    offset + Math.max(list.length, 1),
  );
}

const ROMAN = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII', 'VIII', 'IX', 'X', 'XI', 'XII'];

/** Other usual ways to write a capo: a Roman numeral, and one fret a string from low to high (`022200`). */
function mendsFor(written: string, stringCount: number): readonly string[] {
  const roman = ROMAN.indexOf(written.toUpperCase().replace(/^(?:FRET|AT) /, ''));
  if (roman >= 0) return [String(roman + 1)];
  const digits = Array.from(written.replace(/[ -]/g, ''));
  const frets = new Set(digits.filter((digit) => !/[0x]/i.test(digit)));
  const [fret] = frets;
  if (digits.length !== stringCount || frets.size !== 1 || fret === undefined || !/\d/.test(fret)) return [];
  const strings = digits.flatMap((digit, index) => (digit === fret ? [stringCount - index] : []));
  return [strings.length === stringCount ? fret : `${fret} on ${strings.join(' ')}`];
}
