import { letterDistance } from '../music/letterDistance';

/** How names that people type are compared, for instruments and tunings alike. */

const NUMBER_WORDS: Readonly<Record<string, string>> = {
  four: '4',
  five: '5',
  six: '6',
  seven: '7',
  eight: '8',
  nine: '9',
  ten: '10',
  twelve: '12',
};

/**
 * The form in which two names are compared: case, spaces and hyphens do not count, `♯` is `#`, `♭` is `b`, and
 * `seven-string` is `7 string`.
 * @example nameKey('Half-Step Down') // 'halfstepdown'
 */
export function nameKey(text: string): string {
  return text
    .toLowerCase()
    .replace(/♯/g, '#')
    .replace(/♭/g, 'b')
    .replace(/[\s\u2010-\u2015\u2212_'’-]+/g, '')
    .replace(
      /(?:four|five|six|seven|eight|nine|ten|twelve)(?=string)/g,
      (word) => NUMBER_WORDS[word] ?? word,
    );
}

/**
 * The names nearest to a text that is none of them, best first: those few letters away, then those that share its
 * beginning or hold it. At most `limit`; none when nothing is near.
 * @example nearestNames('mandolyn', ['guitar', 'mandolin', 'mandola']) // ['mandolin', 'mandola']
 */
export function nearestNames(text: string, names: readonly string[], limit = 3): readonly string[] {
  const wanted = nameKey(text);
  if (wanted === '') return [];
  return names
    .map((name, order) => ({ name, order, distance: nameDistance(wanted, nameKey(name)) }))
    .filter((entry) => Number.isFinite(entry.distance))
    .sort((a, b) => a.distance - b.distance || a.order - b.order)
    .slice(0, limit)
    .map((entry) => entry.name);
}

/**
 * Names to choose from, in words.
 * @example eitherOf(['open D', 'open E', 'open G']) // 'open D, open E or open G'
 */
export function eitherOf(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} or ${names.at(-1) ?? ''}`;
}

/** Infinity when the names have too little in common to be worth offering. */
function nameDistance(wanted: string, key: string): number {
  const edits = letterDistance(wanted, key);
  if (edits <= Math.max(1, Math.floor(Math.max(wanted.length, key.length) / 3))) return edits;
  if (wanted.length >= 3 && (key.includes(wanted) || wanted.includes(key))) return edits;
  return Infinity;
}
