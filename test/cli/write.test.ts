import assert from 'node:assert/strict';
import { json, pegbox, unreadable } from './pegbox';

interface Answer {
  readonly text: string;
  readonly notes: readonly { line: number; string: number; fret: number; name: string; onset: number }[];
  readonly report: { notesIn: number; kept: number; unplaced: readonly { name: string }[] };
}

const answer = async (...args: string[]): Promise<Answer> => (await json(args)) as Answer;
const places = ({ notes }: Answer): string => notes.map(({ string, fret }) => `${string}:${fret}`).join(' ');

describe('write', () => {
  it('prints a system of the notes named, and tells them', async () => {
    const { code, out, err } = await pegbox(['write', 'D3', 'E3', 'F#3', '--tuning', 'DADGAD']);
    assert.equal(code, 0);
    assert.equal(
      out,
      'D4 |----------------|\nA3 |----------------|\nG3 |----------------|\nD3 |0-2-4-----------|\nA2 |----------------|\nD2 |----------------|\n',
    );
    assert.equal(err, '3 notes in bar 1: D3 E3 F#3.\n');
  });

  it('takes degrees, a key, a length, a capo and a meter', async () => {
    const told = await answer(
      ...['write', '1 2 b3', '--tuning', 'DADGAD', '--key', 'D', '--capo', '2'],
      ...['--value', 'dotted quarter', '--meter', '6/8'],
    );
    assert.deepEqual(
      told.notes.map(({ name, onset }) => [name.replace(/\d/, ''), onset]),
      [
        ['E', 0],
        ['F#', 1.5],
        ['G', 3],
      ],
    );
  });

  it('gives as JSON the text, its notes with their lines in it, and the report', async () => {
    const told = await answer('write', 'D3 C9', '--tuning', 'DADGAD');
    assert.deepEqual(Object.keys(told), ['text', 'notes', 'report']);
    const [note] = told.notes;
    assert.ok(note);
    assert.match(told.text.split('\n')[note.line - 1] ?? '', /^D3 .*\|0/);
    assert.deepEqual([told.report.notesIn, told.report.kept, told.report.unplaced[0]?.name], [2, 1, 'C9']);
  });

  it('tells on standard error what has no place', async () => {
    const { code, err } = await pegbox(['write', 'D3', 'C2', '--tuning', 'DADGAD']);
    assert.equal(code, 0);
    assert.match(err, /Bar 1: C2 is left out: it lies 2 half steps below the lowest open string\./);
  });

  it('refuses what cannot be written with 1, and options that cannot be read with 2', async () => {
    for (const args of [['X'], ['1 2'], ['C1'], ['D3', '--value', 'long']]) {
      const { code, out, err } = await pegbox(['write', ...args]);
      assert.equal(code, 1, args.join(' '));
      assert.equal(out, '');
      assert.match(err, /^pegbox: [^\n]+\.\n$/);
    }
    assert.match((await pegbox(['write', '1 2'])).err, /give one with --key/);
    assert.match(await unreadable(['write', 'D3', '--tuning', 'opne E']), /--tuning: .*open E/);
    assert.match(await unreadable(['write', 'D3', '--key', 'Q']), /--key: /);
    assert.match(await unreadable(['write', 'D3', '--capo', '40']), /--capo: /);
    assert.match(await unreadable(['write', 'D3', '--meter', '4']), /--meter: /);
    assert.match(await unreadable(['write', 'D3', '--instrument', 'kazzoo']), /--instrument: /);
    assert.match(await unreadable(['write']), /NOTES… is missing/);
  });
});

describe('exercise', () => {
  it('prints a scale with its name and fingers (check-values.md T2)', async () => {
    const args = [
      'exercise',
      'C',
      'major',
      '--tuning',
      'standard',
      '--position',
      'open',
      '--direction',
      'up',
    ];
    const { code, out } = await pegbox(args);
    assert.equal(code, 0);
    const [heading, row] = out.split('\n');
    assert.equal(heading, 'C major, open position, up');
    assert.equal(row, 'fingers |3 0 2 3 0 2 0 1 |');
    assert.equal(places(await answer(...args)), '5:3 4:0 4:2 4:3 3:0 3:2 2:0 2:1');
  });

  it('finds T3 and T4 in other tunings', async () => {
    const scale = ['exercise', 'C major', '--octaves', '1', '--direction', 'up', '--tuning'];
    assert.equal(places(await answer(...scale, 'DADGAD')), '5:3 4:0 4:2 4:3 3:0 2:0 2:2 2:3');
    assert.equal(places(await answer(...scale, 'open G')), '5:5 4:0 4:2 4:3 3:0 3:2 2:0 2:1');
  });

  it('tells scales from chords', async () => {
    const heading = async (...name: string[]): Promise<string | undefined> =>
      (await answer('exercise', ...name, '--no-fingers')).text.split('\n')[0];
    assert.equal(await heading('D', 'minor'), 'D minor, 1 octave, up and down');
    assert.equal(await heading('Dm'), 'Dm arpeggio, 1 octave, up and down');
    assert.equal(await heading('D minor arpeggio'), 'D minor arpeggio, 1 octave, up and down');
    assert.equal(await heading('Am7/G'), 'Am7/G arpeggio, 1 octave, up and down');
  });

  it('leaves the fingers out where that is asked for', async () => {
    assert.doesNotMatch((await answer('exercise', 'D dorian', '--no-fingers')).text, /fingers/);
    assert.match((await answer('exercise', 'D dorian')).text, /^fingers /m);
  });

  it('refuses what it cannot read', async () => {
    assert.match(await unreadable(['exercise', 'D', 'dorain']), /no scale here.*dorian/);
    assert.match(await unreadable(['exercise', 'D dorian', '--position', 'low']), /--position takes/);
    assert.match(await unreadable(['exercise', 'D dorian', '--octaves', '5']), /--octaves takes/);
    assert.match(
      await unreadable(['exercise', 'D dorian', '--direction', 'left']),
      /--direction takes up, down/,
    );
  });
});
