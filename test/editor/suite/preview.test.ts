import { assert } from 'chai';
import * as vscode from 'vscode';
import { askText } from '../../../src/extension/askText';
import { Previews } from '../../../src/extension/preview/previews';
import { Taking } from '../../../src/extension/preview/taking';
import { PREVIEW_SCHEME } from '../../../src/extension/preview/previewAddress';
import { ReportPages } from '../../../src/extension/reportPages';
import type { Report } from '../../../src/service/serviceApi';
import { closeTabs, lantern, newTab } from './newTab';
import { backInTab, diffs, run, shownDiff, undoneOnce, type Outcome, type Shown } from './shownDiff';
import { waitFor } from './waitFor';
import { fileNamed } from './workspace';

/** Two sections; in standard tuning every note of both has a place. */
const twoSections = `${lantern.replace(/^D2 .*$/m, 'D2 |----------------|')}
[Refrain]
D4 |2-------4-------|
A3 |----------------|
G3 |----------------|
D3 |----0-------0---|
A2 |----------------|
D2 |----------------|
`;
const toStandard = { tuning: 'standard', keep: 'sound' };

/** Previews a conversion of the active tab. */
async function preview(given: object = {}): Promise<Shown> {
  const outcome = await run('pegbox.convert', { ...toStandard, preview: true, ...given });
  assert.isDefined(outcome?.preview, outcome?.error ?? 'no preview');
  return shownDiff();
}

/** What the conversion makes of a text when it is applied at once. */
async function converted(text: string, given: object = {}): Promise<string> {
  const { document } = await newTab(text);
  const outcome = await run('pegbox.convert', { ...toStandard, ...given });
  assert.isDefined(outcome?.report, outcome?.error);
  const made = document.getText();
  await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  return made;
}

async function edit(document: vscode.TextDocument, range: vscode.Range, text: string): Promise<void> {
  const change = new vscode.WorkspaceEdit();
  change.replace(document.uri, range, text);
  assert.isTrue(await vscode.workspace.applyEdit(change));
}

