import { assert } from 'chai';
import * as vscode from 'vscode';
import { openFile } from './workspace';
import { waitFor } from './waitFor';

/** What a hover shows, as one text. */
async function hoverText(uri: vscode.Uri, at: vscode.Position): Promise<string> {
  const hovers = await waitFor(
    () => vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', uri, at),
    'hover',
  );
  return hovers
    .flatMap(({ contents }) => contents)
    .map((part) => (part instanceof vscode.MarkdownString ? part.value : ''))
    .join('\n');
}

describe('hover in the editor', () => {
  it('names the note of a fret first, with its octave', async () => {
    const { document } = await openFile('lantern.pegbox');
    assert.strictEqual(document.languageId, 'pegbox');
    const line = document.lineAt(7); // D3 |----4: four half steps above D3
    const text = await hoverText(document.uri, new vscode.Position(7, line.text.indexOf('4')));
    assert.match(text.split('\n')[0] ?? '', /F[♯#]3/);
  });
});
