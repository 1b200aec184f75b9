import { assert } from 'chai';
import * as vscode from 'vscode';
import { cursorTo } from './cursorTo';
import { closeTabs, lantern, newTab } from './newTab';
import { waitFor } from './waitFor';

/** Lines of the piece: string 1, and string 4. */
const [FIRST, FOURTH] = [5, 8];

/** Runs a command that changes the text, takes it back with one undo and does it again, and gives the lines. */
async function changed(editor: vscode.TextEditor, command: string, given?: object): Promise<string[]> {
  const text = (): string => editor.document.getText();
  await vscode.commands.executeCommand(`pegbox.${command}`, ...(given ? [given] : []));
  await waitFor(() => text() !== lantern, command);
  const after = text();
  await vscode.commands.executeCommand('undo');
  await waitFor(() => text() === lantern, 'undo');
  await vscode.commands.executeCommand('redo');
  await waitFor(() => text() === after, 'redo');
  return after.split('\n');
}

/** Where the cursor goes from a place, as line and character. */
async function goes(editor: vscode.TextEditor, move: string, line: number, character: number): Promise<void> {
  await vscode.commands.executeCommand(`pegbox.move.${move}`);
  const { active } = editor.selection;
  assert.deepEqual([active.line, active.character], [line, character], move);
  await waitFor(() => editor.selection.active.isEqual(new vscode.Position(line, character)), move);
}

describe('the staff in the editor', () => {
  afterEach(closeTabs);

  it('is gone over note by note, string by string and beat by beat', async () => {
    const editor = await newTab(lantern);
    await cursorTo(editor, FIRST, 4);
    await goes(editor, 'nextCell', FIRST, 12);
    await goes(editor, 'previousCell', FIRST, 4);
    await goes(editor, 'nextString', FIRST + 1, 4);
    await goes(editor, 'previousString', FIRST, 4);
    await goes(editor, 'nextBeat', FIRST, 8);
    await goes(editor, 'previousBeat', FIRST, 4);
  });

  it('gives a note to the string below at its pitch, in one undo', async () => {
    const editor = await newTab(lantern);
    await cursorTo(editor, FIRST, 4);
    const lines = await changed(editor, 'noteToStringBelow');
    assert.strictEqual(lines[FIRST], 'D4 |--------0-------|');
    assert.strictEqual(lines[FIRST + 1], 'A3 |5---------------|');
  });

  it('takes a note up an octave on its string, in one undo', async () => {
    const editor = await newTab(lantern);
    await cursorTo(editor, FOURTH, 8);
    const lines = await changed(editor, 'noteOctaveUp');
    assert.match(lines[FOURTH] ?? '', /^D3 \|-+16-+4-+\|$/);
    assert.include(lines[FIRST] ?? '', '0');
  });

  it('takes a whole shape in its column, in one undo', async () => {
    const editor = await newTab(lantern);
    await cursorTo(editor, FIRST, 8);
    const lines = await changed(editor, 'typeShape', { shape: '000220' });
    assert.deepEqual(
      lines.slice(FIRST, FIRST + 6).map((line) => line[8]),
      ['0', '2', '2', '0', '0', '0'],
    );
  });

  it('is typed over or not by one switch', async () => {
    const isOn = (): unknown => vscode.workspace.getConfiguration('pegbox').get('typeOverStaff');
    await newTab(lantern);
    const before = isOn();
    await vscode.commands.executeCommand('pegbox.switchTypeOverStaff');
    await waitFor(() => isOn() !== before, 'switch');
    await vscode.commands.executeCommand('pegbox.switchTypeOverStaff');
    await waitFor(() => isOn() === before, 'switch back');
  });
});
