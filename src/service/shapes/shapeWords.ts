import { formatCapo } from '../../instrument/capo';
import type { Header } from '../../notation/header';
import type { Grip } from '../../playing/hand/grips';
import { fingerWords, stringList, stringRange } from '../grip/fingerWords';
import { capital } from '../hover/text';
import type { ShapeAnswer } from './shapesAnswer';

type Told = Pick<
  ShapeAnswer,
  | 'frets'
  | 'text'
  | 'bar'
  | 'name'
  | 'kind'
  | 'leftOut'
  | 'openStrings'
  | 'innerMuted'
  | 'position'
  | 'rootInBass'
  | 'bass'
>;

/**
 * A few words for a list: `full, strings 1 and 3 open, position 1`.
 * @param isBassAsked whether the name says what stands in the bass
 */
export function shapeShort(told: Told, isBassAsked: boolean): string {
  const { kind, leftOut, openStrings, innerMuted, position, rootInBass, bass } = told;
  return [
    kind === 'full' ? 'full' : `reduced: without ${leftOut}`,
    rootInBass || isBassAsked ? '' : `${bass} in the bass`,
    openStrings.length === 0 ? '' : `${isAllOpen(told) ? 'all strings' : stringList(openStrings)} open`,
    innerMuted.length > 0 ? `${stringList(innerMuted)} muted` : '',
    position === null ? 'no finger' : `position ${position}`,
  ]
    .filter((text) => text !== '')
    .join(', ');
}

/** Sentences for the player. */
export function shapeWords(
  told: Told,
  grip: Pick<Grip, 'placements' | 'barres'>,
  isBassAsked: boolean,
): string {
  const { frets, bar, kind, leftOut, openStrings, innerMuted, rootInBass, bass } = told;
  const unplayed = frets.flatMap((fret, index) => {
    const string = frets.length - index;
    return fret === null && !innerMuted.includes(string) ? [string] : [];
  });
  const sentences = [
    bar
      ? `The bar lies at fret ${bar.fret} over ${stringRange(bar.from, bar.to)}`
      : fingerWords(grip) || 'All open, no finger is needed',
    openStrings.length === 0 || isAllOpen(told) ? '' : `Open: ${stringList(openStrings)}`,
    unplayed.length === 0 ? '' : `Not played: ${stringList(unplayed)}`,
    innerMuted.length === 0
      ? ''
      : `${capital(stringList(innerMuted))} must be kept silent between the others`,
    kind === 'full' ? 'Every tone of the chord sounds' : `Reduced: it leaves out ${leftOut}`,
    rootInBass || isBassAsked ? '' : `${bass} is in the bass, not the root`,
  ];
  return sentences.flatMap((sentence) => (sentence === '' ? [] : [`${sentence}.`])).join(' ');
}

function isAllOpen({ frets, openStrings }: Told): boolean {
  return openStrings.length === frets.length;
}

/** What the picture shows, in words. */
export function shapeAlt({ name, text, bar }: Told, { capo }: Header): string {
  const parts = [`${name}: ${text}, from the highest string number to string 1`];
  if (bar) parts.push(`bar at fret ${bar.fret}`);
  if (capo)
    parts.push(
      capo.strings ? `partial capo ${formatCapo(capo)}` : `frets counted from the capo at fret ${capo.fret}`,
    );
  return parts.join('; ');
}
