import { PALM_MUTE, type BarList } from './barList';
import { follows } from './barSigns';

/**
 * What rows say across a bar sign at which bars were taken apart, as a sentence. Runs of palm mute may be cut: each piece
 * goes on covering its notes.
 */
export function tornMark({ bars }: BarList): string | undefined {
  for (const [i, bar] of bars.entries()) {
    const next = bars[i + 1];
    if (next && follows(bar, next)) continue;
    const torn = [...bar.across.keys()].find((key) => !key.startsWith(PALM_MUTE));
    if (torn !== undefined)
      return `Something in the row “${torn}” lies across a bar sign, so the bars cannot be taken apart there: move it into one bar.`;
  }
  return undefined;
}
