import { formatCapo } from '../../instrument/capo';
import type { Header } from '../../notation/header';
import type { Held } from './grip';
import { fingerWords, stringList, stringRange } from './fingerWords';
import type { StringAt } from './strings';

/** What is said of every answer, so that it is not taken for more than it is. */
export const LEAST_EFFORT = "The fingers of least effort under the hand's table, for these notes alone";

interface Told extends Held {
  readonly strings: readonly StringAt[];
  readonly header: Header;
}

/** A grip in sentences for the player, and in fewer for those who do not see its picture. */
export function gripWords(told: Told): { readonly text: string; readonly alt: string } {
  const [main, ...others] = mainSentences(told);
  const open = openSentence(told);
  const sentences = [
    main,
    ...others,
    open,
    heldSentence(told),
    ...lostSentences(told),
    ...spanSentences(told),
  ];
  const alt = [`Grip: ${main ?? ''}`, open, capoSentence(told)];
  return { text: joined(sentences), alt: joined(alt) };
}

function joined(sentences: readonly (string | undefined)[]): string {
  return sentences
    .filter((one) => one !== undefined && one !== '')
    .map((one) => `${one}.`)
    .join(' ');
}

function mainSentences({ grip, bar, refused, header }: Told): string[] {
  if (header.fretting === 'slide') {
    if (!bar) return ['All open, the bar is lifted'];
    const lies = `The bar lies at fret ${bar.fret} over ${stringRange(bar.from, bar.to)}`;
    return refused.length === 0 ? [lies] : [lies, `No straight bar gives ${refused.join('; ')}`];
  }
  if (grip) return [fingerWords(grip) || 'All open, no finger is needed'];
  return [`Cannot be held: ${refused.join('; ')}`];
}

function openSentence({ strings, letGo, grip, bar }: Told): string | undefined {
  const open = strings.filter((one) => one.state === 'open' && !letGo.includes(one.string));
  const fingers = grip?.placements.some(({ finger }) => finger !== 0) || bar !== undefined;
  if (open.length === 0 || !fingers) return undefined;
  return `Open: ${stringList(open.map(({ string }) => string))}`;
}

function heldSentence({ strings, letGo, grip, bar }: Told): string | undefined {
  if (!grip && !bar) return undefined;
  const held = strings.filter((one) => one.state === 'stopped' && !one.struck && !letGo.includes(one.string));
  return held.length === 0 ? undefined : `Held from before: ${stringList(held.map(({ string }) => string))}`;
}

function lostSentences({ strings, letGo }: Told): string[] {
  const told: string[] = [];
  if (letGo.length > 0) told.push(`What rings on ${stringList(letGo)} has to be let go`);
  const withState = (state: StringAt['state']): readonly StringAt[] =>
    strings.filter((one) => one.state === state);
  for (const { string, fret } of withState('tapped'))
    told.push(`Fret ${fret ?? ''} on string ${string} is tapped by the other hand`);
  for (const { string, touched } of withState('touched'))
    told.push(`String ${string} is touched at ${touched ?? ''} for its harmonic`);
  for (const { string, fret } of withState('unplayable'))
    told.push(`Fret ${fret ?? ''} on string ${string} is left out, as it cannot be played there`);
  const muted = withState('muted').map(({ string }) => string);
  if (muted.length > 0) told.push(`Muted: ${stringList(muted)}`);
  return told;
}

function spanSentences({ grip }: Told): string[] {
  const stopped = grip?.placements.filter(({ finger }) => finger !== 0) ?? [];
  if (!grip || stopped.length === 0) return [];
  const frets = stopped.map(({ fret }) => fret);
  const [low, high] = [Math.min(...frets), Math.max(...frets)];
  const index = stopped.some(({ finger }) => finger === 1);
  return [
    ...(index ? [] : [`The index is free, over fret ${grip.position}`]),
    ...(low === high ? [] : [`Frets ${low} to ${high} span ${Math.round(grip.millimetres)} mm`]),
  ];
}

function capoSentence({ header }: Told): string | undefined {
  if (!header.capo) return undefined;
  return header.capo.strings
    ? `Partial capo: ${formatCapo(header.capo)}`
    : `Frets count from the capo at fret ${header.capo.fret}`;
}
