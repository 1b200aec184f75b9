import { assert } from 'chai';
import * as vscode from 'vscode';
import { closeTabs, lantern, newTab } from './newTab';
import { waitFor } from './waitFor';

interface Outcome {
  readonly report?: { readonly notesIn: number; readonly kept: number };
  readonly preview?: string;
  readonly error?: string;
}

async function run(command: string, given: object): Promise<Outcome> {
  const outcome = await vscode.commands.executeCommand<Outcome | undefined>(command, given);
  assert.isDefined(outcome, 'the command was called off');
  return outcome;
}

async function undoOnce(document: vscode.TextDocument, text: string): Promise<void> {
  await vscode.commands.executeCommand('undo');
  await waitFor(() => document.getText() === text, 'undo');
}

/** A cursor without selection. */
function goTo(editor: vscode.TextEditor, line: number, character: number): void {
  const place = new vscode.Position(line, character);
  editor.selection = new vscode.Selection(place, place);
}

describe('writing by names in the editor', () => {
  afterEach(closeTabs);

  it('writes notes into the bar at the cursor, which goes where one writes on; one undo takes them back', async () => {
    const editor = await newTab(lantern);
    const { document } = editor;
    // The column of the second beat and a half, on the line of string 2.
    goTo(editor, 6, 10);
    const { report, error } = await run('pegbox.writeNotes', { text: 'A3', value: 'eighth' });
    assert.isDefined(report, error);
    assert.strictEqual(report.kept, 1);
    assert.match(document.getText(), /^A3 \|------0---------\|$/m);
    await waitFor(() => editor.selection.active.line === 6, 'the cursor');
    assert.strictEqual(editor.selection.active.character, 12);
    await undoOnce(document, lantern);
  });

  it('never writes over notes, and says so', async () => {
    const editor = await newTab(lantern);
    goTo(editor, 5, 4);
    const { error } = await run('pegbox.writeNotes', { text: 'A3' });
    assert.match(error ?? '', /^Bar 1 has notes/);
    assert.strictEqual(editor.document.getText(), lantern);
  });

  it('puts new bars in where that is asked for', async () => {
    const editor = await newTab(lantern);
    goTo(editor, 5, 4);
    const { report, error } = await run('pegbox.writeNotes', { text: '1 2 3', inTheWay: 'new bars' });
    assert.isDefined(report, error);
    assert.lengthOf(editor.document.getText().match(/^D4 \|/gm) ?? [], 2);
    await undoOnce(editor.document, lantern);
  });

  it('lays down an exercise with its fingers behind the system, taken back by one undo', async () => {
    const editor = await newTab(lantern);
    goTo(editor, 6, 8);
    const { report, error } = await run('pegbox.insertExercise', {
      scale: 'D dorian',
      inPosition: 5,
      direction: 'up',
    });
    assert.isDefined(report, error);
    assert.isTrue(editor.document.getText().startsWith(lantern));
    assert.match(editor.document.getText(), /\n\nD dorian, position 5, up\nfingers \|/);
    await undoOnce(editor.document, lantern);
  });

  it('shows it first where a caller asks for that', async () => {
    const editor = await newTab(lantern);
    goTo(editor, 6, 8);
    const { preview, error } = await run('pegbox.insertExercise', { chord: 'Am7', preview: true });
    assert.isDefined(preview, error);
    assert.strictEqual(editor.document.getText(), lantern);
    const shown = await vscode.workspace.openTextDocument(vscode.Uri.parse(preview, true));
    assert.match(shown.getText(), /^Am7 arpeggio, /m);
  });
});
