import { assert } from 'chai';
import * as vscode from 'vscode';
import { walk } from '../../../src/extension/library/walk';
import { closeTabs, lantern, newTab } from './newTab';
import { waitFor } from './waitFor';
import { fileNamed } from './workspace';

interface FoundAnswer {
  readonly error?: string;
  readonly found: readonly {
    readonly uri: string;
    readonly passages: readonly { readonly words: string; readonly ranges: readonly vscode.Range[] }[];
  }[];
}

interface LibraryGroups {
  readonly name: string;
  readonly files: readonly { readonly uri: string; readonly entry: { readonly title: string } }[];
}

interface Compared {
  readonly error?: string;
  readonly counts: Readonly<Record<'same' | 'added' | 'lost' | 'repitched', number>>;
}

/** D4 F#3 … of lantern, a half step up, on one string of another tuning. */
const elsewhere = 'title: Elsewhere\ntuning: open G\n\nD4 |1-------1-------|\nB3 |----------------|\n';

const find = (given: object): Thenable<FoundAnswer | undefined> =>
  vscode.commands.executeCommand('pegbox.findBySound', given);

describe('find by sound, the library and compare', () => {
  afterEach(closeTabs);

  it('finds the tune in an unsaved tab and in a file of the workspace, and opens it at its notes', async () => {
    await newTab(elsewhere);
    const editor = await newTab(lantern.replace('Lantern', 'Another'));
    // Two notes of string 1, which have lower ones between them.
    editor.selection = new vscode.Selection(5, 0, 5, 21);
    const answer = await find({ by: 'tune', over: true });
    assert.isUndefined(answer?.error);
    const found = answer?.found ?? [];
    const unsaved = found.find(({ uri }) => uri.startsWith('untitled:'));
    assert.match(unsaved?.passages[0]?.words ?? '', /^bar 1; open G; 1 half step up$/);
    const saved = found.find(({ uri }) => uri === fileNamed('lantern.pegbox').toString());
    assert.isDefined(saved, JSON.stringify(found.map(({ uri }) => uri)));
    const [passage] = saved.passages;
    await vscode.commands.executeCommand('pegbox.openFound', saved.uri, passage);
    const opened = await waitFor(
      () =>
        vscode.window.activeTextEditor?.document.uri.toString() === saved.uri &&
        vscode.window.activeTextEditor,
      'the file that was found',
    );
    assert.strictEqual(opened.selections.length, passage?.ranges.length);
    for (const selection of opened.selections) assert.match(opened.document.getText(selection), /^\d+$/);
  });

  it('says what to select', async () => {
    const editor = await newTab(lantern);
    editor.selection = new vscode.Selection(0, 0, 0, 0);
    const answer = await find({ by: 'tune' });
    assert.match(answer?.error ?? '', /^Select the notes to look for/);
  });

  it('has the workspace and unsaved tabs in the library, grouped as one likes', async () => {
    await vscode.commands.executeCommand('pegbox.library.focus');
    const read = (): Thenable<readonly LibraryGroups[]> =>
      vscode.commands.executeCommand('pegbox.refreshLibrary');
    const titles = (groups: readonly LibraryGroups[]): string[] =>
      groups.flatMap(({ files }) => files.map(({ entry }) => entry.title));
    await vscode.commands.executeCommand('pegbox.groupLibrary', 'tuning');
    const first = await read();
    assert.include(titles(first), 'Lantern Lane');
    await newTab(elsewhere);
    const groups = await waitFor(async () => {
      const now = await read();
      return now.some(({ name }) => name === 'open G') && now;
    }, 'the unsaved tab in the library');
    assert.deepEqual(
      groups.find(({ name }) => name === 'open G')?.files.map(({ entry }) => entry.title),
      ['Elsewhere'],
    );
    await vscode.commands.executeCommand('pegbox.groupLibrary', 'range');
    assert.isTrue((await read()).every(({ name }) => /^lowest note|^no notes/.test(name)));
    await vscode.commands.executeCommand('pegbox.groupLibrary', 'tuning');
  });

  it('looks at no more files than it may and says that there are more; unsaved tabs count on top', async () => {
    const { document } = await newTab(elsewhere);
    const source = new vscode.CancellationTokenSource();
    const all = await walk(source.token);
    assert.isFalse(all.more);
    const saved = (files: typeof all.files): string[] =>
      files.map(({ uri }) => uri).filter((uri) => !uri.startsWith('untitled:'));
    assert.isAtLeast(saved(all.files).length, 2);
    const some = await walk(source.token, 1);
    assert.isTrue(some.more);
    assert.include(
      some.files.map(({ uri }) => uri),
      document.uri.toString(),
    );
    assert.strictEqual(saved(some.files)[0], saved(all.files)[0]);
    assert.lengthOf((await walk(source.token, saved(all.files).length)).files, all.files.length);
    source.cancel();
    const stopped = await walk(source.token);
    assert.isTrue(stopped.files.every(({ stamp }) => stamp === 'open')); // what stands in memory needs no reading
    source.dispose();
  });

  it('compares a tab with another file, and shows a page', async () => {
    await newTab(lantern.replace('D4 |0-------0', 'D4 |0-------2'));
    const before = fileNamed('lantern.pegbox').toString();
    const answer = await vscode.commands.executeCommand<Compared | undefined>('pegbox.compare', { before });
    assert.isUndefined(answer?.error);
    assert.isAtLeast(answer?.counts.same ?? 0, 1);
    await waitFor(
      () =>
        vscode.window.tabGroups.all.some(({ tabs }) =>
          tabs.some(({ label }) => label.includes('What changed')),
        ),
      'the page',
    );
  });

  it('renames a part everywhere by the editor’s own rename', async () => {
    const text = 'part: low\n\nE2 |0---|\n\npart: high\n\nE4 |0---|\n\npart: low\n\nE2 |3---|\n';
    const { document } = await newTab(text);
    const edit = await waitFor(
      () =>
        vscode.commands.executeCommand<vscode.WorkspaceEdit | undefined>(
          'vscode.executeDocumentRenameProvider',
          document.uri,
          new vscode.Position(0, 7),
          'bass',
        ),
      'the rename',
    );
    assert.isTrue(await vscode.workspace.applyEdit(edit));
    assert.strictEqual(document.getText(), text.replaceAll('low', 'bass'));
  });
});
