import { failed, ok, type Result } from '../music/result';
import { writtenRange } from './frets';

/** Millimetres in an inch: exact, the international inch (1959 agreement; ISO 31-1). */
export const MILLIMETRES_PER_INCH = 25.4;

const SHORTEST = 100;
const LONGEST = 2000;

/**
 * Reads the value of `scale length:` as millimetres: `648 mm`, `64.8 cm`, `25.5 in`, `25.5"`, `25 1/2 in`;
 * 100–2000 mm. Errors: `scale-length-unit` for a number alone, `scale-length-range`, `scale-length`.
 * @example readScaleLength('25.5 in') // { ok: true, value: 647.7 }
 */
export function readScaleLength(text: string): Result<number> {
  const { start, end } = writtenRange(text);
  const match =
    /^(\d{1,5}(?:[.,]\d{1,4})?)(?:[ -](\d{1,2})\/(\d{1,2}))?\s*(mm|millimet(?:re|er)s?|cm|in|inch(?:es)?|["”″])?\.?$/i.exec(
      text.trim(),
    );
  if (!match) {
    return failed(
      'scale-length',
      'Write the length of the open strings, such as 648 mm or 25.5 in.',
      start,
      end,
      ['648 mm', '25.5 in'],
    );
  }
  const number = Number((match[1] ?? '').replace(',', '.')) + fractionOf(match[2], match[3]);
  const unit = match[4]?.toLowerCase();
  if (unit === undefined) {
    const guess = number >= SHORTEST ? `${number} mm` : `${number} in`;
    return failed('scale-length-unit', `Write the unit: mm or in, such as ${guess}.`, start, end, [guess]);
  }
  const factor = unit.startsWith('m') ? 1 : unit === 'cm' ? 10 : MILLIMETRES_PER_INCH;
  const millimetres = Math.round(number * factor * 1000) / 1000;
  if (millimetres >= SHORTEST && millimetres <= LONGEST) return ok(millimetres);
  return failed(
    'scale-length-range',
    `A scale length lies between ${SHORTEST} mm and ${LONGEST} mm (3.94 in to 78.7 in); this is ${millimetres} mm.`,
    start,
    end,
    factor === 1 && number >= 4 && number < 79 ? [`${number} in`] : [],
  );
}

function fractionOf(upper: string | undefined, lower: string | undefined): number {
  const divisor = Number(lower);
  return upper === undefined || !(divisor > 0) ? 0 : Number(upper) / divisor;
}
