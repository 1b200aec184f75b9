import * as vscode from 'vscode';
import { fileName } from '../fileName';

/** The scheme of texts with note names in place of frets. Read only. */
export const NAMES_SCHEME = 'pegbox-names';

/**
 * Where the note names of a tab can be opened. By how the name begins they have a language of their own (package.json),
 * with colours and nothing else that a tab has.
 */
export function namesAddress(tab: vscode.Uri): vscode.Uri {
  return vscode.Uri.from({
    scheme: NAMES_SCHEME,
    path: `/Note names of ${fileName(tab)}`,
    query: tab.toString(),
  });
}

/** The tab whose note names stand at an address. */
export function tabOf(names: vscode.Uri): string | undefined {
  return names.scheme === NAMES_SCHEME ? names.query : undefined;
}
