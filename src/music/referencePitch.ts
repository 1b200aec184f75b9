import { failed, ok, type Result } from './result';

/** Hertz of A4 that are read: wide enough for old and new practice, narrow enough to catch a slip of the pen. */
const LOWEST = 380;
const HIGHEST = 500;

/**
 * Reads the frequency of A4: `A4 = 442 Hz`, `442`, `442 Hz`, `A=432`; 380…500 Hz. Without one it is 440 Hz
 * (ISO 16:1975, in frequency.ts).
 * @example readReferencePitch('A4 = 442 Hz') // 442
 */
export function readReferencePitch(text: string): Result<number> {
  const start = text.length - text.trimStart().length;
  const end = text.trimEnd().length;
  const match = /^(?:a4?\s*=\s*)?(\d+(?:\.\d+)?)(?:\s*(?:hz|hertz))?$/i.exec(text.trim());
  if (!match) {
    return failed(
      'reference-pitch',
      'A reference pitch is the frequency of A4, such as A4 = 442 Hz.',
      start,
      end,
      ['A4 = 440 Hz'],
    );
  }
  const hertz = Number(match[1]);
  if (hertz < LOWEST || hertz > HIGHEST) {
    return failed(
      'reference-pitch-range',
      `The frequency of A4 is ${LOWEST} to ${HIGHEST} Hz; ${match[1]} Hz is outside. Most instruments tune to 440 Hz.`,
      start,
      end,
      ['A4 = 440 Hz'],
    );
  }
  return ok(hertz);
}
