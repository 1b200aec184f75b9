import * as vscode from 'vscode';
import { fileName } from '../fileName';

/** The scheme of the two texts of a preview. Documents of it are read only and stand in no folder. */
export const PREVIEW_SCHEME = 'pegbox-preview';

export interface PreviewAddresses {
  readonly before: vscode.Uri;
  readonly after: vscode.Uri;
}

/**
 * Where the two texts of a preview can be opened. They end in `.pegbox`, so that colours, hovers and diagnostics are
 * those of a tab; the number keeps a preview apart from an earlier one of the same file.
 */
export function previewAddresses(
  original: vscode.Uri,
  number: number,
  scheme = PREVIEW_SCHEME,
): PreviewAddresses {
  const name = fileName(original).replace(/(\.pegbox)?$/, '.pegbox');
  const address = (side: string): vscode.Uri =>
    vscode.Uri.from({ scheme, path: `/${side}/${name}`, query: String(number) });
  return { before: address('before'), after: address('after') };
}
