/** A tuning beside any document: values as they would stand in fields. */
export interface BareTuning {
  readonly tuning: string;
  readonly instrument?: string | undefined;
  readonly capo?: string | undefined;
  readonly key?: string | undefined;
}

/**
 * The text of a document that says just this, for calls that take one; its last line is where it all holds. Values are
 * to be read before: what cannot be read would be passed over here.
 * @example bareText({ tuning: 'DADGAD', key: 'D' }) // 'tuning: DADGAD\nkey: D'
 */
export function bareText({ tuning, instrument, capo, key }: BareTuning): string {
  return [
    ['instrument', instrument],
    ['tuning', tuning],
    ['capo', capo],
    ['key', key],
  ]
    .flatMap(([name = '', value]) =>
      value === undefined ? [] : [`${name}: ${value.replace(/\s+/g, ' ').trim()}`],
    )
    .join('\n');
}
