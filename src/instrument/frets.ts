import { failed, ok, type Result } from '../music/result';

/** The most frets a neck can be said to have; cells know the numbers 0 to 36. */
export const MOST_FRETS = 36;

/**
 * Reads the value of `frets:`, how many the neck has: `22`, `22 frets`; 1–36. Error: `fret-count`.
 * @example readFretCount('22') // { ok: true, value: 22 }
 */
export function readFretCount(text: string): Result<number> {
  const match = /^\s*(\d{1,4})(?:\s*frets?)?\s*$/i.exec(text);
  const count = Number(match?.[1]);
  if (match && count >= 1 && count <= MOST_FRETS) return ok(count);
  const suggestions = match ? [count < 1 ? '1' : String(MOST_FRETS)] : ['22'];
  const { start, end } = writtenRange(text);
  return failed(
    'fret-count',
    `Write how many frets the neck has, a whole number from 1 to ${MOST_FRETS}, such as 22.`,
    start,
    end,
    suggestions,
  );
}

/** Where the text stands without the spaces about it; all of it when there is nothing but spaces. */
export function writtenRange(text: string): { readonly start: number; readonly end: number } {
  const written = text.trim();
  if (written === '') return { start: 0, end: text.length };
  const start = text.indexOf(written);
  return { start, end: start + written.length };
}
