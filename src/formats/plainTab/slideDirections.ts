import type { GuessKind } from './importAnswer';
import type { RunSign } from './runSigns';

/**
 * Slides point the way they go.
 * @param guesses is told of a slide that pointed the other way
 */
export function withDirections(signs: readonly RunSign[], guesses: Set<GuessKind>): RunSign[] {
  return signs.map((sign, i) => {
    if (sign.kind !== 'slide') return sign;
    const from = signs[i - 1];
    const to = signs[i + 1];
    if (from?.fret === undefined || to?.fret === undefined || to.fret === from.fret) return sign;
    if (from.column + from.width !== sign.column) return sign;
    if (to.column !== sign.column + sign.width) return sign;
    const way = to.fret > from.fret ? '/' : '\\';
    if (sign.text.startsWith(way)) return sign;
    if (/[/\\]{2}/.test(sign.text) && new Set(sign.text).size > 1) return sign;
    guesses.add('slides');
    return { ...sign, text: way.repeat(sign.text.length) };
  });
}
