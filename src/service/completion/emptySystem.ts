import { formatNoteName } from '../../music/noteName';
import type { Meter } from '../../music/meter';
import type { Header } from '../../notation/header';
import type { Offer } from './item';

const BARS = 4;
/** Columns of a bar beyond which fewer are given to a beat. */
const WIDEST = 64;

/** A whole system for the tuning in force: a label a string and four bars of dashes. */
export function emptySystemOffer(header: Header): Offer {
  const labels = header.tuning.strings
    .map(({ pitches }) => pitches.map(({ name }) => formatNoteName(name)).join('/'))
    .reverse();
  const width = Math.max(...labels.map((label) => label.length));
  const bar = `${'-'.repeat(columnsOfBar(header.meter))}|`;
  const text = labels.map((label) => `${label.padEnd(width)} |${bar.repeat(BARS)}`).join('\n');
  return {
    label: 'empty system',
    detail: `${labels.length} ${labels.length === 1 ? 'string' : 'strings'}, ${BARS} bars`,
    documentation: `The strings of the tuning in force, from string 1 down, with ${BARS} bars of dashes.`,
    text,
  };
}

/** Four columns a quarter note, so that sixteenths have their place; one for each lower note at least. */
function columnsOfBar({ upper, lower }: Meter): number {
  let each = Math.max(1, 16 / lower);
  while (each > 1 && each * upper > WIDEST) each /= 2;
  return each * upper;
}
