import * as vscode from 'vscode';
import type { CommandTarget } from '../../server/requests';
import type { CompareAnswer } from '../../service/compare/compareAnswer';
import type { ServiceError } from '../../service/serviceApi';
import { refuse } from '../applyChange';
import type { HelpPages } from '../helpPages';
import { savedText } from '../library/sendFiles';
import { walk } from '../library/walk';
import { pick } from '../pick';
import { fileName } from '../fileName';
import type { ServerRequests } from '../serverRequests';
import { showComparison } from '../showComparison';
import { findTarget } from '../target';

export interface CompareArguments extends CommandTarget {
  /** The address of the earlier version; the tab's own for the file as it is saved. Asked for when it is left out. */
  readonly before?: string;
}

const TITLE = 'Compare with an earlier version';

/**
 * Shows what became of the notes since an earlier version: the file as it was saved, or another file. Gives back the
 * answer.
 */
export function registerCompare(requests: ServerRequests, pages: HelpPages): vscode.Disposable {
  return vscode.commands.registerCommand(
    'pegbox.compare',
    async (given?: CompareArguments): Promise<CompareAnswer | ServiceError | undefined> => {
      try {
        const target = await findTarget(given);
        if (target === undefined) return undefined;
        const { document } = target;
        const uri =
          given?.before === undefined ? await askBefore(document) : vscode.Uri.parse(given.before, true);
        if (uri === undefined) return undefined;
        const own = uri.toString() === document.uri.toString();
        const before = own ? await savedText(uri) : await textNow(uri);
        const name = fileName(document.uri);
        const versions = own
          ? { before: `${name} as it was saved`, after: `${name} as it is now` }
          : { before: fileName(uri), after: name };
        return await showComparison({ requests, pages }, document, before, versions);
      } catch (error) {
        return refuse(`Pegbox could not compare: ${error instanceof Error ? error.message : String(error)}`);
      }
    },
  );
}

/** Another file counts as it stands in an editor, saved or not. */
async function textNow(uri: vscode.Uri): Promise<string> {
  return (await vscode.workspace.openTextDocument(uri)).getText();
}

interface Choice extends vscode.QuickPickItem {
  readonly uri: vscode.Uri | 'browse';
}

async function askBefore(document: vscode.TextDocument): Promise<vscode.Uri | undefined> {
  const source = new vscode.CancellationTokenSource();
  const { files } = await walk(source.token);
  source.dispose();
  const others = files
    .map(({ uri }) => vscode.Uri.parse(uri, true))
    .filter((uri) => uri.toString() !== document.uri.toString())
    .map((uri): Choice => ({ label: fileName(uri), description: folderOf(uri), uri }));
  const saved: Choice[] =
    document.isDirty && !document.isUntitled
      ? [{ label: 'The file as it was saved', description: 'what you changed since', uri: document.uri }]
      : [];
  const chosen = await pick<Choice>(
    [...saved, ...others, { label: 'Another file…', description: 'from anywhere', uri: 'browse' }],
    { title: TITLE, placeholder: 'The earlier version; the tab that you have open is the later one' },
  );
  if (chosen?.uri !== 'browse') return chosen?.uri;
  const opened = await vscode.window.showOpenDialog({
    title: TITLE,
    openLabel: 'Compare',
    filters: { 'Pegbox tab': ['pegbox'] },
  });
  return opened?.[0];
}

function folderOf(uri: vscode.Uri): string {
  const path = vscode.workspace.asRelativePath(uri);
  return path.includes('/') ? path.slice(0, path.lastIndexOf('/')) : '';
}
