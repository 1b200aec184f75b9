import { assert } from 'chai';
import * as vscode from 'vscode';
import type { GitExports } from '../../../src/extension/git/gitApi';
import { expected } from '../expectedHost';
import { closeTabs } from './newTab';
import { waitFor } from './waitFor';
import { fileNamed, openFile } from './workspace';

interface Compared {
  readonly error?: string;
  readonly counts?: Readonly<Record<'same' | 'added' | 'lost' | 'repitched', number>>;
}

const compare = (given?: object): Thenable<Compared | undefined> =>
  vscode.commands.executeCommand('pegbox.compareWithGit', given);

const setting = (value: boolean | undefined): Thenable<void> =>
  vscode.workspace
    .getConfiguration('git', fileNamed('kept.pegbox'))
    .update('enabled', value, vscode.ConfigurationTarget.Workspace);

/** Whether the workspace is kept by Git: on a machine without it, it is not. */
async function isKept(): Promise<boolean> {
  return Promise.resolve(vscode.workspace.fs.stat(fileNamed('.git'))).then(
    () => true,
    () => false,
  );
}

describe('comparing with a version that Git keeps', () => {
  afterEach(async () => {
    await closeTabs();
    if (expected.host === 'node') await setting(undefined);
  });

  it('says in a sentence what is missing where the editor has no Git, or it is turned off', async () => {
    await openFile('kept.pegbox');
    const answer = await compare({ version: 'HEAD' });
    assert.match(
      answer?.error ?? '',
      /^(?:This editor comes without Git|Git is turned off in this editor).*\.$/,
    );
  });

  it('tells what became of the notes since the last commit, though the tab is not saved', async function () {
    if (expected.host !== 'node' || !(await isKept())) return this.skip();
    const editor = await openFile('kept.pegbox');
    const { document } = editor;
    const place = document.positionAt(document.getText().indexOf('|0') + 1);
    await editor.edit((edit) => edit.replace(new vscode.Range(place, place.translate(0, 1)), '2'));
    await setting(true);
    const git = vscode.extensions.getExtension<GitExports>('vscode.git');
    assert.isDefined(git);
    const exports = await git.activate();
    await waitFor(() => exports.enabled, 'Git');
    // Before the page takes the place of the tab; the editor still looks for repositories at first.
    await waitFor(async () => {
      const wrong = await compare({ version: 'no-such-version' });
      return /^Git has no text of this file in the version no-such-version/.test(wrong?.error ?? '');
    }, 'repository');
    const answer = await compare({ version: 'HEAD' });
    const { counts } = answer ?? {};
    assert.isDefined(counts, answer?.error);
    assert.strictEqual(counts.repitched, 1);
    assert.isAtLeast(counts.same, 1);
  });
});
