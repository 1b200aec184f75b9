import { assert } from 'chai';
import * as vscode from 'vscode';
import { reportAddress } from '../../../src/extension/reportPages';
import { closeTabs, lantern, newTab } from './newTab';
import { waitFor } from './waitFor';

interface Outcome {
  readonly report?: {
    readonly notesIn: number;
    readonly kept: number;
    readonly moved: number;
    readonly unplaced: readonly unknown[];
  };
  readonly error?: string;
}

/** Runs a command with all that it needs to know. */
async function run(command: string, given: object): Promise<Outcome> {
  const outcome = await vscode.commands.executeCommand<Outcome | undefined>(command, given);
  assert.isDefined(outcome, 'the command was called off');
  return outcome;
}

async function undoOnce(document: vscode.TextDocument, text: string): Promise<void> {
  await vscode.commands.executeCommand('undo');
  await waitFor(() => document.getText() === text, 'undo');
}

describe('commands in the editor', () => {
  afterEach(closeTabs);

  it('convert a passage to another tuning, every note accounted for, taken back by one undo', async () => {
    const { document } = await newTab(lantern);
    const { report } = await run('pegbox.convert', { tuning: 'standard', keep: 'sound' });
    assert.isDefined(report);
    assert.strictEqual(report.notesIn, 6);
    assert.strictEqual(report.kept + report.moved + report.unplaced.length, report.notesIn);
    assert.match(document.getText(), /tuning:\s+standard/i);
    await undoOnce(document, lantern);
  });

  it('report every note that found no place, with its bar and the reason', async () => {
    const { document } = await newTab(lantern);
    // Both D2 lie below E2, the lowest string of standard tuning.
    const { report } = await run('pegbox.convert', { tuning: 'standard', keep: 'sound' });
    assert.strictEqual(report?.unplaced.length, 2);
    const page = await vscode.workspace.openTextDocument(reportAddress(document.uri));
    const lines = page.getText().split('\n');
    assert.include(lines, '6 notes: 4 kept, 0 moved, 2 unplaced');
    assert.lengthOf(
      lines.filter((line) => line.startsWith('- bar 1: D2, ')),
      2,
    );
  });

  it('convert a range of another document than the active one', async () => {
    const { document } = await newTab(lantern);
    await newTab('title: Other Lane\n');
    const range = new vscode.Range(5, 0, 10, 0);
    const { report, error } = await run('pegbox.convert', {
      uri: document.uri.toString(),
      range,
      tuning: 'standard',
      keep: 'shapes',
    });
    assert.isDefined(report, error);
    assert.match(document.getText(), /tuning:\s+standard/i);
  });

  it('transpose, taken back by one undo', async () => {
    const { document } = await newTab(lantern);
    const { report } = await run('pegbox.transpose', { by: 2 });
    assert.strictEqual(report?.notesIn, 6);
    assert.match(document.getText(), /^key:\s+E\b/m);
    await undoOnce(document, lantern);
  });

  it('move the capo, taken back by one undo', async () => {
    const { document } = await newTab(lantern);
    const { report } = await run('pegbox.moveCapo', { capo: '2', keep: 'shapes' });
    assert.strictEqual(report?.notesIn, 6);
    assert.match(document.getText(), /^capo:\s+2$/m);
    await undoOnce(document, lantern);
  });

  it('say in one sentence what they cannot read, and leave the text alone', async () => {
    const { document } = await newTab(lantern);
    const { error } = await run('pegbox.convert', { tuning: 'bananas', keep: 'sound' });
    assert.match(error ?? '', /^[A-Z“].*\.$/s);
    assert.strictEqual(document.getText(), lantern);
  });

  it('change nothing when the text changed meanwhile', async () => {
    const { document } = await newTab(lantern);
    const answer = run('pegbox.convert', { tuning: 'standard', keep: 'sound' });
    // Typed after the command has asked the server, before its answer is there or while it is applied.
    let typed = '';
    const listening = vscode.workspace.onDidChangeTextDocument((event) => {
      if (event.document === document && typed === '') typed = document.getText();
    });
    const edit = new vscode.WorkspaceEdit();
    edit.insert(document.uri, new vscode.Position(0, 8), 'Old ');
    await vscode.workspace.applyEdit(edit);
    const outcome = await answer;
    listening.dispose();
    // Whichever came first, the two changes are never mixed.
    if (outcome.error !== undefined)
      assert.strictEqual(document.getText(), lantern.replace('Lantern', 'Old Lantern'));
    else assert.match(document.getText(), /^title: {2}Old Lantern Lane\ntuning:\s+standard/i);
  });

  it('offer themselves on a system', async () => {
    const { document } = await newTab(lantern);
    const actions = await waitFor(
      () =>
        vscode.commands.executeCommand<vscode.CodeAction[]>(
          'vscode.executeCodeActionProvider',
          document.uri,
          new vscode.Range(8, 0, 8, 8),
          vscode.CodeActionKind.Refactor.value,
        ),
      'refactorings',
    );
    assert.sameMembers(
      actions.flatMap(({ command }) => command?.command ?? []),
      ['convert', 'convertIntoNewPart', 'refinger', 'simplify', 'suit', 'transpose', 'moveCapo'].map(
        (name) => `pegbox.${name}`,
      ),
    );
  });

  it('are all there', async () => {
    const known = await vscode.commands.getCommands(true);
    const { contributes } = vscode.extensions.getExtension('pegbox.pegbox')?.packageJSON as {
      contributes: { commands: { command: string }[] };
    };
    for (const { command } of contributes.commands) assert.include(known, command);
  });
});
