import { assert } from 'chai';
import * as vscode from 'vscode';
import { CHECKS } from '../../../src/checks/checks';
import { headingLine } from '../../../src/extension/helpHeading';
import { badCapo, closeTabs, newTab } from './newTab';
import { waitFor } from './waitFor';

/** Follows a link as the editor does: a `command:` address holds a command's name and its arguments. */
async function follow(link: vscode.Uri): Promise<void> {
  assert.strictEqual(link.scheme, 'command');
  await vscode.commands.executeCommand(link.path, ...JSON.parse(decodeURIComponent(link.query)));
}

function helpTab(): vscode.Tab | undefined {
  const tab = vscode.window.tabGroups.activeTabGroup.activeTab;
  const preview = tab?.input instanceof vscode.TabInputWebview && /markdown/.test(tab.input.viewType);
  return preview && /help\.md/.test(tab.label) ? tab : undefined;
}

async function helpText(): Promise<string> {
  const extension = vscode.extensions.getExtension('pegbox.pegbox');
  assert.isDefined(extension);
  const page = vscode.Uri.joinPath(extension.extensionUri, 'media', 'help.md');
  return (await vscode.workspace.openTextDocument(page)).getText();
}

describe('help in the editor', () => {
  afterEach(closeTabs);

  it('opens where the link of a diagnostic leads: a heading of the page', async () => {
    const { document } = await newTab(badCapo);
    const [mistake] = await waitFor(() => vscode.languages.getDiagnostics(document.uri), 'diagnostics');
    const code = mistake?.code;
    assert.ok(typeof code === 'object');
    await follow(code.target);
    await waitFor(helpTab, 'help page');
    const text = await helpText();
    const line = text.split('\n')[headingLine(text, String(code.value))];
    assert.match(line ?? '', new RegExp(`^#+ ${code.value}$`));
  });

  it('opens for every code there is, each with a paragraph of its own', async () => {
    const text = await helpText();
    const lines = text.split('\n');
    for (const { code } of CHECKS) {
      await closeTabs();
      await vscode.commands.executeCommand('pegbox.openHelp', code);
      await waitFor(helpTab, `help page for ${code}`);
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
    await waitFor(helpTab, 'help page');
  });

  it('opens at the top without a diagnostic', async () => {
    await vscode.commands.executeCommand('pegbox.openHelp');
    await waitFor(helpTab, 'help page');
  });
});
