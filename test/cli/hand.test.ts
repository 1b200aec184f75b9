import assert from 'node:assert/strict';
import { json, pegbox, unreadable } from './pegbox';
import { FERRY, firstString } from './texts';

interface Note {
  readonly onsetFraction: readonly number[];
  readonly midi: number | null;
  readonly fret: number | null;
  readonly part: string | null;
}

interface Answer {
  readonly text: string;
  readonly report: {
    readonly notesIn: number;
    readonly kept: number;
    readonly moved: number;
    readonly unplaced: readonly unknown[];
    readonly compared?: { readonly before?: number; readonly after: number };
    readonly offers?: readonly { readonly title: string; readonly options: string }[];
  };
  readonly alternatives?: readonly { readonly title: string; readonly text: string }[];
}

const answer = async (args: string[], text: string): Promise<Answer> => (await json(args, text)) as Answer;
const notesOf = async (text: string): Promise<Note[]> => (await json(['notes', '-'], text)) as Note[];
const pitches = (notes: readonly Note[]): (number | null)[] => notes.map(({ midi }) => midi);

/** Two chords of six notes; the second is stopped on every string. */
const CHORDS = `tuning: standard
key:    G

E4 |3-------|1-------|
B3 |0-------|1-------|
G3 |0-------|2-------|
D3 |0-------|3-------|
A2 |2-------|3-------|
E2 |3-------|1-------|
`;

describe('convert, with all that can be asked of the hand', () => {
  it('keeps the function under another key', async () => {
    const args = ['convert', '-', '--tuning', 'open G', '--keep', 'function', '--key', 'G'];
    const { text, report } = await answer(args, FERRY);
    assert.match(text, /^key: +G$/m);
    assert.equal(report.moved + report.unplaced.length, report.notesIn);
    // From C to G the nearest way is a fourth down: five half steps.
    assert.deepEqual(
      pitches(await notesOf(text)),
      pitches(await notesOf(FERRY)).map((midi) => (midi ?? 0) - 5),
    );
    assert.match(await unreadable(args.slice(0, 6), FERRY), /--key K/);
  });

  it('goes to another instrument, into a part of its own', async () => {
    const { text } = await answer(
      ['convert', '-', '--instrument', 'baritone guitar', '--new-part', 'low'],
      FERRY,
    );
    assert.match(text, /^part: +low\ninstrument: +baritone guitar$/m);
    const notes = await notesOf(text);
    const of = (part: string): unknown[] =>
      notes.filter((note) => note.part === part).map(({ onsetFraction, midi }) => [onsetFraction, midi]);
    assert.deepEqual(of('low'), of('guitar'));
    assert.match(
      await unreadable(['convert', '-', '--instrument', 'banjoo'], FERRY),
      /--instrument: .*banjo/,
    );
  });

  it('gives other ways, each with its text', async () => {
    const args = ['convert', '-', '--tuning', 'DADGAD', '--alternatives', '3'];
    const { text, alternatives = [] } = await answer(args, FERRY);
    assert.ok(alternatives.length > 0);
    assert.equal(new Set([text, ...alternatives.map((way) => way.text)]).size, alternatives.length + 1);
    for (const way of alternatives) {
      assert.match(way.title, /^bar \d+ around fret \d+$/);
      assert.deepEqual(pitches(await notesOf(way.text)), pitches(await notesOf(FERRY)));
    }
    assert.match(await unreadable([...args.slice(0, 4), '--alternatives', '4'], FERRY), /from 1 to 3/);
  });

  it('offers what leaves out less, by the options that ask for it', async () => {
    const low = firstString('0---', 'E4').replace(/E2 \|----/, 'E2 |0---');
    const args = ['convert', '-', '--tuning', 'F2 A2 D3 G3 B3 E4'];
    const { report } = await answer(args, low);
    assert.equal(report.unplaced.length, 1);
    const offer = report.offers?.find(({ options }) => options.startsWith('--by '));
    assert.ok(offer, JSON.stringify(report));
    const next = await answer([...args, ...offer.options.split(' ')], low);
    assert.equal(next.report.unplaced.length, 0);
    const { err } = await pegbox(args, low);
    assert.match(err, /every note has a place: --by 1\n/);
  });

  it('refuses a wish that it does not know', async () => {
    const args = ['convert', '-', '--tuning', 'DADGAD'];
    assert.match(await unreadable([...args, '--objective', 'best'], FERRY), /total or hardest/);
    assert.match(await unreadable([...args, '--keep', 'tune'], FERRY), /sound, shapes or function/);
    assert.match(await unreadable([...args, '--leave-out', 'bass'], FERRY), /takes doubled/);
    assert.match(await unreadable([...args, '--key', 'G'], FERRY), /--keep function/);
    const { code, err } = await pegbox(
      ['convert', '-', '--tuning', 'DADGAD', '--closed', '--keep', 'shapes'],
      FERRY,
    );
    assert.equal(code, 1);
    assert.match(err, /^pegbox: Shapes stay .*\n$/);
  });
});

