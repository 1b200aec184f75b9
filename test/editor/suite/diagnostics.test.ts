import { assert } from 'chai';
import * as vscode from 'vscode';
import { badCapo, closeTabs, lantern, misspelled, newTab } from './newTab';
import { waitFor } from './waitFor';

/** The diagnostics of a document, once there are some. */
function found(document: vscode.TextDocument): Promise<vscode.Diagnostic[]> {
  return waitFor(() => vscode.languages.getDiagnostics(document.uri), 'diagnostics');
}

async function noneLeft(document: vscode.TextDocument): Promise<void> {
  await waitFor(() => vscode.languages.getDiagnostics(document.uri).length === 0, 'end of the diagnostics');
}

function codeOf({ code }: vscode.Diagnostic): string {
  return String(typeof code === 'object' ? code.value : code);
}

describe('diagnostics in the editor', () => {
  afterEach(async () => {
    await vscode.workspace
      .getConfiguration('pegbox')
      .update('severities', undefined, vscode.ConfigurationTarget.Global);
    await closeTabs();
  });

  it('show a mistake where it is, and go when it is typed away', async () => {
    const { document } = await newTab(badCapo);
    const [mistake, ...others] = await found(document);
    assert.isDefined(mistake);
    assert.isEmpty(others);
    assert.strictEqual(mistake.source, 'pegbox');
    assert.strictEqual(mistake.range.start.line, 2);
    const edit = new vscode.WorkspaceEdit();
    edit.replace(document.uri, document.lineAt(2).range, 'capo:   2');
    await vscode.workspace.applyEdit(edit);
    await noneLeft(document);
  });

  it('come with a mend that ends them, and one undo brings the text back', async () => {
    const { document } = await newTab(misspelled);
    const [mistake] = await found(document);
    assert.isDefined(mistake);
    const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      document.uri,
      mistake.range,
      vscode.CodeActionKind.QuickFix.value,
    );
    const [mend] = actions.filter(({ edit }) => edit !== undefined);
    assert.isDefined(mend?.edit);
    assert.isTrue(await vscode.workspace.applyEdit(mend.edit));
    assert.notStrictEqual(document.getText(), misspelled);
    await noneLeft(document);
    await vscode.commands.executeCommand('undo');
    await waitFor(() => document.getText() === misspelled, 'undo');
  });

  it('follow the settings at once', async () => {
    const { document } = await newTab(badCapo);
    const [mistake] = await found(document);
    assert.isDefined(mistake);
    assert.strictEqual(mistake.severity, vscode.DiagnosticSeverity.Error);
    const settings = vscode.workspace.getConfiguration('pegbox');
    const set = (severity: string): Thenable<void> =>
      settings.update('severities', { [codeOf(mistake)]: severity }, vscode.ConfigurationTarget.Global);
    await set('hint');
    await waitFor(
      () => vscode.languages.getDiagnostics(document.uri)[0]?.severity === vscode.DiagnosticSeverity.Hint,
      'hint',
    );
    await set('off');
    await noneLeft(document);
  });

  it('are not raised by a piece without a mistake', async () => {
    const { document } = await newTab(badCapo);
    await found(document);
    const edit = new vscode.WorkspaceEdit();
    edit.replace(document.uri, new vscode.Range(0, 0, document.lineCount, 0), lantern);
    await vscode.workspace.applyEdit(edit);
    await noneLeft(document);
  });
});
