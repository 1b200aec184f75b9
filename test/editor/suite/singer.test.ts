import { assert } from 'chai';
import * as vscode from 'vscode';
import type { RingingAnswer } from '../../../src/service/ringing/ringingAnswer';
import type { ServiceError } from '../../../src/service/serviceApi';
import type { SingerAnswer } from '../../../src/service/singer/singerAnswer';
import { closeTabs, newTab } from './newTab';
import { backInTab, run, shownDiff, undoneOnce } from './shownDiff';
import { waitFor } from './waitFor';

const song = `title: Low Water
key:   G

chords |G       |C       |
E4     |3---2---|0---3---|
B3     |--------|1---0---|
G3     |--------|0-------|
D3     |--------|--------|
A2     |--------|3-------|
E2     |3-------|--------|
`;

describe('fitting a singer in the editor', () => {
  afterEach(closeTabs);

  it('a caller gets the ways', async () => {
    await newTab(song);
    const answer = await vscode.commands.executeCommand<SingerAnswer | ServiceError>('pegbox.fitSinger', {
      key: 'Bb',
    });
    assert.ok(!('error' in answer), JSON.stringify(answer));
    assert.strictEqual(answer.ways[0]?.words, 'Shapes of G major sound in Bb major');
  });

  it('the way that is chosen from the list is shown first, and one undo takes it back', async () => {
    const { document } = await newTab(song);
    let done = false;
    void run('pegbox.fitSinger', { key: 'Bb', preview: true }).then(() => (done = true));
    await waitFor(async () => {
      await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
      return done;
    }, 'end of the questions');
    const { after } = await shownDiff();
    const expected = song.replace('key:   G\n', 'key:   G\ncapo:  3\n');
    assert.strictEqual(after.getText(), expected);
    assert.strictEqual(document.getText(), song);
    await run('pegbox.takeAll', after.uri);
    assert.strictEqual(document.getText(), expected);
    await backInTab(document);
    await undoneOnce(document, song);
  });

  it('what cannot be read is told in a sentence', async () => {
    await newTab(song);
    const answer = await run('pegbox.fitSinger', { voice: 'alt' });
    assert.match(answer?.error ?? '', /is no voice with a usual range/);
  });
});

describe('the strings that may ring, in the editor', () => {
  afterEach(closeTabs);

  it('are a page with a row for the key and for each chord', async () => {
    await newTab(song);
    const answer = await vscode.commands.executeCommand<RingingAnswer>('pegbox.ringingStrings');
    assert.lengthOf(answer.chords, 2);
    const input = await waitFor(() => {
      const active = vscode.window.tabGroups.activeTabGroup.activeTab?.input;
      return active instanceof vscode.TabInputCustom && active;
    }, 'page');
    const text = (await vscode.workspace.openTextDocument(input.uri)).getText();
    assert.match(text, /^\| The key: G major \|/m);
    assert.match(text, /^\| C \| bar 2 \| 6, 1: third; 3: fifth \| .* \| 2: a half step under the root \|$/m);
  });

  it('without key and chords it is said what is missing', async () => {
    await newTab('E4 |0---|\nB3 |1---|\n');
    const answer = await run('pegbox.ringingStrings');
    assert.match(answer?.error ?? '', /No chords are written/);
  });
});
