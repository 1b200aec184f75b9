/**
 * What is made when it is asked for the first time and kept from then on: for tables that opening a document has no
 * use for.
 * @example const table = lazily(() => [1, 2, 3]); table() === table() // true
 */
export function lazily<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}
