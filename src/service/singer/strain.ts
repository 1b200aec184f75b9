import { USUAL_LIMITS } from '../../instrument/strings/limits';
import { stringLoads } from '../../instrument/strings/stringLoads';
import type { Header } from '../../notation/header';
import type { StringStrain } from './singerAnswer';

/**
 * What the strings bear after all of them went up or down: the change of tension, 2^(k/6) for k half steps with the
 * square of the pitch (T = μ(2Lf)², Mersenne, Taylor), and the tightest and slackest string against the usual set in
 * the usual tuning. A capo hardly changes how strings pull.
 * @param headers the fields after it, of every part
 */
export function strainOf(headers: readonly Header[], tuningBy: number): StringStrain {
  const change = Math.round((2 ** (tuningBy / 6) - 1) * 100);
  const ratios = [...new Set(headers)].flatMap(
    ({ instrument, tuning, gauges, scaleLength, referencePitch }) =>
      stringLoads({ instrument, tuning, gauges, scaleLength, referencePitch }).strings.flatMap(
        ({ ratio }) => ratio ?? [],
      ),
  );
  const most = percent(Math.max(...ratios));
  const least = percent(Math.min(...ratios));
  return { change, most, least, words: wordsOf(change, most, least, ratios.length > 0) };
}

/** Whether some string is too slack to sound well; the limit is an engineering value. */
export function isSlack({ least }: StringStrain): boolean {
  return least < USUAL_LIMITS.slack * 100;
}

function percent(ratio: number): number {
  return Number.isFinite(ratio) ? Math.round(ratio * 100) : 100;
}

function wordsOf(change: number, most: number, least: number, known: boolean): string {
  const moves =
    change === 0
      ? 'The strings stay as they are'
      : `The strings pull ${Math.abs(change)} % ${change < 0 ? 'less' : 'more'} than now`;
  if (!known) return moves;
  const slack = least < USUAL_LIMITS.slack * 100;
  if (slack)
    return `${moves}; the slackest has ${least} % of its usual tension and may buzz and go out of tune`;
  if (change > 0 && most > 100) return `${moves}; the tightest has ${most} % of its usual tension`;
  return moves;
}
