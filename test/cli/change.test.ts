import assert from 'node:assert/strict';
import { fileWith, json, pegbox, unreadable } from './pegbox';
import { FERRY, firstString } from './texts';

interface Changed {
  readonly text: string;
  readonly report: {
    readonly notesIn: number;
    readonly kept: number;
    readonly moved: number;
    readonly unplaced: readonly { bar: number; name: string; reason: string }[];
  };
}
interface Note {
  readonly onsetFraction: readonly number[];
  readonly midi: number | null;
  readonly string: number;
  readonly fret: number | null;
}

const changed = async (args: string[], text: string): Promise<Changed> => (await json(args, text)) as Changed;

const notesOf = async (text: string): Promise<Note[]> => (await json(['notes', '-'], text)) as Note[];

/** When each pitch sounds, in time order, from the lowest up. */
const soundOf = async (text: string, by = 0): Promise<unknown[]> =>
  (await notesOf(text))
    .map(({ onsetFraction: [n = 0, d = 1], midi }) => [n / d, (midi ?? NaN) + by])
    .sort(([a = 0, b = 0], [c = 0, d = 0]) => a - c || b - d);

/** Strings and frets, in time order. */
const shapesOf = async (text: string): Promise<unknown[]> =>
  (await notesOf(text)).map(({ onsetFraction, string, fret }) => [...onsetFraction, string, fret]);

/** Notes in, kept, moved, unplaced. */
const countsOf = ({ notesIn, kept, moved, unplaced }: Changed['report']): number[] => [
  notesIn,
  kept,
  moved,
  unplaced.length,
];

/** Two systems; the second begins on line 13. */
const TWO = `${FERRY}\n${FERRY.slice(FERRY.indexOf('E4'))}`;

describe('convert', () => {
  const toDadgad = ['convert', '-', '--tuning', 'DADGAD'];

  it('keeps the sound: every pitch at its time, under the new tuning', async () => {
    const { text, report } = await changed(toDadgad, FERRY);
    assert.deepEqual(await soundOf(text), await soundOf(FERRY));
    assert.notDeepEqual(await shapesOf(text), await shapesOf(FERRY));
    assert.match(text, /^tuning: DADGAD$/m);
    assert.match(text, /^D2 /m);
    assert.deepEqual(countsOf(report), [9, 9, 0, 0]);
    assert.deepEqual(await pegbox(['check', '-'], text), { code: 0, out: '', err: '' });
  });

  it('keeps the shapes: every string and fret, and the sound moves', async () => {
    const { text, report } = await changed([...toDadgad, '--keep', 'shapes'], FERRY);
    assert.deepEqual(await shapesOf(text), await shapesOf(FERRY));
    // of nine notes those on strings 1 and 2 sound two half steps lower in DADGAD: one on 1, two on 2
    assert.deepEqual(report, { notesIn: 9, kept: 6, moved: 3, unplaced: [] });
  });

  it('gives text and report with --json, and no other key', async () => {
    const answer = await changed(toDadgad, FERRY);
    assert.deepEqual(Object.keys(answer), ['text', 'report']);
    assert.deepEqual(Object.keys(answer.report), ['notesIn', 'kept', 'moved', 'unplaced', 'measures']);
  });

  it('gives the text alone on standard output, the report on standard error', async () => {
    const { text } = await changed(toDadgad, FERRY);
    const { code, out, err } = await pegbox([
      'convert',
      fileWith('ferry.pegbox', FERRY),
      '--tuning',
      'DADGAD',
    ]);
    assert.equal(code, 0);
    assert.equal(out, text);
    assert.match(err, /^9 notes: 9 kept, 0 moved, 0 unplaced\.\n/);
  });

  it('names every note that finds no place, with its bar and the reason', async () => {
    // E2, the guitar's lowest string, lies below a ukulele-like tuning of four high strings
    const low = `E4 |----|0---|\nB3 |----|----|\nG3 |----|----|\nD3 |----|----|\nA2 |----|----|\nE2 |0---|----|\n`;
    const args = ['convert', '-', '--tuning', 'D3 G3 B3 E4'];
    const { report } = await changed(args, low);
    assert.equal(report.notesIn, 2);
    assert.equal(report.kept, 1);
    assert.deepEqual(
      report.unplaced.map(({ bar, name, reason }) => [bar, name, reason.length > 0]),
      [[1, 'E2', true]],
    );
    const { err } = await pegbox(args, low);
    assert.match(err, /^2 notes: 1 kept, 0 moved, 1 unplaced\.\nBar 1: E2 is left out: \S/);
  });

  it('changes the lines it is given, and states the old tuning again after them', async () => {
    const first = await changed([...toDadgad, '--lines', '6-11'], TWO);
    assert.equal(first.report.notesIn, 9);
    assert.deepEqual(await soundOf(first.text), await soundOf(TWO));
    assert.match(first.text, /^tuning: DADGAD$[^]*^D2 [^]*^tuning: standard$[^]*^E2 /m);
    const second = await changed([...toDadgad, '--lines', '13-13'], TWO);
    assert.ok(second.text.startsWith(FERRY), second.text);
    assert.match(second.text.slice(FERRY.length), /^tuning: DADGAD$[^]*^D2 /m);
    // A system's last line alone is enough, the blank line behind it is not.
    assert.equal((await changed([...toDadgad, '--lines', '11'], TWO)).text, first.text);
    assert.equal((await pegbox([...toDadgad, '--lines', '12-12'], TWO)).code, 1);
    const both = await changed([...toDadgad, '--lines', '1-18'], TWO);
    assert.equal(both.report.notesIn, 18);
  });

  it('keeps the line ends and the byte order mark', async () => {
    const { text } = await changed(toDadgad, TWO);
    for (const end of ['\r\n', '\r']) {
      const { out } = await pegbox(toDadgad, `\uFEFF${TWO.replaceAll('\n', end)}`);
      assert.equal(out, `\uFEFF${text.replaceAll('\n', end)}`);
      const answer = await changed(toDadgad, `\uFEFF${TWO.replaceAll('\n', end)}`);
      assert.equal(answer.text, out);
    }
  });

  it('leaves a last line without an end as it is', async () => {
    const { out } = await pegbox(toDadgad, FERRY.trimEnd());
    assert.match(out, /\|$/);
  });

  it("goes to the user's own tuning", async () => {
    const own = fileWith('own.json', '{ "harbour": "C2 G2 D3 G3 B3 D4" }');
    const { text } = await changed(['convert', '-', '--tuning', 'harbour', '--tunings', own], FERRY);
    assert.match(text, /^C2 /m);
  });

  it('refuses what it cannot read', async () => {
    assert.match(await unreadable(['convert', '-', '--tuning', 'opne E'], FERRY), /--tuning: .*open E/);
    assert.match(await unreadable(['convert', '-', '--tuning', 'A'], FERRY), /one note/);
    assert.match(await unreadable(['convert', '-', '--tuning', 'opne E'], 'Only words.\n'), /open E/);
    assert.match(await unreadable([...toDadgad, '--keep', 'frets'], FERRY), /sound, shapes or function/);
    const lines: [string, RegExp][] = [
      ['x', /such as 12-20/],
      ['3-', /such as 12-20/],
      ['9-6', /write 6-9/],
      ['0-4', /counts from 1/],
      ['6-12', /has 11 lines/],
    ];
    for (const [value, message] of lines)
      assert.match(await unreadable([...toDadgad, '--lines', value], FERRY), message);
  });

  it('answers 1 with one sentence when the passage cannot be changed', async () => {
    for (const args of [toDadgad, ['transpose', '-', '--by', '1'], ['move-capo', '-', '--to', '2']]) {
      const { code, out, err } = await pegbox(args, 'Only words.\n');
      assert.equal(code, 1, args.join(' '));
      assert.equal(out, '');
      assert.match(err, /^pegbox: There is no tab in standard input\.\n$/);
    }
    const { code, out, err } = await pegbox([...toDadgad, '--lines', '1-4'], FERRY);
    assert.deepEqual([code, out], [1, '']);
    assert.match(err, /^pegbox: --lines 1-4: no tab stands on these lines;/);
  });
});

