import fc from 'fast-check';

/* Systems at random as a player might write them: strings, rows, signs of every kind, with and without a count. */

/** What may stand on one string from a slot on. */
const PLAIN = ['0', '2', '3', '5', '7', '9', '10', '12', '14', 'x'];
const SIGNED = [
  '(3)',
  '(12)',
  '(5h7)',
  '<12>',
  '<7>',
  '<3.2>',
  '5<17>',
  '5h7',
  '7p5',
  '12p10',
  'h7',
  't12',
  't12p5',
  '5tr7',
  '5/7',
  '5//7',
  '10\\7',
  '/7',
  '\\5',
  '7/',
  '7\\',
  '7b9',
  '7b',
  '7b1/2',
  '9b10.5',
  '7b9r7',
  '7b9--r7',
  '7b9--r',
  '7pb9',
  '7--b9',
  '7~',
  '7~~',
  '7--~',
  '5-h-7',
  '5--h7',
  '5-/-7',
  '5h7p5',
  '0h2/4',
  '(x)',
];

interface Event {
  readonly bar: number;
  readonly slot: number;
  readonly string: number;
  readonly text: string;
}

export interface TabSketch {
  readonly meter: string;
  /** Columns a bar. */
  readonly columns: number;
  readonly bars: number;
  readonly strings: readonly string[];
  readonly text: string;
}

const TUNINGS = [
  { instrument: 'guitar', tuning: 'standard', labels: ['E4', 'B3', 'G3', 'D3', 'A2', 'E2'] },
  { instrument: 'guitar', tuning: 'DADGAD', labels: ['D', 'A', 'G', 'D', 'A', 'D'] },
  { instrument: 'ukulele', tuning: 'standard', labels: ['A', 'E', 'C', 'G'] },
];

/** Opening, middle and closing bar signs; where dots are left out on a line, dashes stand. */
const OPENINGS = ['|', '|', '|:', '||', '||:'];
const MIDDLES = ['|', '|', '|', '||', ':|:', '|:', ':|'];
const CLOSINGS = ['|', '|', ':|', '||', ':||'];

const METERS = [
  { meter: '4/4', beats: 4, per: [4, 2, 3, 6] },
  { meter: '3/4', beats: 3, per: [4, 2, 3] },
  { meter: '6/8', beats: 6, per: [2, 1, 3] },
];

const ROW_TEXTS: Readonly<Record<string, readonly string[]>> = {
  chords: ['D', 'G/B', 'Em7', 'N.C.', 'Asus4'],
  words: ['oh', 'bees', 'wa-', 'ter', 'é'],
  picking: ['p', 'i', 'm', 'pi', 'ma'],
  fingers: ['1', '3', '0'],
  PM: ['PM---', 'PM-----', 'PM----', '---'],
  ring: ['ring--', 'ring'],
};

const share = fc.nat(999).map((n) => n / 1000);

interface Drawn {
  readonly tuning: (typeof TUNINGS)[number];
  readonly meter: (typeof METERS)[number];
  readonly per: number;
  readonly bars: number;
  readonly padding: number;
  readonly endPadding: number;
  readonly counted: boolean;
  readonly pickup: boolean;
  readonly events: readonly { bar: number; slot: number; string: number; text: string }[];
  readonly stops: readonly { bar: number; slot: number; string: number }[];
  readonly rows: readonly { row: string; marks: readonly { at: number; text: number }[] }[];
  readonly signs: readonly number[];
  readonly dotless: number;
  readonly ending: boolean;
  readonly remark: boolean;
  readonly comment: boolean;
  readonly across: number;
}

const drawn: fc.Arbitrary<Drawn> = fc.record({
  tuning: fc.constantFrom(...TUNINGS),
  meter: fc.constantFrom(...METERS),
  per: share,
  bars: fc.integer({ min: 1, max: 4 }),
  padding: fc.constantFrom(0, 0, 1, 2),
  endPadding: fc.constantFrom(0, 0, 0, 1),
  counted: fc.boolean(),
  pickup: fc.integer({ min: 0, max: 4 }).map((n) => n === 0),
  events: fc.array(
    fc.record({
      bar: share,
      slot: share,
      string: share,
      text: fc.oneof(
        { weight: 3, arbitrary: fc.constantFrom(...PLAIN) },
        { weight: 2, arbitrary: fc.constantFrom(...SIGNED) },
      ),
    }),
    { minLength: 1, maxLength: 16 },
  ),
  stops: fc.array(fc.record({ bar: share, slot: share, string: share }), { maxLength: 3 }),
  rows: fc.array(
    fc.record({
      row: fc.constantFrom(...Object.keys(ROW_TEXTS)),
      marks: fc.array(fc.record({ at: share, text: fc.nat(9) }), { minLength: 1, maxLength: 5 }),
    }),
    { maxLength: 3 },
  ),
  signs: fc.array(fc.nat(20), { minLength: 5, maxLength: 5 }),
  dotless: fc.integer({ min: -1, max: 5 }),
  ending: fc.boolean(),
  remark: fc.integer({ min: 0, max: 4 }).map((n) => n === 0),
  comment: fc.integer({ min: 0, max: 4 }).map((n) => n === 0),
  across: fc.integer({ min: 0, max: 12 }),
});

/** A document with one system. */
export const randomTab: fc.Arbitrary<string> = drawn.map(write);

