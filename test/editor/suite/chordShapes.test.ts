import { assert } from 'chai';
import * as vscode from 'vscode';
import { closeTabs, newTab } from './newTab';
import { waitFor } from './waitFor';

const SONG = `tuning: DADGAD

chords |D       |G       |
D4     |0-------|--------|
A3     |--------|--------|
G3     |--------|--------|
D3     |--------|--------|
A2     |--------|--------|
D2     |0-------|--------|
`;

describe('shapes at a chord’s name in the editor', () => {
  after(closeTabs);

  it('the one taken is written under it, and one undo takes it back', async () => {
    const editor = await newTab(SONG);
    const { document } = editor;
    const behindG = new vscode.Position(2, 18);
    editor.selection = new vscode.Selection(behindG, behindG);
    await waitFor(async () => {
      const { items } = await vscode.commands.executeCommand<vscode.CompletionList>(
        'vscode.executeCompletionItemProvider',
        document.uri,
        behindG,
      );
      return items.some(({ label }) => (typeof label === 'string' ? label : label.label).startsWith('G '));
    }, 'shapes on offer');
    await vscode.commands.executeCommand('editor.action.triggerSuggest');
    await waitFor(async () => {
      await vscode.commands.executeCommand('acceptSelectedSuggestion');
      return document.getText() !== SONG;
    }, 'a shape in the text');
    const lines = document.getText().split('\n');
    assert.strictEqual(lines[2], 'chords |D       |G       |');
    assert.match(lines[6] ?? '', /^D3 {5}\|--------\|\d-------\|$/);
    assert.strictEqual(lines[3]?.startsWith('D4     |0-------|'), true);
    await vscode.commands.executeCommand('undo');
    await waitFor(() => document.getText() === SONG, 'the text as it was');
  });
});
