import { PALM_MUTE, type BarList } from './barList';
import { follows, signBetween } from './barSigns';

/**
 * What rows say across a bar sign at which bars were taken apart, as a sentence. Runs of palm mute may be cut: each piece
 * goes on covering its notes.
 */
export function tornMark({ bars }: BarList): string | undefined {
  for (const [i, bar] of bars.entries()) {
    const before = bars[i - 1];
    const sign = signBetween(before, bar);
    // At the head of a line the sign itself has to be there.
    const hidden = [...bar.over].find(
      ([, text]) => text.trimEnd().length > sign.length || (!before && !text.startsWith('|')),
    );
    if (hidden)
      return `Something in the row “${hidden[0]}” stands over a bar sign, so the bars cannot be taken apart there: move it into its bar.`;
    const next = bars[i + 1];
    if (next && follows(bar, next)) continue;
    const torn = [...bar.across.keys()].find((key) => !key.startsWith(PALM_MUTE));
    if (torn !== undefined)
      return `Something in the row “${torn}” lies across a bar sign, so the bars cannot be taken apart there: move it into one bar.`;
  }
  return undefined;
}
