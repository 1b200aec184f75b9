import { assert } from 'chai';
import * as vscode from 'vscode';
import type { ChordChart } from '../../../src/service/song/songAnswer';
import { closeTabs, newTab } from './newTab';
import { backInTab, run, shownDiff, undoneOnce } from './shownDiff';
import { waitFor } from './waitFor';

const song = `title:  Bell on the Shoal
tuning: open G

chords |G       C       |D       G       |
words  |Bell    on      |the     shoal   |
`;

describe('a song from chord names in the editor', () => {
  afterEach(closeTabs);

  it('is filled at once for a caller that says how, and one undo takes it back', async () => {
    const { document } = await newTab(song);
    const outcome = await run('pegbox.fillChords', { strum: 'once' });
    assert.match(outcome?.report?.remarks[0] ?? '', /^All 4 chords have their shapes/);
    const lines = document.getText().split('\n');
    assert.strictEqual(lines.filter((line) => /^[A-G]\d {5}\|/.test(line)).length, 6);
    assert.isTrue(document.getText().startsWith(song));
    await undoneOnce(document, song);
  });

  it('asks how, and shows the change first', async () => {
    const { document } = await newTab(song);
    let done = false;
    void run('pegbox.fillChords').then(() => (done = true));
    await waitFor(async () => {
      await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
      return done;
    }, 'end of the questions');
    const { after } = await shownDiff();
    assert.strictEqual(document.getText(), song);
    const expected = after.getText();
    assert.isTrue(expected.startsWith(song));
    await run('pegbox.takeAll', after.uri);
    assert.strictEqual(document.getText(), expected);
    await backInTab(document);
    await undoneOnce(document, song);
  });

  it('gets a second guitar in one step', async () => {
    const { document } = await newTab(song);
    const outcome = await run('pegbox.secondGuitar', { name: 'high guitar', capo: '5' });
    assert.match(outcome?.report?.remarks[0] ?? '', /^4 chords stay (?:above|below)/);
    assert.match(document.getText(), /part: {3}high guitar\ncapo: {3}5\n[^]*chords \|D +G +\|A +D/);
    await undoneOnce(document, song);
  });

  it('has a chart beside the text', async () => {
    await newTab(song);
    const chart = await vscode.commands.executeCommand<ChordChart>('pegbox.showChordChart');
    assert.sameMembers([...new Set(chart.chords.map(({ name }) => name))], ['G', 'C', 'D']);
    await waitFor(
      () => vscode.window.tabGroups.all.some(({ tabs }) => tabs.some(({ label }) => label === 'Chord Chart')),
      'page',
    );
  });

  it('says what is missing where no chord is named', async () => {
    await newTab('E4 |0---|\n');
    const outcome = await run('pegbox.fillChords', { strum: 'once' });
    assert.match(outcome?.error ?? '', /No chords row stands here/);
  });
});
