import { capital } from '../hover/text';
import type { TabDocument } from '../../notation/tabDocument';
import { cannotBeWritten } from '../change/change';
import type { ChordSystem } from './chordEvents';
import type { PlayedChord } from './chooseShapes';
import type { FilledSystems } from './filledSystems';

/** What came of filling a passage. */
export interface Filled {
  readonly document: TabDocument;
  readonly systems: readonly ChordSystem[];
  /** Those that could be filled. */
  readonly open: readonly ChordSystem[];
  readonly played: readonly PlayedChord[];
  readonly filled: FilledSystems;
}

/** Names of the same kind are not all told one by one. */
const MOST_TOLD = 12;

/** Sentences for the user: what was written first, then what was not and why. */
export function fillRemarks({ document, systems, open, played, filled }: Filled): string[] {
  const written = played.filter(({ system }) => !filled.unwritten.includes(system));
  const sounding = written.filter((chord) => chord.played);
  const named = written.filter(({ event }) => event.chord === undefined || event.chord.root);
  return [
    summary(sounding.length, named.length, open.length),
    ...emptyChords(written, document),
    ...filled.unwritten.map((system) => cannotBeWritten(document.placeOf(system).firstBar)),
    ...stayed(systems),
    ...guessedTimes(written, document),
    ...(filled.stopped
      ? ['A dot stops a string that would ring on into a chord it does not belong to.']
      : []),
    ...reducedShapes(sounding),
  ];
}

function summary(sounding: number, named: number, systems: number): string {
  if (systems === 0) return 'Nothing is changed: every system here has tab already.';
  if (named === 0) return 'No chord is named here, so that the strings stay silent.';
  const count =
    sounding === named
      ? named === 1
        ? 'The only chord'
        : `All ${named} chords`
      : `${sounding} of ${named} chords`;
  return `${count} ${sounding === 1 ? 'has its shape' : 'have their shapes'}, chosen so that the hand moves least over the whole passage.`;
}

/** Names that could not be played, bar by bar, the same name with the same reason once. */
export function emptyChords(played: readonly PlayedChord[], document: TabDocument): string[] {
  const groups = new Map<string, { chord: PlayedChord; bars: string[] }>();
  for (const chord of played) {
    if (chord.reason === undefined) continue;
    const key = `${chord.event.mark.text} ${chord.reason}`;
    const group = groups.get(key) ?? { chord, bars: [] };
    group.bars.push(barOf(chord, document));
    groups.set(key, group);
  }
  const told = [...groups.values()].map(
    ({ chord: { event, reason }, bars }) =>
      `${barsWords(bars)}: ${event.mark.text} is left empty: ${reason ?? ''}`,
  );
  const more = told.length - MOST_TOLD;
  return more > 0 ? [...told.slice(0, MOST_TOLD), `${more} more names are left empty.`] : told;
}

/** `3`, or with a part's name where there are several: `low, 3`. */
function barOf({ event, system }: PlayedChord, { parts }: TabDocument): string {
  const { part } = system.header;
  return parts.length > 1 && part !== undefined ? `${part}, bar ${event.bar}` : String(event.bar);
}

/** `Bar 3`, `Bars 3, 5 and 7`, `Low, bar 3`. */
export function barsWords(bars: readonly string[]): string {
  const all = [...new Set(bars)];
  const list = all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} and ${all.at(-1) ?? ''}`;
  if (all.some((bar) => bar.includes(', bar '))) return capital(list);
  return `${all.length > 1 ? 'Bars' : 'Bar'} ${list}`;
}

function stayed(systems: readonly ChordSystem[]): string[] {
  const tab = systems.filter(({ strings }) => strings === 'tab').length;
  const some = systems.filter(({ strings }) => strings === 'some').length;
  return [
    ...(tab > 0 && tab < systems.length
      ? [
          `${tab} ${tab === 1 ? 'system has' : 'systems have'} tab already and ${tab === 1 ? 'stays' : 'stay'} as ${tab === 1 ? 'it is' : 'they are'}.`,
        ]
      : []),
    ...(some > 0
      ? [
          `${some} empty ${some === 1 ? 'system leaves' : 'systems leave'} strings out and ${some === 1 ? 'stays as it is; write all its' : 'stay as they are; write all their'} strings, or none, to have them filled.`,
        ]
      : []),
  ];
}

/** Bars whose chords were put on beats. */
export function guessedTimes(played: readonly PlayedChord[], document: TabDocument): string[] {
  const bars = played.filter(({ event }) => event.guessed).map((chord) => barOf(chord, document));
  if (bars.length === 0) return [];
  return [
    `${barsWords(bars)}: the columns of the row divide into no time that can be counted, so each chord stands on the nearest beat; see whether that is meant.`,
  ];
}

function reducedShapes(sounding: readonly PlayedChord[]): string[] {
  const names = sounding
    .filter(({ played }) => played && played.shape.shape.leftOut !== 0)
    .map(({ event }) => event.mark.text);
  const all = [...new Set(names)];
  if (all.length === 0) return [];
  const list = all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} and ${all.at(-1) ?? ''}`;
  return [
    `${list} ${all.length === 1 ? 'is' : 'are'} played without the fifth or another tone that the name lets go.`,
  ];
}
