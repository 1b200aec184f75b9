import fc from 'fast-check';
import type { Place, TextEdit } from '../../../src/notation/tabDocument';

/* Documents and edits at random: everything that tells lines apart, and whatever may be typed over it. */

const FIELDS = [
  'title: Lantern Lane',
  'title: Wax and Salt',
  'by: The Ferry Choir',
  'remark: slowly',
  'instrument: guitar',
  'instrument: ukulele',
  'instrument: bass',
  'instrument: 12-string guitar',
  'tuning: DADGAD',
  'tuning: open E -2',
  'tuning: A',
  'tuning: E A D',
  'capo: 2',
  'capo: 2 on 5 4 3',
  'capo: none',
  'capo:',
  'frets: 12',
  'key: Eb',
  'key: Z',
  'meter: 6/8',
  'meter: 3/4',
  'tempo: 96',
  'feel: swing',
  'fretting: slide',
  'gauges: 46w 36w 26w 17 13 10',
  'scale length: 25.5 in',
  'reference pitch: A4 = 442 Hz',
  'part: low',
  'part: high',
  'part: low',
  '[Verse]',
  '[Chorus] x2',
  '[Verse]',
];

const ROWS = [
  'count |1 & 2 & 3 & 4 & |',
  'count |1 2 3 4 |',
  'count |4 & |1 & 2 & 3 & 4 & |',
  'chords |D       G       |',
  'words |oh   the bees |',
  'PM |----      |',
  'ring |--- |',
  'cuont |1 2 3 |',
  'bees | honey | wax |',
];

const OTHERS = [
  '',
  '',
  '',
  '   ',
  '# a comment',
  'Let every open string ring.',
  'tunning: DADGAD',
  '|--0--2--|',
  '| a | table |',
  '\ufefftitle: Gate',
];

const BODIES = [
  '|0---2---3---2---|',
  '|----------------|',
  '|0-------|2-------|',
  '|--0---2---3---2-|',
  '|:0---2---|3---2---:|',
  '|-8--10--12--10--|',
  '|5/7-----3.------|',
  '|5h7p5-----(3)---|',
  '|7b9--r7---<12>--|',
  '|x---x---45--q---|',
  '|0---| x3',
  '|----------------|0-0-',
  '|',
];

const LABELS = ['E', 'e', 'B', 'G', 'D', 'A', 'E2', 'A2', 'D3', '6', '1', 'Eb', 'A/A'];
const LABEL_SETS = ['eBGDAE', 'DAGDAD', 'EADGBE', 'AECG', 'GDAE', '123456'];

const stringLine = fc
  .tuple(fc.constantFrom(...LABELS), fc.constantFrom('', ' '), fc.constantFrom(...BODIES))
  .map((parts) => parts.join(''));

/** One line of any kind. */
export const anyLine: fc.Arbitrary<string> = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...FIELDS) },
  { weight: 2, arbitrary: fc.constantFrom(...ROWS) },
  { weight: 3, arbitrary: fc.constantFrom(...OTHERS) },
  { weight: 4, arbitrary: stringLine },
);

/** All strings of one system, perhaps with rows over them, perhaps one string more than once. */
const systemLines: fc.Arbitrary<string[]> = fc
  .record({
    labels: fc.constantFrom(...LABEL_SETS),
    bodies: fc.array(fc.constantFrom(...BODIES), { minLength: 1, maxLength: 3 }),
    rows: fc.array(fc.constantFrom(...ROWS), { maxLength: 2 }),
    twice: fc.boolean(),
    leaveOut: fc.nat(6),
  })
  .map(({ labels, bodies, rows, twice, leaveOut }) => {
    const strings = [...labels]
      .map((label, i) => `${label} ${bodies[i % bodies.length] ?? '|'}`)
      .filter((_, i) => i !== leaveOut - 1);
    return [...rows, ...strings, ...(twice ? strings : [])];
  });

/** Some lines as they may be pasted. */
export const someLines: fc.Arbitrary<string[]> = fc
  .array(
    fc.oneof(
      { weight: 3, arbitrary: systemLines },
      { weight: 2, arbitrary: fc.constant(['']) },
      { weight: 3, arbitrary: fc.array(anyLine, { maxLength: 3 }) },
    ),
    { maxLength: 9 },
  )
  .map((blocks) => blocks.flat());

const lineEnd = fc.constantFrom('\n', '\n', '\n', '\r\n', '\r');

/** A document of any kind of lines with one kind of line end. */
export const anyDocument: fc.Arbitrary<string> = fc
  .tuple(someLines, lineEnd)
  .map(([lines, end]) => lines.join(end));

/** Where an edit goes: fractions of the document and of the line, so that it makes sense for any text. */
interface AnyPlace {
  readonly line: number;
  readonly character: number;
}