/** The lines of a section, from its heading on. */
function section(text: string, name: string): string {
  return text.split(/^(?=\[)/m).find((piece) => piece.startsWith(`[${name}]`)) ?? '';
}

describe('a preview in the editor', () => {
  afterEach(closeTabs);

  it('is a diff of two texts that can only be read; the tab stays as it is', async () => {
    const expected = await converted(lantern);
    const { document } = await newTab(lantern);
    const { before, after } = await preview();
    for (const { uri, languageId } of [before, after]) {
      assert.strictEqual(uri.scheme, PREVIEW_SCHEME);
      assert.strictEqual(languageId, 'pegbox');
      assert.isNotTrue(vscode.workspace.fs.isWritableFileSystem(uri.scheme));
    }
    assert.strictEqual(before.getText(), lantern);
    assert.strictEqual(after.getText(), expected);
    assert.notStrictEqual(expected, lantern);
    assert.strictEqual(document.getText(), lantern);
    assert.match(diffs()[0]?.label ?? '', /: before ↔ in standard$/);
  });

  it('answers hovers and shows diagnostics like a tab', async () => {
    // A capo that no one can read stays so when another tuning is taken.
    await newTab(lantern.replace('key:    D', 'capo:   banana'));
    const { after } = await preview({ keep: 'shapes' }); // the fret stays where it is
    const line = after
      .getText()
      .split('\n')
      .findIndex((text) => text.startsWith('D3 |'));
    const at = new vscode.Position(line, after.lineAt(line).text.indexOf('4'));
    const hovers = await waitFor(
      () => vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', after.uri, at),
      'hover',
    );
    const [part] = hovers[0]?.contents ?? [];
    assert.match(part instanceof vscode.MarkdownString ? part.value : '', /^[^\n]*F[♯#]3/);
    await waitFor(() => vscode.languages.getDiagnostics(after.uri), 'diagnostics');
  });

  it('is taken as a whole: one undo brings the text back', async () => {
    const { document } = await newTab(lantern);
    const { after } = await preview();
    const expected = after.getText();
    const outcome = await run('pegbox.takeAll');
    assert.strictEqual(outcome?.report?.notesIn, 6);
    assert.strictEqual(document.getText(), expected);
    await backInTab(document);
    await undoneOnce(document, lantern);
  });

  it('is taken for the section at the cursor alone', async () => {
    const { document } = await newTab(twoSections);
    const { after } = await preview();
    const line = after.getText().split('\n').indexOf('[Refrain]') + 2;
    const editor = await waitFor(
      () => vscode.window.visibleTextEditors.find((shown) => shown.document === after),
      'text after the change',
    );
    editor.selection = new vscode.Selection(line, 4, line, 4);
    const whole = after.getText();
    const outcome = await run('pegbox.takeSection', after.uri);
    assert.strictEqual(outcome?.report?.notesIn, 4, outcome?.error);
    assert.strictEqual(section(document.getText(), 'Verse').trim(), section(twoSections, 'Verse').trim());
    assert.match(document.getText(), /^tuning: DADGAD$/m);
    assert.match(section(document.getText(), 'Refrain'), /^tuning:\s+standard$/im);
    const staff = (text: string): string => section(text, 'Refrain').split('\n').slice(-7).join('\n');
    assert.strictEqual(staff(document.getText()), staff(whole));
    await backInTab(document);
    await undoneOnce(document, twoSections);
  });

  it('is worked out again when the text is edited, its range going with the text', async () => {
    const from = twoSections.split('\n').indexOf('[Refrain]') + 1;
    const range = new vscode.Range(from, 0, from + 5, 20);
    const { document } = await newTab(twoSections);
    const { before, after } = await preview({ range });
    await edit(document, new vscode.Range(0, 0, 0, 0), '; three lines\n; put in\n; above\n');
    await edit(document, new vscode.Range(from + 3, 4, from + 3, 5), '5'); // D4's first fret, 2, is now 5
    const edited = document.getText();
    assert.match(edited, /^D4 \|5-/m);
    await waitFor(() => before.getText() === edited, 'text before the change');
    const moved = new vscode.Range(from + 3, 0, from + 8, 20);
    const expected = await converted(edited, { range: moved });
    await waitFor(() => after.getText() === expected, 'text after the change');
    assert.strictEqual(section(expected, 'Verse').trim(), section(twoSections, 'Verse').trim());
    await run('pegbox.takeAll', after.uri);
    assert.strictEqual(document.getText(), expected);
  });

  it('is not taken unseen: what an edit made of it is shown first', async () => {
    const { document } = await newTab(lantern);
    const { after } = await preview();
    const at = lantern.split('\n').findIndex((line) => line.startsWith('D3 |'));
    // Taken as soon as the edit is known, before the preview can be worked out again.
    const taken = new Promise<Outcome | undefined>((resolve, reject) => {
      const listening = vscode.workspace.onDidChangeTextDocument((event) => {
        if (event.document !== document) return;
        listening.dispose();
        run('pegbox.takeAll', after.uri).then(resolve, reject);
      });
    });
    await edit(document, new vscode.Range(at, 8, at, 9), '5');
    assert.match((await taken)?.error ?? '', /^Nothing was taken\. The text was changed meanwhile/);
    const edited = document.getText();
    assert.strictEqual(edited, lantern.replace('D3 |----4', 'D3 |----5'));
    const expected = await converted(edited);
    await waitFor(() => after.getText() === expected, 'text after the change');
    await run('pegbox.takeAll', after.uri);
    assert.strictEqual(document.getText(), expected);
  });

  it('is taken into a file that was closed meanwhile', async () => {
    const file = fileNamed('pier.pegbox');
    await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(lantern));
    // Not by openTextDocument, which keeps a document for minutes after its tab is closed.
    await vscode.commands.executeCommand('vscode.open', file);
    const closed = await waitFor(
      () =>
        vscode.window.visibleTextEditors.find(({ document }) => document.uri.path === file.path)?.document,
      'file',
    );
    const { after } = await preview();
    const expected = after.getText();
    const own = vscode.window.tabGroups.all
      .flatMap(({ tabs }) => tabs)
      .filter(({ input }) => input instanceof vscode.TabInputText);
    await vscode.window.tabGroups.close(own);
    await waitFor(() => closed.isClosed, 'end of the file');
    const outcome = await run('pegbox.takeAll', after.uri);
    assert.isDefined(outcome?.report, outcome?.error);
    const document = await waitFor(() => vscode.window.activeTextEditor?.document, 'file');
    assert.strictEqual(document.uri.toString(), closed.uri.toString());
    assert.strictEqual(document.getText(), expected);
    await undoneOnce(document, lantern);
  });

  it('says when it cannot be worked out again, takes nothing, and is back when it can', async () => {
    const { document } = await newTab(lantern);
    const { before, after } = await preview();
    const expected = after.getText();
    const noTab = 'title:  Lantern Lane\n';
    await edit(document, new vscode.Range(0, 0, document.lineCount, 0), noTab);
    await waitFor(() => before.getText() === noTab && after.getText() === noTab, 'texts without a change');
    const outcome = await run('pegbox.takeAll', after.uri);
    assert.match(outcome?.error ?? '', /^Nothing was taken\. There is no tab/);
    assert.strictEqual(document.getText(), noTab);
    await edit(document, new vscode.Range(0, 0, document.lineCount, 0), lantern);
    await waitFor(() => after.getText() === expected, 'text after the change');
  });

  it('is forgotten when its tab is closed', async () => {
    const { document } = await newTab(lantern);
    const { after } = await preview();
    await vscode.window.tabGroups.close(diffs());
    await waitFor(
      () =>
        vscode.workspace.openTextDocument(after.uri).then(
          () => false,
          () => true,
        ),
      'end of the text after the change',
    );
    const outcome = await run('pegbox.takeAll', after.uri);
    assert.match(outcome?.error ?? '', /no preview/);
    assert.strictEqual(document.getText(), lantern);
  });

  it('gives way to the next one of the same tab', async () => {
    const { document } = await newTab(lantern);
    const first = await preview();
    await vscode.window.showTextDocument(document);
    const second = await preview({ tuning: 'open D' });
    assert.notStrictEqual(second.after.uri.toString(), first.after.uri.toString());
    await waitFor(() => diffs().length === 1, 'one preview only');
    assert.match(second.after.getText(), /^tuning:\s+open D$/im);
  });

  it('is where no passage can be changed', async () => {
    await newTab(lantern);
    const { after } = await preview();
    const outcome = await run('pegbox.transpose', { by: 2 });
    assert.isUndefined(outcome);
    assert.match(after.getText(), /^tuning:\s+standard/im);
  });

  it('opens its report', async () => {
    await newTab(lantern);
    const { after } = await preview();
    await run('pegbox.showReport', after.uri);
    const page = await waitFor(
      () => vscode.window.visibleTextEditors.find(({ document }) => document.uri.scheme === 'pegbox-report'),
      'report',
    );
    assert.include(page.document.getText(), 'Convert to standard, keeping the sound');
  });

  it('is what the questions of a command end in, unless the setting is off', async () => {
    const ask = async (): Promise<Outcome> => {
      let outcome: Outcome | undefined;
      const done = Promise.resolve(run('pegbox.convert')).then((answer) => {
        outcome = answer;
        return true;
      });
      await waitFor(async () => {
        await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
        return Promise.race([done, Promise.resolve(false)]);
      }, 'end of the questions');
      return outcome ?? {};
    };
    const { document } = await newTab(lantern);
    assert.isDefined((await ask()).preview);
    assert.strictEqual(document.getText(), lantern);
    await vscode.window.tabGroups.close(diffs());
    const settings = vscode.workspace.getConfiguration('pegbox');
    await settings.update('preview', false, vscode.ConfigurationTarget.Global);
    try {
      await vscode.window.showTextDocument(document);
      const { report, preview: shown } = await ask();
      assert.isDefined(report);
      assert.isUndefined(shown);
      assert.notStrictEqual(document.getText(), lantern);
      await undoneOnce(document, lantern);
    } finally {
      await settings.update('preview', undefined, vscode.ConfigurationTarget.Global);
    }
  });
});

describe('several ways of one change in the editor', () => {
  const report: Report = { notesIn: 6, kept: 6, moved: 0, unplaced: [], remarks: [] };
  const titled = (title: string): string => lantern.replace('Lantern Lane', title);
  const pages = new ReportPages();
  const previews = new Previews(pages, 'pegbox-preview-of-tests');
  const noServer = { ask: () => Promise.reject(new Error('There is no server in this test.')) };
  const taking = new Taking(previews, noServer);
  after(() => {
    previews.dispose();
    pages.dispose();
  });
  afterEach(closeTabs);

  it('are shown one after the other, and the one that is shown is taken', async () => {
    const { document } = await newTab(lantern);
    const way = (newText: string) => ({
      edits: [{ range: { start: { line: 0, character: 8 }, end: { line: 0, character: 20 } }, newText }],
      report,
    });
    await previews.open(document, undefined, {
      asked: 'Rename',
      done: 'Renamed',
      after: 'renamed',
      ask: () =>
        Promise.resolve({
          version: document.version,
          ...way('One'),
          alternatives: [way('Two'), way('Three')],
        }),
    });
    const { after } = await shownDiff();
    const shown = await waitFor(() => previews.find(), 'preview');
    assert.strictEqual(after.getText(), titled('One'));
    for (const title of ['Two', 'Three', 'One', 'Two']) {
      previews.next(shown);
      await waitFor(() => after.getText() === titled(title), `way “${title}”`);
    }
    await taking.all(shown);
    assert.strictEqual(document.getText(), titled('Two'));
    await backInTab(document);
    await undoneOnce(document, lantern);
  });
});

describe('a box for one line in the editor', () => {
  it('is silent and shut to Enter while empty, tells what is wrong, and takes what is right', async () => {
    const box = vscode.window.createInputBox();
    const asked: string[] = [];
    let answer: string | undefined;
    const check = (text: string): Promise<string | undefined> => {
      asked.push(text);
      return Promise.resolve(text === '2' ? undefined : 'Type 2.');
    };
    const done = askText({ title: 'Half steps', prompt: 'How many', check }, box).then((text) => {
      answer = text;
      return true;
    });
    const enter = async (): Promise<boolean> => {
      await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
      return Promise.race([done, Promise.resolve(false)]);
    };
    assert.isFalse(await enter());
    assert.isUndefined(box.validationMessage);
    assert.isEmpty(asked);
    box.value = 'x';
    await waitFor(async () => (await enter()) || box.validationMessage === 'Type 2.', 'message');
    assert.isUndefined(answer);
    box.value = '2';
    await waitFor(enter, 'answer');
    assert.strictEqual(answer, '2');
  });
});
