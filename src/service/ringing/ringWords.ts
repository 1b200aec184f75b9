import type { RingingString, RingingVerdict } from './ringingAnswer';

/**
 * The sentence, without its stop, the highest string number first as in the tab from below.
 * @example ringWords(strings) // 'Strings 6, 4 and 1 may ring (root, root, fifth); string 3 in passing (second); mute string 2 (a half step under the root)'
 */
export function ringWords(strings: readonly RingingString[]): string {
  const of = (verdict: RingingVerdict): readonly RingingString[] =>
    strings.filter((one) => one.verdict === verdict);
  const free = of('free');
  const passing = of('passing');
  const mute = of('mute');
  const whole = (some: readonly RingingString[]): boolean =>
    some.length === strings.length && strings.length > 1;
  const pieces = [
    ...(free.length > 0 ? [`${whole(free) ? 'all strings' : named(free)} may ring (${reasons(free)})`] : []),
    ...(passing.length > 0
      ? [`${whole(passing) ? 'all strings only' : named(passing)} in passing (${reasons(passing)})`]
      : []),
    ...(mute.length > 0 ? [`mute ${muted(mute)}`] : []),
  ];
  const text = pieces.join('; ');
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `Open strings 6, 4 and 1 may ring`, for where there is little room. */
export function ringInShort(strings: readonly RingingString[]): string {
  const free = strings.filter(({ verdict }) => verdict === 'free');
  if (free.length === 0) return 'No open string may ring on';
  if (free.length === strings.length) return 'Every open string may ring';
  return `Open ${named(free)} may ring`;
}

function named(strings: readonly RingingString[]): string {
  const numbers = strings.map(({ string }) => String(string));
  return `${numbers.length === 1 ? 'string' : 'strings'} ${listed(numbers)}`;
}

/** Each string's in turn, or the one that all share. */
function reasons(strings: readonly RingingString[]): string {
  const all = strings.map(({ reason }) => reason);
  const [first] = all;
  return new Set(all).size === 1 ? (first ?? '') : all.join(', ');
}

/** Strings of one reason together: `strings 5 and 2 (outside the key), string 3 (a half step under the root)`. */
function muted(strings: readonly RingingString[]): string {
  const groups = new Map<string, RingingString[]>();
  for (const one of strings) {
    const group = groups.get(one.reason);
    if (group) group.push(one);
    else groups.set(one.reason, [one]);
  }
  return [...groups].map(([reason, group]) => `${named(group)} (${reason})`).join(', ');
}

function listed(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
}
