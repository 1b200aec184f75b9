import { assert } from 'chai';
import * as vscode from 'vscode';
import type { ChangeOutcome } from '../../../src/extension/applyChange';
import { closeTabs, newTab } from './newTab';
import { undoneOnce } from './shownDiff';
import { waitFor } from './waitFor';

interface Opened {
  readonly uri: string;
}

/** The editor in front, once it shows a document. */
async function inFront(uri: string): Promise<vscode.TextEditor> {
  return waitFor(() => {
    const editor = vscode.window.activeTextEditor;
    return editor?.document.uri.toString() === uri && editor;
  }, `editor of ${uri}`);
}

describe('beginning a tab', () => {
  afterEach(closeTabs);

  it('a caller gets a tab that is not saved, with the cursor in its first cell', async () => {
    const { uri } = await vscode.commands.executeCommand<Opened>('pegbox.newTab', {
      tuning: 'DADGAD',
      bars: 2,
      columns: 2,
      rows: ['chords'],
    });
    const { document, selection } = await inFront(uri);
    assert.isTrue(document.isUntitled);
    assert.strictEqual(document.languageId, 'pegbox');
    assert.include(document.getText(), 'tuning: DADGAD\n');
    assert.include(document.getText(), 'chords |        |        |\nD4     |--------|--------|\n');
    const { line, character } = selection.active;
    assert.strictEqual(document.lineAt(line).text.slice(0, character), 'D4     |');
  });

  it('is three questions that Enter answers', async () => {
    let outcome: Opened | undefined;
    void vscode.commands
      .executeCommand<Opened>('pegbox.newTab', { from: 'a menu of the editor' })
      .then((made) => (outcome = made));
    const { uri } = await waitFor(async () => {
      await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
      return outcome;
    }, 'new tab');
    const { document } = await inFront(uri);
    assert.match(document.getText(), /^title: {2}New tab\ntuning: standard\n/);
    assert.match(document.getText(), /^E4 +\|-+\|/m);
  });

  it('what cannot be read is told in a sentence, and nothing opens', async () => {
    const answer = await vscode.commands.executeCommand<{ error?: string }>('pegbox.newTab', {
      instrument: 'banjoo',
    });
    assert.match(answer.error ?? '', /no instrument “banjoo”/);
    assert.isUndefined(vscode.window.activeTextEditor);
  });

  it('a system is inserted for the tuning in force, with one undo', async () => {
    const text = 'tuning: D2 A2 D3\n\nD3 |0---|\nA2 |----|\nD2 |0---|\n';
    const editor = await newTab(text);
    editor.selection = new vscode.Selection(3, 5, 3, 5);
    await vscode.commands.executeCommand<ChangeOutcome>('pegbox.insertSystem', { bars: 1, columns: 1 });
    assert.strictEqual(editor.document.getText(), `${text}\nD3 |----|\nA2 |----|\nD2 |----|\n`);
    assert.deepEqual([editor.selection.active.line, editor.selection.active.character], [6, 4]);
    await undoneOnce(editor.document, text);
  });

  it('the example opens for the walkthrough, and its step goes on there', async () => {
    await vscode.commands.executeCommand('pegbox.openExample', 'pegbox.showNoteNames');
    const names = await waitFor(
      () => vscode.window.visibleTextEditors.find(({ document }) => document.uri.scheme === 'pegbox-names'),
      'note names of the example',
    );
    assert.include(names.document.getText(), 'Bees on the Water');
  });
});

const song = `key: D

chords |        |        |
E4     |2-------|0-------|
B3     |3-------|2-------|
G3     |2-------|2-------|
D3     |0-------|2-------|
A2     |--------|0-------|
E2     |--------|--------|
`;

describe('the row of chords in the editor', () => {
  afterEach(closeTabs);

  it('is written from what sounds, and one undo takes it back', async () => {
    const { document } = await newTab(song);
    const outcome = await vscode.commands.executeCommand<ChangeOutcome>('pegbox.writeChords', {
      replace: false,
    });
    assert.ok(outcome && !('error' in outcome));
    assert.strictEqual(outcome.report.remarks[0], '2 names written.');
    const written = song.replace('|        |        |', '|D       |A       |');
    assert.strictEqual(document.getText(), written);
    await undoneOnce(document, song);
  });
});

describe('note names beside a tab', () => {
  afterEach(closeTabs);

  it('stand line by line, follow what is typed, and keep cursors in step both ways', async () => {
    const tab = await newTab(song);
    const { uri } = await vscode.commands.executeCommand<Opened>('pegbox.showNoteNames');
    const names = await waitFor(
      () => vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri),
      'note names',
    );
    assert.strictEqual(names.document.languageId, 'pegbox-names');
    // A page that an earlier tab of the same address left is filled anew.
    await waitFor(() => names.document.lineAt(3).text === 'E4     |F#-------|E--------|', 'the names');
    assert.strictEqual(names.document.lineAt(7).text, 'A2     |---------|A--------|');
    assert.deepEqual(vscode.languages.getDiagnostics(names.document.uri), []);
    assert.strictEqual(vscode.window.activeTextEditor?.document, tab.document);

    // The second bar of string 5 in the tab is a column further among the names.
    tab.selection = new vscode.Selection(7, 17, 7, 17);
    await waitFor(() => names.selection.active.isEqual(new vscode.Position(7, 18)), 'cursor among the names');

    await tab.edit((edit) => edit.replace(new vscode.Range(3, 17, 3, 18), '4'));
    await waitFor(
      () => names.document.lineAt(3).text === 'E4     |F#-------|G#-------|',
      'names after an edit',
    );

    await vscode.window.showTextDocument(names.document, {
      viewColumn: names.viewColumn ?? vscode.ViewColumn.Two,
    });
    const focused = await inFront(uri);
    focused.selection = new vscode.Selection(3, 18, 3, 18);
    await waitFor(() => {
      const shown = vscode.window.visibleTextEditors.find(({ document }) => document === tab.document);
      return shown?.selection.active.isEqual(new vscode.Position(3, 17));
    }, 'cursor in the tab');
  });
});

describe('the line above a section', () => {
  const settings = (): vscode.WorkspaceConfiguration => vscode.workspace.getConfiguration('pegbox');
  afterEach(async () => {
    await settings().update('sectionLens', undefined, vscode.ConfigurationTarget.Global);
    await closeTabs();
  });

  it('is there when it is wanted', async () => {
    const { document } = await newTab(`[Verse]\n${song}`);
    const lenses = async (): Promise<vscode.CodeLens[]> =>
      vscode.commands.executeCommand('vscode.executeCodeLensProvider', document.uri, 10);
    await vscode.commands.executeCommand('pegbox.writeChords', { replace: false });
    assert.deepEqual(await lenses(), []);
    await settings().update('sectionLens', true, vscode.ConfigurationTarget.Global);
    const [lens] = await waitFor(lenses, 'line above the section');
    assert.strictEqual(lens?.range.start.line, 0);
    assert.match(lens?.command?.title ?? '', /^2 bars · standard · D major · A2–F#4 · widest stretch \d+ mm/);
  });
});
