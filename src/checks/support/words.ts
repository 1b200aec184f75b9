/**
 * A list as people say it.
 * @example inWords(['4', '5']) // '4 and 5'
 */
export function inWords(items: readonly string[], last = 'and'): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1) ?? ''}`;
}
