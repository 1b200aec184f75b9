import * as vscode from 'vscode';
import type { GripAnswer } from '../service/grip/gripAnswer';

/** The page beside the text that shows how the hand holds a column; there is one, used again. Read only. */
export class GripPage implements vscode.Disposable {
  private panel: vscode.WebviewPanel | undefined;

  /** Whether it can be seen, so that it is worth keeping up to date. */
  get visible(): boolean {
    return this.panel?.visible === true;
  }

  /** Shows an answer and leaves the cursor where it is. */
  show(answer: GripAnswer): void {
    this.panel ??= this.open();
    this.panel.webview.html = gripHtml(answer);
  }

  reveal(): void {
    if (!this.visible) this.panel?.reveal(undefined, true);
  }

  dispose(): void {
    this.panel?.dispose();
  }

  private open(): vscode.WebviewPanel {
    const column = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    const panel = vscode.window.createWebviewPanel('pegbox.grip', 'Grip', column, { enableFindWidget: true });
    panel.onDidDispose(() => (this.panel = undefined));
    return panel;
  }
}

/** The picture is an SVG of the server's own, the words may hold what a user wrote. */
function gripHtml({ words, basis, svg }: GripAnswer): string {
  const style = `
    body { padding: 1.5em; max-width: 34em; font-size: var(--vscode-font-size); line-height: 1.5; }
    svg { display: block; width: auto; height: auto; zoom: 2; }
    .basis { color: var(--vscode-descriptionForeground); }`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>Grip</title>
<style>${style}</style>
</head>
<body>
<main>
${svg}
<p>${escaped(words)}</p>
${basis === '' ? '' : `<p class="basis">${escaped(basis)}.</p>`}
</main>
</body>
</html>`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
