import { assert } from 'chai';
import * as vscode from 'vscode';
import { CHECKS } from '../../../src/checks/checks';
import { headingLine } from '../../../src/extension/helpHeading';
import { HELP_SCHEME, helpAddress } from '../../../src/extension/helpPages';
import { badCapo, closeTabs, newTab } from './newTab';
import { waitFor } from './waitFor';

/** Follows a link as the editor does: what is no web address is opened inside it. */
async function follow(link: vscode.Uri): Promise<void> {
  assert.strictEqual(link.scheme, HELP_SCHEME);
  await vscode.commands.executeCommand('vscode.open', link);
}

/** Whether the active tab is the help page, shown as a page and not as text, at the heading of a code. */
function helpShown(code: string): boolean {
  const input = vscode.window.tabGroups.activeTabGroup.activeTab?.input;
  return (
    input instanceof vscode.TabInputCustom &&
    input.viewType === 'vscode.markdown.preview.editor' &&
    input.uri.toString() === helpAddress(code).toString()
  );
}

async function helpText(): Promise<string> {
  return (await vscode.workspace.openTextDocument(helpAddress(undefined))).getText();
}

describe('help in the editor', () => {
  afterEach(closeTabs);

  it('opens where the link of a diagnostic leads: a heading of the page', async () => {
    const { document } = await newTab(badCapo);
    const [mistake] = await waitFor(() => vscode.languages.getDiagnostics(document.uri), 'diagnostics');
    const code = mistake?.code;
    assert.ok(typeof code === 'object');
    await follow(code.target);
    await waitFor(() => helpShown(String(code.value)), 'help page');
    const text = await helpText();
    const line = text.split('\n')[headingLine(text, String(code.value))];
    assert.match(line ?? '', new RegExp(`^#+ ${code.value}$`));
  });

  it('opens for every code there is, each with a paragraph of its own', async () => {
    const text = await helpText();
    const lines = text.split('\n');
    for (const { code } of CHECKS) {
      await vscode.commands.executeCommand('pegbox.openHelp', code);
      await waitFor(() => helpShown(code), `help page for ${code}`);
      const at = headingLine(text, code);
      assert.strictEqual(lines[at], `### ${code}`);
      assert.match(lines.slice(at + 1).find((line) => line !== '') ?? '', /\w/, code);
    }
  });

  it('opens for the diagnostic under the cursor', async () => {
    const editor = await newTab(badCapo);
    const [mistake] = await waitFor(
      () => vscode.languages.getDiagnostics(editor.document.uri),
      'diagnostics',
    );
    assert.isDefined(mistake);
    editor.selection = new vscode.Selection(mistake.range.start, mistake.range.start);
    await vscode.commands.executeCommand('pegbox.openHelp');
    const code = typeof mistake.code === 'object' ? mistake.code.value : mistake.code;
    await waitFor(() => helpShown(String(code)), 'help page');
  });

  it('can be read, not written', async () => {
    const page = helpAddress(undefined);
    assert.isFalse(vscode.workspace.fs.isWritableFileSystem(page.scheme));
    const { size } = await vscode.workspace.fs.stat(page);
    assert.isAbove(size, 1000);
  });

  it('opens at the top without a diagnostic', async () => {
    await vscode.commands.executeCommand('pegbox.openHelp');
    await waitFor(() => helpShown(''), 'help page');
  });
});
