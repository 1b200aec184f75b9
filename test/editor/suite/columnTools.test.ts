import { assert } from 'chai';
import * as vscode from 'vscode';
import { cursorTo } from './cursorTo';
import { closeTabs, lantern, newTab } from './newTab';
import { waitFor } from './waitFor';

interface Outcome {
  readonly error?: string;
}

/** Lines of the piece; string 1 is line 5. */
const TOP = 5;

/** Runs a command with the cursor on the line of string 1, and gives that line after it. */
async function run(editor: vscode.TextEditor, command: string, given: object = {}): Promise<string> {
  const outcome = await vscode.commands.executeCommand<Outcome | undefined>(`pegbox.${command}`, given);
  return outcome?.error ?? editor.document.lineAt(TOP).text;
}

const goTo = (editor: vscode.TextEditor, character: number, line = TOP): Promise<void> =>
  cursorTo(editor, line, character);

/** What each command that needs no more than a cursor makes of the line of string 1, and where the cursor is then. */
const CASES: readonly (readonly [command: string, cursor: number, line: string, goesOn: number])[] = [
  // A bar with a column more is counted, so that every note keeps its time.
  ['insertColumn', 7, 'D4    |0--------0-------|', 10],
  ['insertBeat', 4, 'D4 |----0-------0---|----------------|', 4],
  ['shiftLater', 4, 'D4 |-0------0-------|', 5],
  ['shiftSooner', 12, 'D4 |0------0--------|', 11],
  ['shiftBeatLater', 4, 'D4 |----0---0-------|', 8],
  ['insertBar', 4, 'D4 |----------------|0-------0-------|', 4],
  ['duplicateBars', 4, 'D4 |0-------0-------|0-------0-------|', 21],
];

describe('column tools in the editor', () => {
  afterEach(closeTabs);

  for (const [command, cursor, line, goesOn] of CASES)
    it(`${command}: one undo, one redo, and the cursor where one writes on`, async () => {
      const editor = await newTab(lantern);
      await goTo(editor, cursor);
      await run(editor, command);
      assert.include(editor.document.getText().split('\n'), line);
      const after = editor.document.getText();
      await waitFor(
        () => editor.selection.start.character === goesOn,
        `cursor, not ${editor.selection.start.character}`,
      );
      await vscode.commands.executeCommand('undo');
      await waitFor(() => editor.document.getText() === lantern, 'undo');
      await vscode.commands.executeCommand('redo');
      await waitFor(() => editor.document.getText() === after, 'redo');
    });

  it('copy a bar, paste it between and over, take it out again, split and join', async () => {
    const editor = await newTab(lantern);
    await goTo(editor, 4);
    await run(editor, 'copyBars');
    const text = await vscode.env.clipboard.readText();
    assert.match(text, /^D4 \|0-------0-------\|\n/);
    const twice = 'D4 |0-------0-------|0-------0-------|';
    assert.strictEqual(await run(editor, 'pasteBarsBetween', { text }), twice);
    assert.strictEqual(await run(editor, 'pasteBarsOver', { text }), twice);
    await goTo(editor, 23);
    assert.strictEqual(await run(editor, 'splitSystem'), 'D4 |0-------0-------|');
    await waitFor(() => editor.selection.active.line === TOP + 7, 'cursor in the second system');
    await goTo(editor, 4);
    assert.strictEqual(await run(editor, 'joinSystems'), twice);
    assert.strictEqual(await run(editor, 'fitToWidth', { width: 24 }), 'D4 |0-------0-------|');
    assert.strictEqual(await run(editor, 'joinSystems'), twice);
    assert.strictEqual(await run(editor, 'removeBars', { withNotes: true }), 'D4 |0-------0-------|');
    assert.strictEqual(editor.document.getText(), lantern);
  });

  it('shift a block of some strings and columns, and keep it selected', async () => {
    const editor = await newTab(lantern);
    editor.selections = [TOP, TOP + 5].map(
      (line) => new vscode.Selection(new vscode.Position(line, 4), new vscode.Position(line, 6)),
    );
    assert.strictEqual(await run(editor, 'shiftLater'), 'D4 |-0------0-------|');
    await waitFor(
      () => editor.selections.length === 2 && editor.selection.start.character === 5,
      'selections',
    );
    assert.strictEqual(await run(editor, 'shiftSooner'), 'D4 |0-------0-------|');
    assert.strictEqual(editor.document.getText(), lantern);
  });

  it('refuse in one sentence, and change nothing', async () => {
    const editor = await newTab(lantern);
    await goTo(editor, 12);
    assert.match(await run(editor, 'shiftBeatLater', { overBar: 'refuse' }), /^D4 \|0-----------0---\|$/);
    await vscode.commands.executeCommand('undo');
    await waitFor(() => editor.document.getText() === lantern, 'undo');
    await goTo(editor, 2, 0);
    assert.match(await run(editor, 'insertBeat'), /^There are no bars here/);
    await goTo(editor, 4);
    assert.match(await run(editor, 'removeColumn'), /^Something stands in this column/);
    assert.match(await run(editor, 'splitSystem'), /^The system begins with this bar already/);
    assert.match(await run(editor, 'joinSystems'), /^No system follows/);
    assert.match(await run(editor, 'pasteBarsOver', { text: 'Dear Fenna,' }), /^The clipboard holds no bars/);
    assert.match(await run(editor, 'fitToWidth', { width: 3 }), /^A width of 20 columns or more/);
    assert.match(await run(editor, 'removeBars', { withNotes: false }), /^Bar 1 has 6 notes/);
    assert.strictEqual(editor.document.getText(), lantern);
  });
});
