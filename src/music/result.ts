/**
 * What a reader of people's text returns: the value, or one clear error. Nothing in Pegbox
 * throws for text that a person wrote.
 */
export type Result<T> = Ok<T> | Failed;

export interface Ok<T> {
  readonly ok: true;
  readonly value: T;
  /** Things understood but worth telling, such as a list that was written the other way round. */
  readonly notices: readonly Notice[];
}

export interface Failed {
  readonly ok: false;
  readonly error: Notice;
}

/** One sentence about a stretch of the text that was read. */
export interface Notice {
  /** A stable word for what is wrong, such as `one-note` or `string-count`; checks map it to their codes. */
  readonly kind: string;
  /** One clear sentence: what was expected, where, and how to mend it. */
  readonly message: string;
  /** UTF-16 offset in the text that was read. */
  readonly start: number;
  /** UTF-16 offset past the end. */
  readonly end: number;
  /** Whole values that would do instead of the one that was read, best first. */
  readonly suggestions: readonly string[];
}

/** A value read without remarks. */
export function ok<T>(value: T, notices: readonly Notice[] = []): Ok<T> {
  return { ok: true, value, notices };
}

/** A text that could not be read. */
export function failed(
  kind: string,
  message: string,
  start: number,
  end: number,
  suggestions: readonly string[] = [],
): Failed {
  return { ok: false, error: { kind, message, start, end, suggestions } };
}
