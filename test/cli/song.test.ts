import assert from 'node:assert/strict';
import type { ChordChart } from '../../src/service/song/songAnswer';
import { fileWith, json, pegbox, unreadable } from './pegbox';

const SONG = `title:  Slack Water
tuning: open G

[Verse]
chords |G       C       |D       Hm      |
words  |Slack   wa-     |ter     turn    |
`;

describe('a song from chord names', () => {
  const file = fileWith('slack-water.pegbox', SONG);

  it('is filled; what is left empty is told on standard error', async () => {
    const { code, out, err } = await pegbox(['fill', file]);
    assert.equal(code, 0);
    const lines = out.split('\n');
    assert.deepEqual(lines.slice(0, 6), SONG.split('\n').slice(0, 6));
    assert.equal(lines.filter((line) => /^[A-G]\d {5}\|/.test(line)).length, 6);
    assert.match(err, /^3 of 4 chords have their shapes, .*\nBar 2: Hm is left empty: H is B here/);
    assert.equal((await pegbox(['fill', '-'], SONG)).out, out);
    const again = await pegbox(['fill', '-'], out);
    assert.equal(again.out, out);
  });

  it('has a chart as text, as JSON and as a picture', async () => {
    const { out } = await pegbox(['chart', file]);
    assert.match(out, /^Slack Water\nopen G\n\nchord +frets +fingers +where\nG +[0x] 0 0 0 0 0/);
    const chart = (await json(['chart', file])) as ChordChart;
    assert.deepEqual(
      chart.chords.map(({ name, shape }) => [name, shape !== null]),
      [
        ['G', true],
        ['C', true],
        ['D', true],
        ['Hm', false],
      ],
    );
    assert.match((await pegbox(['chart', file, '--svg'])).out, /^<svg [\s\S]*<\/svg>\n$/);
  });

  it('gets a second guitar, named and under its own capo', async () => {
    const { code, out, err } = await pegbox(['second-guitar', file, '--name', 'high', '--capo', '5']);
    assert.equal(code, 0, err);
    assert.match(out, /part: +high\ncapo: +5\n[\s\S]*chords \|D +G +\|A +/);
    assert.match(err, /^3 chords stay (?:above|below) what the first player sounds/);
  });

  it('refuses what makes no sense in one line', async () => {
    assert.match(await unreadable(['fill', file, '--open', '--closed']), /opposite things/);
    assert.match(await unreadable(['fill', file, '--strum', 'twice']), /--strum takes once or beats/);
    assert.match(await unreadable(['second-guitar', file]), /--name NAME is missing/);
    assert.match(await unreadable(['chart', file, '--json', '--svg']), /give one of them/);
    const none = await pegbox(['fill', '-'], 'E4 |0---|\n');
    assert.deepEqual([none.code, none.out], [1, '']);
    assert.match(none.err, /No chords row stands here/);
  });
});
