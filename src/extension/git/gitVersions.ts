import type { FileAddress, GitApi, GitCommit, GitExtension, GitRepository } from './gitApi';

/** More versions than this make a list that no one reads. */
const MOST_VERSIONS = 100;

/** How many signs of a hash name a version. */
const SHORT = 7;

/** A file and the repository that keeps its versions. */
export interface KeptFile {
  readonly repository: GitRepository;
  readonly path: string;
}

/** A version of a file, as a list shows it. */
export interface GitVersion {
  /** What `show` takes. */
  readonly ref: string;
  /** The first line of what its author wrote about it. */
  readonly title: string;
  /** `1a2b3c4, 2026-03-01`. */
  readonly when: string;
}

/** Where an address stands for no file that Git could keep. */
const NO_FILE = 'Save the tab in a folder that Git keeps, then compare it with an earlier version.';

/**
 * The repository that keeps a file.
 * @param extension the editor's built-in Git extension, if the editor has one
 * @throws Error in one sentence that says what is missing: Git, a saved file, a repository
 */
export async function keptFile(extension: GitExtension | undefined, uri: FileAddress): Promise<KeptFile> {
  if (!extension)
    throw new Error(
      'This editor comes without Git, as editors in a browser do: take Compare With… and another file, or open the folder on a desktop.',
    );
  if (uri.scheme === 'untitled') throw new Error(NO_FILE);
  const exports = extension.isActive ? extension.exports : await extension.activate();
  if (!exports.enabled)
    throw new Error(
      'Git is turned off in this editor, or not installed: turn the setting git.enabled on, or install Git.',
    );
  const api = exports.getAPI(1);
  await initialized(api);
  const repository = api.getRepository(uri);
  if (!repository)
    throw new Error(
      'This file is in no Git repository that the editor has open: open the folder that holds it.',
    );
  return { repository, path: uri.fsPath };
}

/** The extension looks for repositories as the editor starts, and knows none before it is through. */
async function initialized(api: GitApi): Promise<void> {
  if (api.state === 'initialized') return;
  await new Promise<void>((resolve) => {
    const listening = api.onDidChangeState(() => {
      if (api.state !== 'initialized') return;
      listening.dispose();
      resolve();
    });
  });
}

/**
 * The versions of a file, the latest first.
 * @throws Error when Git knows none
 */
export async function versionsOf({ repository, path }: KeptFile): Promise<readonly GitVersion[]> {
  // Git's own words for a repository without a commit tell a player nothing.
  const commits = await repository.log({ path, maxEntries: MOST_VERSIONS }).catch(() => []);
  if (commits.length === 0)
    throw new Error(
      'Git keeps no version of this file yet: commit it first, and compare after the next change.',
    );
  return commits.map(versionText);
}

function versionText({ hash, message, authorDate }: GitCommit): GitVersion {
  const [title = ''] = message.trim().split('\n');
  const date = authorDate && !Number.isNaN(authorDate.getTime()) ? authorDate.toISOString().slice(0, 10) : '';
  return {
    ref: hash,
    title: title === '' ? 'Without words' : title,
    when: [hash.slice(0, SHORT), date].filter((text) => text !== '').join(', '),
  };
}

/**
 * What a file said in a version.
 * @param ref a hash, a branch, a tag or `HEAD~2`
 * @throws Error when the file is not in that version
 */
export async function textIn({ repository, path }: KeptFile, ref: string): Promise<string> {
  try {
    return await repository.show(ref, path);
  } catch {
    throw new Error(
      `Git has no text of this file in the version ${ref}: choose one in which the file was there.`,
    );
  }
}
