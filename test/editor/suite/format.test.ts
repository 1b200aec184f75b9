import { assert } from 'chai';
import * as vscode from 'vscode';
import { closeTabs, newTab } from './newTab';
import { waitFor } from './waitFor';
import { fileNamed } from './workspace';

const RAGGED = 'instrument: ukulele\n\nA |0–––|\nEb|----\nC|----|\nG|----|\n';
const PLAIN_SIGNS = RAGGED.replace('–––', '---');
const IN_ORDER = 'instrument: ukulele\n\nA |0---|\nEb|----|\nC |----|\nG |----|\n';

/** Settings of the language for one test. */
async function set(name: string, value: unknown): Promise<void> {
  await vscode.workspace
    .getConfiguration('editor', { languageId: 'pegbox' })
    .update(name, value, vscode.ConfigurationTarget.Global, true);
}

/** A file of the folder with this text, open, and changed so that saving it does something. */
async function openFileWith(name: string, text: string): Promise<vscode.TextDocument> {
  const file = fileNamed(name);
  await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(text));
  const { document } = await vscode.window.showTextDocument(file);
  const edit = new vscode.WorkspaceEdit();
  edit.insert(file, new vscode.Position(0, 0), '# a change\n');
  assert.isTrue(await vscode.workspace.applyEdit(edit));
  return document;
}

/** Waits for the server, which answers nothing while it is starting. */
async function canFormat(document: vscode.TextDocument): Promise<void> {
  await waitFor(
    () =>
      vscode.commands.executeCommand<vscode.TextEdit[]>(
        'vscode.executeFormatDocumentProvider',
        document.uri,
        {
          tabSize: 4,
          insertSpaces: true,
        },
      ),
    'edits that format',
  );
}

describe('format and mends on saving', () => {
  afterEach(async () => {
    await set('formatOnSave', undefined);
    await set('codeActionsOnSave', undefined);
    await closeTabs();
  });

  it('sets a document in order by the editor’s own command; the cursor stays, one undo brings it back', async () => {
    const { document } = await newTab(RAGGED);
    const editor = vscode.window.activeTextEditor;
    assert.isDefined(editor);
    const cursor = new vscode.Position(4, 3);
    editor.selection = new vscode.Selection(cursor, cursor);
    await canFormat(document);
    await vscode.commands.executeCommand('editor.action.formatDocument');
    await waitFor(() => document.getText() === IN_ORDER, 'the document in order');
    // In front of the second dash as before: the label took one column more.
    assert.deepEqual(editor.selection.active, new vscode.Position(4, 4));
    await vscode.commands.executeCommand('undo');
    await waitFor(() => document.getText() === RAGGED, 'undo');
  });

  it('sets in order what is selected, and no other system', async () => {
    const { document } = await newTab(`${RAGGED}\n${RAGGED}`);
    const editor = vscode.window.activeTextEditor;
    assert.isDefined(editor);
    editor.selection = new vscode.Selection(3, 1, 4, 1);
    await canFormat(document);
    await vscode.commands.executeCommand('editor.action.formatSelection');
    await waitFor(() => document.getText() === `${IN_ORDER}\n${RAGGED}`, 'the first system in order');
  });

  it('is done on saving where the user has set so, and else not', async () => {
    const document = await openFileWith('ragged.pegbox', RAGGED);
    await canFormat(document);
    await document.save();
    assert.strictEqual(document.getText(), `# a change\n${RAGGED}`);
    await set('formatOnSave', true);
    const again = await openFileWith('ragged-two.pegbox', RAGGED);
    await canFormat(again);
    await again.save();
    assert.strictEqual(again.getText(), `# a change\n${IN_ORDER}`);
  });

  it('does the harmless mends on saving where the user has set so', async () => {
    await set('codeActionsOnSave', { 'source.fixAll.pegbox': 'explicit' });
    const document = await openFileWith('look-alikes.pegbox', RAGGED);
    await waitFor(
      () =>
        vscode.commands.executeCommand<vscode.CodeAction[]>(
          'vscode.executeCodeActionProvider',
          document.uri,
          new vscode.Range(0, 0, document.lineCount, 0),
          'source.fixAll.pegbox',
        ),
      'action for all harmless mends',
    );
    await document.save();
    assert.strictEqual(document.getText(), `# a change\n${PLAIN_SIGNS}`);
  });
});
