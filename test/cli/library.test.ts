import assert from 'node:assert/strict';
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { CompareAnswer } from '../../src/service/compare/compareAnswer';
import { FOLDER, json, pegbox, unreadable } from './pegbox';

const TUNE = 'title: Tune\ntuning: DADGAD\nkey: D\n\nD4 |0---2---5-------|\nA3 |----------------|\n';
const ELSEWHERE = 'title: Elsewhere\ncapo: 3\n\n[Riff]\nG3 |--------2-------|\nD3 |2---4-----------|\n';

const songs = path.join(FOLDER, 'songs');
const tune = path.join(songs, 'tune.pegbox');
const elsewhere = path.join(songs, 'deep', 'elsewhere.pegbox');

before(() => {
  for (const folder of ['deep', '.hidden', 'node_modules', 'empty'])
    mkdirSync(path.join(songs, folder), { recursive: true });
  writeFileSync(tune, TUNE);
  writeFileSync(elsewhere, ELSEWHERE);
  writeFileSync(path.join(songs, '.hidden', 'no.pegbox'), TUNE);
  writeFileSync(path.join(songs, 'node_modules', 'no.pegbox'), TUNE);
  writeFileSync(path.join(songs, 'notes.txt'), TUNE);
});

describe('list', () => {
  it('groups the tabs of a folder and of those in it', async () => {
    assert.equal(
      (await pegbox(['list', songs])).out,
      `DADGAD
  Tune  DADGAD  no capo  D major  D4–G4  ${tune}

standard
  Elsewhere  standard  capo 3    G3–C4  ${elsewhere}
`,
    );
    assert.match(
      (await pegbox(['list', songs, '--by', 'range'])).out,
      /^lowest note G3\n.*\n\nlowest note D4\n/,
    );
  });

  it('answers as JSON, and says what is not there', async () => {
    const { groups } = (await json(['list', songs, '--by', 'capo'])) as {
      groups: { name: string; files: { file: string; range: { lowMidi: number } }[] }[];
    };
    assert.deepEqual(
      groups.map(({ name, files }) => [name, files.map(({ file, range }) => [file, range.lowMidi])]),
      [
        ['no capo', [[tune, 62]]],
        ['capo 3', [[elsewhere, 55]]],
      ],
    );
    assert.match((await pegbox(['list', path.join(songs, 'empty')])).err, /no files that end in \.pegbox/);
    assert.match(await unreadable(['list', path.join(songs, 'nowhere')]), /^There is no folder/);
    assert.match(await unreadable(['list', songs, '--by', 'mood']), /takes tuning, capo, key or range/);
  });
});

describe('find', () => {
  it('finds a tune by its notes, and like a passage, leaving that one out', async () => {
    const like = ['find', songs, '--like', tune, '--lines', '5', '--columns', '1-20'];
    assert.equal(
      (await pegbox(like)).out,
      `${elsewhere}:6:5 Riff, bar 1; standard, capo 3; 7 half steps down\n`,
    );
    const typed = (await json(['find', songs, '--notes', 'G3 A C4'])) as {
      file: string;
      halfSteps: number;
    }[];
    assert.deepEqual(
      typed.map(({ file, halfSteps }) => [file, halfSteps]),
      [
        [elsewhere, 0],
        [tune, 7],
      ],
    );
    assert.match(
      (await pegbox(['find', songs, '--notes', 'C4 C#4'])).err,
      /^Nothing else sounds like C4 C#4\.\n$/,
    );
  });

  it('says in one line what to give', async () => {
    assert.match(await unreadable(['find', songs]), /^Give what to look for/);
    assert.match(await unreadable(['find', songs, '--notes', 'H']), /“H” is no note/);
    assert.match(await unreadable(['find', songs, '--notes', 'C D', '--rhythm']), /no rhythm/);
    assert.match(
      await unreadable(['find', songs, '--like', tune, '--columns', '9']),
      /first and last character/,
    );
  });
});

describe('compare', () => {
  it('tells what became of the notes, bar by bar', async () => {
    const after = TUNE.replace('2---5---', '3-----5-').replace('key: D', 'key: G');
    assert.equal(
      (await pegbox(['compare', tune, '-'], after)).out,
      `3 notes before, 3 now: 1 the same, 1 at another time, 1 at another pitch.
key: D major before, now G major

Bar 1
  time    G4 on string 1, fret 5: beat 3 before, now beat 3 &
  pitch   beat 2: E4 on string 1, fret 2 before, now F4 on string 1, fret 3
`,
    );
    assert.equal((await pegbox(['compare', tune, tune])).out, '3 notes, all the same in both versions.\n');
  });

  it('answers as JSON, and takes two files', async () => {
    const { counts } = (await json(['compare', tune, elsewhere])) as CompareAnswer;
    assert.equal(counts.before, 3);
    assert.match(await unreadable(['compare', tune]), /^Two files are compared/);
    assert.match(await unreadable(['compare', '-', '-']), /read once only/);
  });
});
