import type { Uri } from 'vscode';

// What Pegbox uses of the public interface of the editor's built-in Git extension, version 1, as it is documented
// there (`vscode.git`: README.md and src/api/git.d.ts).

/** What is read of an address; the extension wants the editor's whole `Uri`. */
export type FileAddress = Pick<Uri, 'scheme' | 'fsPath'>;

/** One version of a repository. */
export interface GitCommit {
  readonly hash: string;
  readonly message: string;
  readonly authorDate?: Date;
}

export interface GitRepository {
  /** The commits that touched a file, the latest first. */
  log(options: { readonly path: string; readonly maxEntries: number }): Promise<readonly GitCommit[]>;
  /** The text of a file in a version; rejects when it is not in there. */
  show(ref: string, path: string): Promise<string>;
}

export interface GitApi {
  readonly state: 'uninitialized' | 'initialized';
  readonly onDidChangeState: (listener: () => void) => { dispose(): unknown };
  getRepository(uri: FileAddress): GitRepository | null;
}

/** What the extension exports; `getAPI` throws while `enabled` is false. */
export interface GitExports {
  readonly enabled: boolean;
  getAPI(version: 1): GitApi;
}

/** An extension, as `vscode.extensions.getExtension` gives it. */
export interface GitExtension {
  readonly isActive: boolean;
  readonly exports: GitExports;
  activate(): Thenable<GitExports>;
}
