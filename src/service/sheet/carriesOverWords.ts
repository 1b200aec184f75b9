import type { CarriesOver } from '../../instrument/retuning/carriesOver';
import type { StringChange } from '../../instrument/retuning/stringChanges';
import { capital } from '../hover/text';
import { movedBy, stringsWords } from './noteText';
import type { SheetCarriesOver } from './sheetAnswer';

/**
 * What a player of the other tuning already knows, in sentences.
 * @example carriesOverWords(openEFromStandard, changes).words
 * // ['Strings 6, 2 and 1 are as they were', 'String 5 now has the note names of string 2, string 4 those of strings 6
 * // and 1', 'Only string 3 is new', 'Strings 5 and 4 both went up 2 half steps: …']
 */
export function carriesOverWords(over: CarriesOver, changes: readonly StringChange[]): SheetCarriesOver {
  if (changes.every(({ kind }) => kind === 'stays')) return { ...over, words: [] };
  const left = changes.filter(({ to }) => to);
  const [first] = over.together;
  const all = first?.strings.length === left.length ? first : undefined;
  return { ...over, words: all ? [allWords(all.halfSteps)] : wordsOf(over, left.length) };
}

function allWords(steps: number): string {
  return `Every string went ${steps < 0 ? 'down' : 'up'} ${movedBy(steps)}: all your shapes and scales stay, and sound that much ${steps < 0 ? 'lower' : 'higher'}`;
}

function wordsOf({ unchanged, renamed, fresh, together }: CarriesOver, count: number): readonly string[] {
  const sentences: string[] = [];
  if (unchanged.length === count) return ['All strings that are left are as they were'];
  if (unchanged.length > 0)
    sentences.push(
      `${capital(stringsWords(unchanged))} ${unchanged.length === 1 ? 'is as it was' : 'are as they were'}`,
    );
  const own = renamed.filter(({ number, as }) => as.includes(number)).map(({ number }) => number);
  if (own.length > 0)
    sentences.push(
      `${capital(stringsWords(own))} ${own.length === 1 ? 'keeps its note names' : 'keep their note names'} in another octave`,
    );
  const others = renamed.filter(({ number, as }) => !as.includes(number));
  const told = others.map(({ number, as }, at) =>
    at === 0
      ? `string ${number} now has the note names of ${stringsWords(as)}`
      : `string ${number} those of ${stringsWords(as)}`,
  );
  if (told.length > 0) sentences.push(capital(told.join('; ')));
  if (fresh.length === count) sentences.push('No string has a note that a string had before');
  else if (fresh.length > 0) {
    const only = fresh.length <= count / 2 ? 'only ' : '';
    sentences.push(capital(`${only}${stringsWords(fresh)} ${fresh.length === 1 ? 'is' : 'are'} new`));
  }
  for (const { strings, halfSteps: steps } of together)
    sentences.push(
      `${capital(stringsWords(strings))} went ${steps < 0 ? 'down' : 'up'} ${movedBy(steps)} together: among them every shape stays, and each note lies ${Math.abs(steps)} ${Math.abs(steps) === 1 ? 'fret' : 'frets'} ${steps < 0 ? 'higher' : 'lower'}`,
    );
  return sentences;
}
