import { closesRepeat, keyOf } from '../bars';
import type { System } from '../tabDocument';
import type { Passage } from './pieces';

/** A bar sign of a printed passage, at its columns in the system as it was. */
export interface PrintedSign {
  readonly first: number;
  readonly last: number;
  /** What each line of the system writes there, by the line's index. */
  readonly texts: ReadonlyMap<number, string>;
  /** The most telling of them. */
  readonly text: string;
  /** Its first column before it was cut. */
  readonly began: number;
}

/**
 * The bar signs of a passage, its opening and closing ones included. Where the passage is cut out of its system, a
 * repeat sign goes with the side that it speaks to: `:|:` is cut into `:|` and `|:`.
 * @param firstBar,lastBar indices in the system's reading
 */
export function signsToPrint(system: System, firstBar: number, lastBar: number): PrintedSign[] {
  const { bars } = system.reading;
  const start = bars[firstBar]?.startColumn ?? 0;
  const whole = lastBar >= bars.length - 1;
  const end = bars[lastBar]?.endColumn ?? 0;
  const signs = signsOf(system).filter((sign) => sign.last >= start - 1 && (whole || sign.first <= end));
  // Of several signs in front of the first bar only the one that opens it.
  while (signs[1] && signs[1].last < start) signs.shift();
  const [opening] = signs;
  if (opening && firstBar > 0) signs[0] = cut(opening, /^:/, 1, 0);
  const closing = signs.at(-1);
  if (closing && !whole && signs.length > 1) signs[signs.length - 1] = cut(closing, /:$/, 0, 1);
  return signs;
}

/** The bars of a system from one to another, with the columns that are printed of them. */
export function passageOf(system: System, firstBar: number, lastBar: number): Passage {
  const signs = signsToPrint(system, firstBar, lastBar);
  const closed = system.reading.bars.at(-1)?.closeSign ? (signs.at(-1)?.last ?? 0) + 1 : Infinity;
  const width = Math.max(
    0,
    ...system.lines.map((line) => {
      // What goes on behind the last sign is a sign out of line.
      if (line.kind === 'string') return Math.min(line.width, closed);
      return line.kind === 'row' ? line.width : 0;
    }),
  );
  const whole = lastBar === system.reading.bars.length - 1;
  const to = whole ? width : (signs.at(-1)?.last ?? width - 1) + 1;
  const marksEnd = whole ? width : (signs.at(-1)?.began ?? to);
  return { firstBar, lastBar, from: signs[0]?.first ?? 0, to, marksFrom: signs[0]?.began ?? 0, marksEnd };
}

function cut(sign: PrintedSign, dots: RegExp, fromStart: number, fromEnd: number): PrintedSign {
  if (!dots.test(sign.text)) return sign;
  return {
    first: sign.first + fromStart,
    last: sign.last - fromEnd,
    text: sign.text.replace(dots, ''),
    began: sign.began,
    texts: new Map([...sign.texts].map(([line, text]) => [line, text.replace(dots, '')])),
  };
}

/** The signs that the system's bars keep to; strays of single lines are not printed again. */
function signsOf(system: System): PrintedSign[] {
  const kept = keptColumns(system);
  const found = new Map<number, { first: number; last: number; texts: Map<number, string>; text: string }>();
  system.lines.forEach((line, at) => {
    if (line.kind !== 'string') return;
    for (const token of line.tokens) {
      if (token.kind !== 'bar') continue;
      const last = token.column + token.width - 1;
      const key = keyOf(token);
      if (!kept.some(({ from, to }) => key >= from && key <= to)) continue;
      const sign = found.get(key) ?? {
        first: token.column,
        last,
        texts: new Map<number, string>(),
        text: '',
      };
      sign.first = Math.min(sign.first, token.column);
      sign.last = Math.max(sign.last, last);
      if (token.text.length > sign.text.length) sign.text = token.text;
      sign.texts.set(at, token.text);
      found.set(key, sign);
    }
  });
  return [...found.values()]
    .map((sign) => ({ ...sign, began: sign.first }))
    .sort((a, b) => a.first - b.first);
}

/** Where the first bar lines of kept signs stand: between the bars, and where the last bar closes. */
function keptColumns({ lines, reading: { bars } }: System): { readonly from: number; readonly to: number }[] {
  const kept = bars.map(({ startColumn }, i) => ({
    from: bars[i - 1]?.endColumn ?? 0,
    to: startColumn - 1,
  }));
  const last = bars.at(-1);
  if (last && last.closeSign !== '') {
    const dotted = lines.some(
      (line) =>
        line.kind === 'string' &&
        line.tokens.some(
          ({ kind, column, text }) => kind === 'bar' && column === last.endColumn && closesRepeat(text),
        ),
    );
    const key = last.endColumn + (dotted ? 1 : 0);
    kept.push({ from: key, to: key });
  }
  return kept;
}

/** A mark that covers the columns below it, such as `PM----`, grows with them. */
export function stretches(text: string): boolean {
  return /--$/.test(text);
}