describe('refinger', () => {
  it('is better in what was asked, or changes nothing and says so', async () => {
    const closed = await answer(['refinger', '-', '--objective', 'closed'], FERRY);
    const { before = NaN, after = NaN } = closed.report.compared ?? {};
    assert.ok(after < before, `${after} ${before}`);
    assert.deepEqual(pitches(await notesOf(closed.text)), pitches(await notesOf(FERRY)));
    const again = await pegbox(['refinger', '-', '--objective', 'closed'], closed.text);
    assert.equal(again.out, closed.text);
    assert.match(again.err, /already as closed/);
  });

  it('plays on the strings asked for', async () => {
    const { text } = await answer(['refinger', '-', '--objective', 'strings', '--strings', '5 4 3 2'], FERRY);
    assert.match(text, /^E4 \|-+\|-+\|$/m);
    assert.deepEqual(pitches(await notesOf(text)), pitches(await notesOf(FERRY)));
    const { code, err } = await pegbox(['refinger', '-', '--objective', 'strings', '--strings', '1'], FERRY);
    assert.equal(code, 1);
    assert.match(err, /have no place .*give more strings/);
  });

  it('refuses what it cannot read', async () => {
    assert.match(await unreadable(['refinger', '-'], FERRY), /--objective/);
    assert.match(await unreadable(['refinger', '-', '--objective', 'fast'], FERRY), /lower, open/);
    assert.match(await unreadable(['refinger', '-', '--objective', 'strings'], FERRY), /--strings/);
  });
});

describe('simplify', () => {
  it('keeps tune and bass and marks what goes', async () => {
    const { text, report } = await answer(['simplify', '-', '--fingers', '2'], CHORDS);
    assert.ok(report.unplaced.length > 0);
    assert.equal(report.kept + report.unplaced.length, report.notesIn);
    assert.match(text, /^omitted \| *[A-G]/m);
    assert.deepEqual(outer(await notesOf(text)), outer(await notesOf(CHORDS)));
  });

  it('asks for a limit, and for one that can be kept', async () => {
    assert.match(await unreadable(['simplify', '-'], CHORDS), /at least one limit/);
    assert.match(await unreadable(['simplify', '-', '--fingers', '5'], CHORDS), /from 1 to 4/);
    const { code, out, err } = await pegbox(['simplify', '-', '--highest-fret', '0'], CHORDS);
    assert.equal(code, 1);
    assert.equal(out, '');
    assert.match(err, /no place; allow more/);
  });
});

describe('suit', () => {
  it('ranks tunings, with progress on standard error', async () => {
    const { code, out, err } = await pegbox(['suit', '-', '--within', '1'], FERRY);
    assert.equal(code, 0, err);
    assert.match(
      out,
      /^As it stands\n[^]*^Named tunings\n[^]*^The best for each number of strings changed\n/m,
    );
    assert.match(err, /^named tunings: 100 % of \d+\n/m);
    assert.match(err, /^Best for this cost, this passage, these limits: /m);
  });

  it('answers with plain records', async () => {
    const result = (await json(['suit', '-', '--within', '1', '--lines', '6-11'], FERRY)) as {
      here: { cost: number };
      best: { cost: number; tuning: string }[];
      total: number;
      evaluated: number;
      unplayable: number;
      ruledOut: number;
    };
    const [best] = result.best;
    assert.ok(best && best.cost <= result.here.cost);
    assert.equal(result.total, result.evaluated + result.unplayable + result.ruledOut);
    const { report } = await answer(['convert', '-', '--tuning', best.tuning], FERRY);
    assert.equal(report.unplaced.length, 0);
  });

  it('refuses what is no passage', async () => {
    assert.match(await unreadable(['suit', '-', '--within', '4'], FERRY), /from 0 to 3/);
    const { code, err } = await pegbox(['suit', '-'], 'title: Nothing\n');
    assert.equal(code, 1);
    assert.match(err, /^pegbox: There is no tab /);
  });
});

/** The lowest and the highest pitch of each moment. */
function outer(notes: readonly Note[]): unknown[] {
  const moments = new Map<string, number[]>();
  for (const { onsetFraction, midi } of notes) {
    const key = onsetFraction.join('/');
    moments.set(key, [...(moments.get(key) ?? []), midi ?? NaN]);
  }
  return [...moments].map(([key, midis]) => [key, Math.min(...midis), Math.max(...midis)]);
}
