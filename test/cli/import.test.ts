import assert from 'node:assert/strict';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileWith, FOLDER, json, pegbox, unreadable } from './pegbox';

// Our own texts.

const TAB = `From a mail, drop D:\n\n${['e', 'B', 'G', 'D', 'A', 'D'].map((label) => `${label}|-5s7-|`).join('\n')}\n`;
const READ = `tuning: drop D\n\nFrom a mail, drop D:\n\n${['e', 'B', 'G', 'D', 'A', 'D'].map((label) => `${label}|-5/7-|`).join('\n')}\n`;
const TUNING = 'The tuning is taken for drop D, from a sentence of the text.';
const SLIDES = 'Slides of another kind were written as / and \\.';

/** A new folder with texts in it. */
function folderWith(name: string, texts: Readonly<Record<string, string>>): string {
  for (const [file, text] of Object.entries(texts)) {
    mkdirSync(path.join(FOLDER, name, path.dirname(file)), { recursive: true });
    fileWith(path.join(name, file), text);
  }
  return path.join(FOLDER, name);
}

function read(...parts: readonly string[]): string {
  return readFileSync(path.join(...parts), 'utf8');
}

describe('import', () => {
  it('writes a tab beside the text, and says what was guessed and where', async () => {
    const file = fileWith('mail.txt', TAB);
    const made = path.join(FOLDER, 'mail.pegbox');
    assert.deepEqual(await pegbox(['import', file]), {
      code: 0,
      out: '',
      err: `${file}: 1 system in ${made}\n  line 3: ${TUNING}\n  line 3: ${SLIDES}\n`,
    });
    assert.equal(read(made), READ);
    assert.equal(read(file), TAB);
  });

  it('answers standard input on standard output', async () => {
    const { code, out, err } = await pegbox(['import', '-'], TAB);
    assert.deepEqual([code, out], [0, READ]);
    assert.match(err, /^standard input: 1 system\n/);
  });

  it('reads folders within folders, and leaves other files alone', async () => {
    const folder = folderWith('songs', { 'a.txt': TAB, 'old/b.tab': TAB, 'old/c.md': TAB, 'd.TXT': TAB });
    const out = path.join(FOLDER, 'new');
    const { code } = await pegbox(['import', folder, '--out', out]);
    assert.equal(code, 0);
    for (const name of ['a', 'old/b', 'd']) assert.equal(read(out, `${name}.pegbox`), READ);
    assert.equal(existsSync(path.join(out, 'old/c.pegbox')), false);
    assert.equal(existsSync(path.join(folder, 'a.pegbox')), false);
  });

  it('is for programs with --json', async () => {
    const file = fileWith('program.txt', TAB);
    const plain = fileWith('letter.txt', 'Dear all,\n- no tab here\n');
    assert.deepEqual(await json(['import', file, plain]), [
      {
        from: file,
        file: path.join(FOLDER, 'program.pegbox'),
        systems: 1,
        fields: ['tuning: drop D'],
        guesses: [
          { kind: 'tuning', words: TUNING, line: 3 },
          { kind: 'slides', words: SLIDES, line: 3 },
        ],
      },
      { from: plain, file: null, systems: 0, fields: [], guesses: [], text: read(plain) },
    ]);
    const [piped] = (await json(['import', '-'], TAB)) as readonly { text: string }[];
    assert.equal(piped?.text, READ.trimEnd() + '\n');
  });

  it('takes the tuning and the instrument from whoever knows them', async () => {
    const bare = '--0--\n-----\n-----\n--3--\n';
    const { out } = await pegbox(['import', '-', '--instrument', 'ukulele', '--tuning', 'low G'], bare);
    assert.match(out, /^instrument: ukulele\ntuning: {5}low G\n\nA\|--0--\|\n/);
    assert.match(await unreadable(['import', '-', '--tuning', 'open H'], bare), /open H/);
    assert.match(await unreadable(['import', '-', '--instrument', 'kazoo'], bare), /kazoo/);
  });

  it('ends with exit code 1 where no text holds a tab, and writes nothing', async () => {
    const file = fileWith('prose.txt', 'Nothing but words.\n');
    const { code, out, err } = await pegbox(['import', file]);
    assert.deepEqual([code, out], [1, '']);
    assert.match(
      err,
      /prose\.txt: no line looks like the string of an instrument, so nothing was written\.\n$/,
    );
    assert.equal(existsSync(path.join(FOLDER, 'prose.pegbox')), false);
  });

  it('writes over nothing unless it is told to', async () => {
    const folder = folderWith('kept', { 'one.txt': TAB, 'two.txt': TAB, 'two.pegbox': 'mine\n' });
    assert.match(await unreadable(['import', folder]), /two\.pegbox is there already.*--force/);
    assert.equal(existsSync(path.join(folder, 'one.pegbox')), false);
    assert.equal((await pegbox(['import', folder, '--force'])).code, 0);
    assert.equal(read(folder, 'two.pegbox'), READ);
  });

  it('refuses what cannot be done, before anything is written', async () => {
    const folder = folderWith('twice', { 'a.txt': TAB, 'a.tab': TAB });
    assert.match(await unreadable(['import', folder]), /Two texts would become .*a\.pegbox/);
    const [good, bad] = [fileWith('good.txt', TAB), fileWith('bad.txt', new Uint8Array([0x65, 0xff]))];
    assert.match(await unreadable(['import', good, bad]), /bad\.txt is not UTF-8: line 1/);
    assert.equal(existsSync(path.join(FOLDER, 'good.pegbox')), false);
    assert.match(await unreadable(['import', good, `${good}.none`]), /There is no file/);
    assert.equal(existsSync(path.join(FOLDER, 'good.pegbox')), false);
    assert.match(
      await unreadable(['import', folderWith('empty', { 'x.md': TAB })]),
      /no \.txt or \.tab files/,
    );
    assert.match(await unreadable(['import', good, '--out', good]), /cannot be written/);
  });
});
