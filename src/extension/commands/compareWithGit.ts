import * as vscode from 'vscode';
import type { CommandTarget } from '../../server/requests';
import type { CompareAnswer } from '../../service/compare/compareAnswer';
import type { ServiceError } from '../../service/serviceApi';
import { refuse } from '../applyChange';
import type { GitExports } from '../git/gitApi';
import { keptFile, textIn, versionsOf, type GitVersion } from '../git/gitVersions';
import type { HelpPages } from '../helpPages';
import { pick } from '../pick';
import { fileName } from '../fileName';
import type { ServerRequests } from '../serverRequests';
import { showComparison } from '../showComparison';
import { findTarget } from '../target';

export interface CompareWithGitArguments extends CommandTarget {
  /** A hash, a branch, a tag or `HEAD~2`. Asked for when it is left out. */
  readonly version?: string;
}

/**
 * Shows what became of the notes since a version that Git keeps, by the editor's built-in Git extension. Gives back the
 * answer; what is missing is told in a sentence.
 */
export function registerCompareWithGit(requests: ServerRequests, pages: HelpPages): vscode.Disposable {
  return vscode.commands.registerCommand(
    'pegbox.compareWithGit',
    async (given?: CompareWithGitArguments): Promise<CompareAnswer | ServiceError | undefined> => {
      try {
        const target = await findTarget(given);
        if (target === undefined) return undefined;
        const { document } = target;
        const file = await keptFile(vscode.extensions.getExtension<GitExports>('vscode.git'), document.uri);
        const version =
          given?.version === undefined
            ? await askVersion(await versionsOf(file))
            : { ref: given.version, when: given.version };
        if (version === undefined) return undefined;
        const before = await textIn(file, version.ref);
        const name = fileName(document.uri);
        return await showComparison({ requests, pages }, document, before, {
          before: `${name} in ${version.when}`,
          after: `${name} as it is now`,
        });
      } catch (error) {
        return refuse(error instanceof Error ? error.message : String(error));
      }
    },
  );
}

async function askVersion(versions: readonly GitVersion[]): Promise<GitVersion | undefined> {
  const items = versions.map((version) => ({ label: version.title, description: version.when, version }));
  const chosen = await pick(items, {
    title: 'Compare with a Git version',
    placeholder: 'The earlier version; the tab that you have open is the later one',
  });
  return chosen?.version;
}
