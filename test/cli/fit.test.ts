import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { fileWith, json, pegbox, unreadable } from './pegbox';

const BARS =
  'tuning: D A D\n\nD |0---2---|4---5---|\n# hold the last one\nA |0-------|0-------|\nD |--------|--------|\n';

const BROKEN = `tuning: D A D

D |0---2---|
# hold the last one
A |0-------|
D |--------|

D |4---5---|
A |0-------|
D |--------|
`;

describe('fit', () => {
  it('breaks a system at a bar sign, and keeps a comment above its line', async () => {
    const file = fileWith('fit.pegbox', BARS);
    const { code, out } = await pegbox(['fit', file, '--width', '20']);
    assert.equal(code, 0);
    assert.equal(out, BROKEN);
    assert.equal((await pegbox(['fit', '-'], BROKEN)).out, BARS);
    assert.equal(readFileSync(file, 'utf8'), BARS);
  });

  it('answers with the text and what became of the notes as JSON', async () => {
    const answer = await json(['fit', '-', '--width', '20'], BARS);
    assert.deepEqual(answer, { text: BROKEN, report: { notesIn: 6, kept: 6, moved: 0, unplaced: [] } });
  });

  it('refuses a width that no bar fits, and a file without tab', async () => {
    assert.match(await unreadable(['fit', '-', '--width', '3'], BARS), /whole number from 20/);
    assert.match(await unreadable(['fit', '-', '--width', 'wide'], BARS), /whole number/);
    assert.match(await unreadable(['fit', 'nowhere.pegbox']), /There is no file/);
    const none = await pegbox(['fit', '-'], 'title: Low Tide\n');
    assert.equal(none.code, 1);
    assert.match(none.err, /There is no tab in standard input/);
  });
});