/** What a writer, or a careless program, may do to a text; `placed` makes it a real edit. */
export type AnyEdit =
  | { readonly kind: 'type'; readonly at: AnyPlace; readonly take: number; readonly text: string }
  | { readonly kind: 'line'; readonly at: AnyPlace; readonly lines: number; readonly text: string }
  | { readonly kind: 'cut'; readonly at: AnyPlace; readonly lines: number; readonly to: number }
  | { readonly kind: 'outside'; readonly start: Place; readonly end: Place; readonly text: string }
  | { readonly kind: 'undo' };

const share = fc.nat(999).map((n) => n / 1000);
const anyPlace: fc.Arbitrary<AnyPlace> = fc.record({ line: share, character: share });
const far = fc.record({
  line: fc.integer({ min: -3, max: 60 }),
  character: fc.integer({ min: -3, max: 60 }),
});

const TYPED = [
  ...['-', '-', '5', '2', '|', ':', 'x', 'h', '/', '.', ' ', '#', 'q', 'a', '[', '', '', '–', '\ufeff', 'é'],
  ...['\n', '\n', '\r\n', '\r', '\n\n', '--5--', 'capo: 3', 'E|'],
] as const;

export const anyEdit: fc.Arbitrary<AnyEdit> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.record({
      kind: fc.constant('type' as const),
      at: anyPlace,
      take: fc.nat(3),
      text: fc.constantFrom(...TYPED),
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant('line' as const),
      at: anyPlace,
      lines: fc.nat(2),
      text: fc.oneof(
        anyLine,
        anyLine,
        fc.tuple(someLines, lineEnd).map(([lines, end]) => lines.join(end)),
      ),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ kind: fc.constant('cut' as const), at: anyPlace, lines: fc.nat(4), to: share }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('outside' as const), start: far, end: far, text: anyLine }),
  },
  { weight: 3, arbitrary: fc.constant({ kind: 'undo' as const }) },
);

const LINE_END = /\r\n|\r|\n/g;

/** A text as one string with the places in it: the plainest model of a document. */
export class PlainText {
  constructor(public text: string) {}

  get lines(): string[] {
    return this.text.split(LINE_END);
  }

  /** The edit in this text; `before` is what an undo goes back to. */
  placed(edit: AnyEdit, before: string): TextEdit {
    const { lines } = this;
    const at = ({ line, character }: AnyPlace): Place => {
      const row = Math.floor(line * lines.length);
      return { line: row, character: Math.floor(character * ((lines[row] ?? '').length + 1)) };
    };
    switch (edit.kind) {
      case 'type': {
        const start = at(edit.at);
        const end = { line: start.line, character: start.character + edit.take };
        return { range: { start, end }, newText: edit.text };
      }
      case 'line': {
        const { line } = at(edit.at);
        const last = line + edit.lines;
        const end = { line: last, character: lines[last]?.length ?? 0 };
        return { range: { start: { line, character: 0 }, end }, newText: edit.text };
      }
      case 'cut': {
        const start = at(edit.at);
        const last = start.line + edit.lines;
        return { range: { start, end: { line: last, character: Math.floor(edit.to * 20) } }, newText: '' };
      }
      case 'outside':
        return { range: { start: edit.start, end: edit.end }, newText: edit.text };
      case 'undo':
        return this.backTo(before);
    }
  }

  /** The edit of the stretch in which two texts differ. */
  private backTo(before: string): TextEdit {
    const { text } = this;
    let start = 0;
    while (start < text.length && start < before.length && text[start] === before[start]) start += 1;
    let tail = 0;
    const most = Math.min(text.length, before.length) - start;
    while (tail < most && text[text.length - 1 - tail] === before[before.length - 1 - tail]) tail += 1;
    // No place lies between CR and LF.
    const splits = (whole: string, offset: number): boolean =>
      whole[offset - 1] === '\r' && whole[offset] === '\n';
    if (start > 0 && (splits(text, start) || splits(before, start))) start -= 1;
    if (tail > 0 && (splits(text, text.length - tail) || splits(before, before.length - tail))) tail -= 1;
    const range = { start: this.placeAt(start), end: this.placeAt(text.length - tail) };
    return { range, newText: before.slice(start, before.length - tail) };
  }

  private placeAt(offset: number): Place {
    const before = this.text.slice(0, offset).split(LINE_END);
    return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
  }

  apply({ range, newText }: TextEdit): void {
    const [start, end] = [this.offsetAt(range.start), this.offsetAt(range.end)].sort((a, b) => a - b);
    this.text = this.text.slice(0, start) + newText + this.text.slice(end);
  }

  /** Places outside the text mean its nearest place. */
  private offsetAt({ line, character }: Place): number {
    if (line < 0) return 0;
    const ends = [...this.text.matchAll(LINE_END)];
    if (line > ends.length) return this.text.length;
    const previous = ends[line - 1];
    const start = previous ? previous.index + previous[0].length : 0;
    const end = ends[line]?.index ?? this.text.length;
    return Math.max(start, Math.min(start + character, end));
  }
}