function write(d: Drawn): string {
  const { labels } = d.tuning;
  const per = d.meter.per[Math.floor(d.per * d.meter.per.length)] ?? 4;
  const columns = d.meter.beats * per;
  const pickup = d.pickup && d.bars > 1 && d.counted;
  const widths = Array.from({ length: d.bars }, (_, i) => (i === 0 && pickup ? per : columns));
  const signs = widths.map((_, i) => pick(i === 0 ? OPENINGS : MIDDLES, d.signs[i] ?? 0));
  const closing = pick(CLOSINGS, d.signs.at(-1) ?? 0);
  const bodies = labels.map(() =>
    widths.map((width) => Array.from({ length: d.padding + width + d.endPadding }, () => '-')),
  );
  const put = ({ bar, slot, string, text }: Event, apart: number): void => {
    const cells = bodies[string]?.[bar];
    if (!cells) return;
    const start = d.padding + slot;
    const around = cells.slice(Math.max(0, start - apart), start + text.length + apart);
    if (start + text.length > cells.length || around.some((c) => c !== '-')) return;
    [...text].forEach((c, k) => (cells[start + k] = c));
  };
  for (const { bar, slot, string, text } of d.events) {
    const b = Math.floor(bar * d.bars);
    const at = Math.floor(slot * (widths[b] ?? 1));
    put({ bar: b, slot: at, string: Math.floor(string * labels.length), text }, 1);
  }
  for (const { bar, slot, string } of d.stops) {
    const b = Math.floor(bar * d.bars);
    put(
      {
        bar: b,
        slot: Math.floor(slot * (widths[b] ?? 1)),
        string: Math.floor(string * labels.length),
        text: '.',
      },
      0,
    );
  }
  // A slur or slide across the first inner bar line.
  const [left, right] = [bodies[0]?.[0], bodies[0]?.[1]];
  if (
    left &&
    right &&
    left.length > 4 &&
    d.across < 3 &&
    left
      .slice(-4)
      .concat(right.slice(0, 4))
      .every((c) => c === '-')
  ) {
    const sign = ['h', '/', 'p'][d.across] ?? 'h';
    left[left.length - 3] = d.across === 2 ? '7' : '5';
    left[left.length - 2] = sign === '/' ? '-' : sign;
    if (sign === '/') [left[left.length - 2], left[left.length - 1]] = ['5', '/'];
    if (sign === '/') left[left.length - 3] = '-';
    right[d.padding] = d.across === 2 ? '5' : '7';
  }
  const lines: string[] = [];
  const width = Math.max(...labels.map((label) => label.length), 8);
  const signWidths = signs.map((sign) => sign.length);
  const starts: number[] = [];
  let column = 0;
  widths.forEach((_, i) => {
    column += signWidths[i] ?? 1;
    starts.push(column);
    column += bodies[0]?.[i]?.length ?? 0;
  });
  const total = column;
  if (d.counted) lines.push(`count   ${countRow(d, per, widths, starts, total)}`);
  for (const { row, marks } of d.rows) lines.push(row.padEnd(width) + rowBody(row, marks, total));
  if (d.ending && d.bars > 1) {
    const at = starts.at(-1) ?? 1;
    lines.push(`${'ending'.padEnd(width)}|${' '.repeat(Math.max(0, at - 1))}1.`);
  }
  labels.forEach((label, s) => {
    if (s === 2 && d.comment) lines.push('# softly from here');
    const plain = s === d.dotless;
    const body = bodies[s] ?? [];
    const text = body.map((cells, i) => dotted(signs[i] ?? '|', plain) + cells.join('')).join('');
    lines.push(label.padEnd(width) + text + dotted(closing, plain) + (d.remark && s === 0 ? ' x3' : ''));
  });
  return [
    `instrument: ${d.tuning.instrument}`,
    `tuning: ${d.tuning.tuning}`,
    `meter: ${d.meter.meter}`,
    '',
    ...lines,
    '',
  ].join('\n');
}

/** A sign, or, on a line that leaves its dots out, dashes in their place. */
function dotted(sign: string, plain: boolean): string {
  return plain ? sign.replace(/:/g, '-') : sign;
}

function countRow(
  d: Drawn,
  per: number,
  widths: readonly number[],
  starts: readonly number[],
  total: number,
): string {
  const row = Array.from({ length: total + 1 }, () => ' ');
  row[0] = '|';
  row[total] = '|';
  widths.forEach((width, bar) => {
    const at = (starts[bar] ?? 0) + d.padding;
    const missing = d.meter.beats - width / per;
    for (let beat = 0; beat < width / per; beat++) {
      const number = String(beat + missing + 1);
      if (per > 1 || number.length === 1) row[at + beat * per] = number;
      if (per % 2 === 0 && per > 2) row[at + beat * per + per / 2] = '&';
    }
    const next = starts[bar + 1];
    if (next !== undefined) row[next - 1] = '|';
  });
  return row.join('').trimEnd();
}

function rowBody(row: string, marks: Drawn['rows'][number]['marks'], total: number): string {
  const body = ['|', ...Array.from({ length: total - 1 }, () => ' ')];
  for (const { at, text } of marks) {
    const mark = pick(ROW_TEXTS[row] ?? ['x'], text);
    const start = 1 + Math.floor(at * (total - 1));
    const around = body.slice(Math.max(1, start - 1), start + mark.length + 1);
    if (start + mark.length > total || around.some((c) => c !== ' ')) continue;
    [...mark].forEach((c, k) => (body[start + k] = c));
  }
  return body.join('').trimEnd();
}

function pick(items: readonly string[], n: number): string {
  return items[n % items.length] ?? '';
}
