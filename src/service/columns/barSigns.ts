import type { Bar } from './barList';

/** Rows take a plain sign and keep the columns. */
export function signOf(kind: 'string' | 'row', ruled: boolean, sign: string): string {
  if (kind === 'string') return sign;
  return (ruled ? '|' : ' ').padEnd(sign.length);
}

/** The one sign that stands for the end of a bar and the beginning of the next. */
export function signBetween(before: Bar | undefined, after: Bar | undefined): string {
  if (!before) return after?.open ?? '|';
  const { close } = before;
  const open = after?.open ?? '|';
  if (close.startsWith(':') && open.endsWith(':')) return ':|:';
  if (open.endsWith(':')) return open;
  return close;
}

/** What a bar sign says of the bar that it opens. */
export function openingOf(sign: string): string {
  return sign.endsWith(':') ? (sign.startsWith('||') ? '||:' : '|:') : sign === '||' ? sign : '|';
}

/** What a bar sign says of the bar that it closes. */
export function closingOf(sign: string): string {
  if (sign.startsWith(':')) return sign.endsWith('||') ? ':||' : ':|';
  return sign === '||' ? '||' : '|';
}

/** Whether a bar stands behind the one that it always stood behind. */
export function follows(before: Bar, bar: Bar): boolean {
  return before.from?.system === bar.from?.system && before.from?.bar === (bar.from?.bar ?? 0) - 1;
}
