/** Short pieces of our own, each without a mistake. */

export const FERRY = `title:  The Last Ferry
tuning: standard
key:    C
meter:  4/4

E4 |----------------|0---------------|
B3 |------------1---|----1-----------|
G3 |--------0-------|--------0-------|
D3 |----2-----------|------------2---|
A2 |3---------------|3---------------|
E2 |----------------|----------------|
`;

/** A fret on the sixth string under the fields given. */
export function sixthString(fields: string, bar: string): string {
  return `${fields}

E4 |----------------|
B3 |----------------|
G3 |----------------|
D3 |----------------|
A2 |----------------|
E2 |${bar}|
`;
}

/** One bar on the first string of a guitar in standard tuning. */
export function firstString(bar: string, label = 'E4'): string {
  const rest = '-'.repeat(bar.length);
  return `${label} |${bar}|
B3 |${rest}|
G3 |${rest}|
D3 |${rest}|
A2 |${rest}|
E2 |${rest}|
`;
}
