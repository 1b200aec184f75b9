/*
 * What a view and the extension say to each other. Either side may be older than the other after an update, and a
 * webview's messages come from outside, so both sides read before they believe: each direction has one reader, made
 * by `messageReader` in the file of its view in this folder. Nothing here needs a browser or an editor.
 */

/** Every message says what it is. */
export interface Message {
  readonly kind: string;
}

/** Whether a value from outside is of a type. */
export type Check<T> = (value: unknown) => value is T;

/** One check for each property; what else stands in a value is left alone. */
export type Checks<T> = { readonly [Name in keyof T]-?: Check<T[Name]> };

export const isText: Check<string> = (value) => typeof value === 'string';
export const isFlag: Check<boolean> = (value) => typeof value === 'boolean';
export const isNumber: Check<number> = (value): value is number => Number.isFinite(value);
/** 0, 1, 2 …: lines, offsets, frets. */
export const isCount: Check<number> = (value): value is number =>
  Number.isSafeInteger(value) && Number(value) >= 0;

/** One of some words. */
export function isOneOf<const Word extends string>(...words: readonly Word[]): Check<Word> {
  return (value): value is Word => words.some((word) => word === value);
}

export function isOptional<T>(check: Check<T>): Check<T | undefined> {
  return (value): value is T | undefined => value === undefined || check(value);
}

export function isNullable<T>(check: Check<T>): Check<T | null> {
  return (value): value is T | null => value === null || check(value);
}

export function isList<T>(check: Check<T>): Check<readonly T[]> {
  return (value): value is readonly T[] => Array.isArray(value) && value.every(check);
}

/** A record whose properties all pass. */
export function isRecord<T extends object>(checks: Checks<T>): Check<T> {
  return (value): value is T => {
    if (typeof value !== 'object' || value === null) return false;
    const given = new Map<string, unknown>(Object.entries(value));
    return Object.entries<Check<unknown>>(checks).every(([name, check]) => check(given.get(name)));
  };
}

/**
 * A record of our own service, handed on as it came: only that it is a record with these properties is looked at,
 * since the server of the same build made it.
 */
export function isAnswer<T extends object>(...names: readonly (keyof T & string)[]): Check<T> {
  return (value): value is T =>
    typeof value === 'object' && value !== null && names.every((name) => Object.hasOwn(value, name));
}

/** What a message of each kind has to hold. */
export type MessageChecks<M extends Message> = {
  readonly [Kind in M['kind']]: Checks<Omit<Extract<M, { kind: Kind }>, 'kind'>>;
};

/**
 * The reader of one direction: a message that it knows, or undefined for anything else.
 * @example messageReader<{ kind: 'ready' }>({ ready: {} })({ kind: 'ready' }) // { kind: 'ready' }
 */
export function messageReader<M extends Message>(
  checks: MessageChecks<M>,
): (value: unknown) => M | undefined {
  const known = new Map<string, Check<object>>(
    Object.entries<Checks<object>>(checks).map(([kind, one]) => [kind, isRecord(one)]),
  );
  const isKnown: Check<M> = (value): value is M => {
    if (typeof value !== 'object' || value === null || !('kind' in value) || !isText(value.kind))
      return false;
    return known.get(value.kind)?.(value) === true;
  };
  return (value) => (isKnown(value) ? value : undefined);
}

/** Says of what was not understood only its kind: what it holds may be the user's own text. */
export function kindOf(value: unknown): string {
  if (typeof value !== 'object' || value === null || !('kind' in value)) return 'no message';
  return isText(value.kind) ? `“${value.kind.slice(0, 40)}”` : 'no message';
}
