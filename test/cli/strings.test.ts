import assert from 'node:assert/strict';
import type { StringsAnswer } from '../../src/service/strings/stringsAnswer';
import { fileWith, json, pegbox, unreadable } from './pegbox';

type Placed = StringsAnswer & { readonly line: number | null };

const strings = async (...args: string[]): Promise<readonly Placed[]> =>
  (await json(['strings', ...args])) as readonly Placed[];

describe('strings', () => {
  // check-values.md T16: .046w at 25.5 in is 17.5 lb at E2, 13.9 at D2, 11.0 at C2.
  for (const [tuning, pounds] of [
    ['standard', 17.5],
    ['drop D', 13.9],
    ['open C', 11.0],
  ] as const)
    it(`tells the pounds of a tuning alone: string 6 in ${tuning}, ${pounds} lb`, async () => {
      const [found, more] = await strings('--tuning', tuning, '--scale-length', '25.5 in');
      assert.equal(more, undefined);
      assert.equal(found?.line, null);
      assert.ok(Math.abs((found.strings[0]?.pounds ?? 0) - pounds) < 0.05);
    });

  // strings-and-frets.md §2.5: nickel .011–.049 at 25.5 in, 118.5 lb in all
  it('takes gauges, a length and a reference pitch', async () => {
    const args = ['--gauges', '49w 38w 28w 18 14 11', '--scale-length', '25.5 in'];
    const [found] = await strings(...args);
    assert.ok(Math.abs((found?.total?.pounds ?? 0) - 118.6) <= 0.1);
    const [lower] = await strings(...args, '--reference-pitch', '415');
    assert.ok(
      Math.abs((lower?.total?.newtons ?? 0) / (found?.total?.newtons ?? 1) - (415 / 440) ** 2) < 1e-3,
    );
  });

  it('tells each set of fields of a file once, with its line', async () => {
    const file = fileWith(
      'sets.pegbox',
      'tuning: drop D\n\nE4 |0---|\n\nE4 |3---|\n\ntuning: high strung\n\nE4 |0---|\n',
    );
    const found = await strings(file);
    assert.deepEqual(
      found.map(({ line, tuning, gaugesAre }) => [line, tuning, gaugesAre]),
      [
        [3, 'drop D', 'usual'],
        [9, 'high strung', 'octave'],
      ],
    );
    const piped = (await json(['strings', '-'], 'instrument: bass\n')) as readonly Placed[];
    assert.equal(piped[0]?.instrument, 'bass');
  });

  it('prints a table for people, the whole set last, and cautions beside it', async () => {
    const { code, out, err } = await pegbox(['strings', '--tuning', 'all fifths']);
    assert.equal(code, 0);
    const lines = out.trimEnd().split('\n');
    assert.match(lines[0] ?? '', /^guitar, all fifths \(C2 G2 D3 A3 E4 B4\), 648 mm$/);
    assert.match(lines[2] ?? '', /^string +note +gauge +change +newtons +pounds/);
    assert.match(lines[8] ?? '', /B4 .*124 % more.*120 %.*cannot be strung$/);
    assert.match(lines[9] ?? '', /^ +all +25 % more/);
    assert.match(err, /cannot be strung in plain steel at this length/);
    assert.match(err, /slowly.*eyes and face.*string maker.*luthier/);
  });

  it('refuses in one sentence what cannot be: a length of zero, gauges that do not match or are none', async () => {
    assert.match(
      await unreadable(['strings', '--scale-length', '0 mm']),
      /--scale-length.*between 100 mm and 2000 mm/,
    );
    assert.match(await unreadable(['strings', '--gauges', '46w 36w']), /--gauges.*6 strings, and 2 gauges/);
    assert.match(await unreadable(['strings', '--gauges', '460w 36w 26w 17 13 10']), /\.005 in and \.200 in/);
    assert.match(await unreadable(['strings', '--tuning', 'opne E']), /--tuning.*open E/);
    assert.match(await unreadable(['strings', '--instrument', 'gitar']), /--instrument.*guitar/);
    const file = fileWith('own.pegbox', 'tuning: drop D\n');
    assert.match(await unreadable(['strings', file, '--tuning', 'DADGAD']), /--tuning goes without a file/);
    assert.match(await unreadable(['strings', 'nowhere.pegbox']), /no file nowhere\.pegbox/);
  });
});
