/** A sentence of the service, which comes without its stop, as it stands on a page. */
export function sentence(words: string): string {
  return words === '' || /[.!?:]$/.test(words) ? words : `${words}.`;
}

/** With a capital letter first, as a heading or a sentence begins. */
export function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

/** `1, 2 and 3`. */
export function listed(items: readonly (string | number)[]): string {
  const texts = items.map(String);
  return texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1) ?? ''}`;
}

/** `strings 3 and 1`, `string 2`. */
export function stringsListed(numbers: readonly number[]): string {
  return `${numbers.length === 1 ? 'string' : 'strings'} ${listed(numbers)}`;
}

/** A number with a fixed count of decimals and a true minus sign. */
export function figure(value: number, decimals = 0): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/** The same with a sign before numbers above nothing too. */
export function signed(value: number, decimals = 0): string {
  const text = figure(value, decimals);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}