describe('transpose', () => {
  for (const by of ['2', '-3', '+1'])
    it(`moves every note by ${by}, at its time`, async () => {
      const { text, report } = await changed(['transpose', '-', '--by', by], FERRY);
      assert.deepEqual(await soundOf(text), await soundOf(FERRY, Number(by)));
      assert.deepEqual(report, { notesIn: 9, kept: 0, moved: 9, unplaced: [] });
    });

  it('goes to a key, and writes it', async () => {
    const { text } = await changed(['transpose', '-', '--by', 'D'], FERRY);
    assert.deepEqual(await soundOf(text), await soundOf(FERRY, 2)); // D is two half steps above C
    assert.match(text, /^key: +D(?: major)?$/m);
  });

  it('changes the lines it is given only', async () => {
    const { text, report } = await changed(['transpose', '-', '--by=2', '--lines', '13-18'], TWO);
    assert.equal(report.notesIn, 9);
    assert.ok(text.startsWith(FERRY), text);
  });

  it('refuses what is neither half steps nor a key', async () => {
    for (const by of ['1.5', 'up', 'H', '2 steps'])
      assert.match(await unreadable(['transpose', '-', '--by', by], FERRY), /half steps, such as 2 or -3/);
  });
});

describe('move-capo', () => {
  const SONG = FERRY.replace('key: ', 'capo:   2\nkey: ');

  it('keeps the sound: frets move', async () => {
    const { text, report } = await changed(['move-capo', '-', '--to', 'none'], SONG);
    assert.deepEqual(await soundOf(text), await soundOf(SONG));
    assert.deepEqual(report, { notesIn: 9, kept: 9, moved: 0, unplaced: [] });
    assert.notDeepEqual(await shapesOf(text), await shapesOf(SONG));
  });

  it('keeps the shapes: the sound moves', async () => {
    const { text, report } = await changed(['move-capo', '-', '--to', '5', '--keep', 'shapes'], SONG);
    assert.deepEqual(await shapesOf(text), await shapesOf(SONG));
    assert.deepEqual(await soundOf(text), await soundOf(SONG, 3));
    assert.deepEqual(report, { notesIn: 9, kept: 0, moved: 9, unplaced: [] });
    assert.match(text, /^capo: +5$/m);
  });

  it('refuses a capo that cannot be read', async () => {
    for (const to of ['banana', '40', '2 on 9'])
      assert.match(await unreadable(['move-capo', '-', '--to', to], firstString('0---')), /^--to: /);
  });
});
