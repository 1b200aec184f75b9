import { assert } from 'chai';
import * as vscode from 'vscode';
import type { PasteTabAnswer, PlainTextAnswer } from '../../../src/server/requests';
import type { ServiceError } from '../../../src/service/serviceApi';
import { closeTabs, newTab } from './newTab';
import { undoneOnce } from './shownDiff';
import { waitFor } from './waitFor';

// Our own texts.

const SONG = 'tuning: DADGAD\n\nD4 |0---|\nA3 |----|\nG3 |----|\nD3 |----|\nA2 |----|\nD2 |0---|\n\n';
const BARE = '--0--\n-----\n-----\n-----\n-----\n--3--\n';
const MAIL = `Hello,\n\ndrop D, capo 2:\n\n${['e', 'B', 'G', 'D', 'A', 'D'].map((label) => `${label}|-5s7-|`).join('\n')}\n\nBye!`;
const MAIL_BODY = MAIL.replaceAll('5s7', '5/7');
const FIELDS = 'tuning: drop D\ncapo:   2\n\n';

const command = (text: string): Thenable<PasteTabAnswer | ServiceError> =>
  vscode.commands.executeCommand('pegbox.pasteAsTab', { text });

/** An editor with the cursor behind its text. */
async function atEnd(content: string): Promise<vscode.TextEditor> {
  const editor = await newTab(content);
  const end = editor.document.lineAt(editor.document.lineCount - 1).range.end;
  editor.selection = new vscode.Selection(end, end);
  return editor;
}

describe('pasting as tab', () => {
  afterEach(closeTabs);

  it('puts a mail into an empty tab with its fields on top, and one undo takes it back', async () => {
    const { document } = await atEnd('');
    const answer = await command(MAIL);
    assert.ok(!('error' in answer));
    assert.deepEqual(
      answer.guesses.map(({ kind }) => kind),
      ['tuning', 'capo', 'slides'],
    );
    assert.strictEqual(document.getText().trimEnd(), FIELDS + MAIL_BODY);
    await undoneOnce(document, '');
  });

  it('reads the clipboard when nothing is given', async () => {
    const { document } = await atEnd('');
    await vscode.env.clipboard.writeText(MAIL);
    await vscode.commands.executeCommand('pegbox.pasteAsTab');
    assert.strictEqual(document.getText().trimEnd(), FIELDS + MAIL_BODY);
  });

  it('under a title sets the fields below it, and still is one undo', async () => {
    const text = 'title: Reed Pipes\n\n';
    const { document } = await atEnd(text);
    await command(MAIL);
    assert.strictEqual(document.getText().trimEnd(), `${text}${FIELDS}${MAIL_BODY}`);
    await undoneOnce(document, text);
  });

  it('without labels is in the tuning in force, in place of what is selected', async () => {
    const text = `${SONG}here\n`;
    const editor = await newTab(text);
    editor.selection = new vscode.Selection(9, 0, 9, 4);
    await command(BARE);
    const pasted = 'D|--0--|\nA|-----|\nG|-----|\nD|-----|\nA|-----|\nD|--3--|\n';
    assert.strictEqual(editor.document.getText(), SONG + pasted);
    await undoneOnce(editor.document, text);
  });

  it('of what is no tab, or far too long, changes nothing and says why', async () => {
    const { document } = await atEnd(SONG);
    for (const [text, expected] of [
      ['Words, and no tab.', /^The clipboard holds no tab/],
      [' \n', /^The clipboard holds no text/],
      ['-'.repeat(2_000_001), /more than 2 million characters/],
    ] as const) {
      const answer = await command(text);
      assert.ok('error' in answer);
      assert.match(answer.error, expected);
    }
    assert.strictEqual(document.getText(), SONG);
  });
});

// The choice beside it takes a real paste of the browser, which no command can make.
describe('pasting with the key', () => {
  afterEach(closeTabs);
  const paste = (): Thenable<unknown> => vscode.commands.executeCommand('editor.action.clipboardPasteAction');

  it('stays what it is, character by character', async () => {
    const { document } = await atEnd('');
    await vscode.env.clipboard.writeText(MAIL);
    await waitFor(async () => {
      await vscode.commands.executeCommand('editor.action.selectAll');
      await paste();
      return document.getText() === MAIL;
    }, 'plain paste');
    await vscode.commands.executeCommand('undo');
  });
});

describe('copying as plain text', () => {
  afterEach(closeTabs);
  const copy = (): Thenable<PlainTextAnswer | ServiceError> =>
    vscode.commands.executeCommand('pegbox.copyAsPlainText');

  it('states the tuning on top, and pastes back as the same tab', async () => {
    await newTab(SONG);
    const answer = await copy();
    assert.ok(!('error' in answer));
    const clipboard = await vscode.env.clipboard.readText();
    assert.strictEqual(clipboard.replaceAll('\r\n', '\n'), answer.text);
    assert.match(answer.text, /^Tuning, low to high: D A D G A D \(DADGAD\)\n/);
    const { document } = await atEnd('');
    const back = await command(clipboard);
    assert.ok(!('error' in back));
    assert.deepEqual([back.systems, back.notes], [1, 2]);
    assert.match(document.getText(), /^tuning: DADGAD\n/);
    assert.match(document.getText(), /\n[Dd]\|0---\|\n(?:[AGD]\|----\|\n){4}D\|0---\|/);
  });

  it('of a place without tab says so, and leaves the clipboard alone', async () => {
    await vscode.env.clipboard.writeText('mine');
    const editor = await newTab(`Words.\n\n${SONG}`);
    editor.selection = new vscode.Selection(0, 0, 0, 3);
    const answer = await copy();
    assert.ok('error' in answer);
    assert.match(answer.error, /no tab here to copy/);
    assert.strictEqual(await vscode.env.clipboard.readText(), 'mine');
  });
});
