import * as vscode from 'vscode';
import type { ChordChart } from '../service/song/songAnswer';

/** The page beside the text that shows a chart of chords; there is one, used again. Read only, without scripts. */
export class ChartPage implements vscode.Disposable {
  private panel: vscode.WebviewPanel | undefined;

  /** Shows a chart and leaves the cursor where it is. */
  show(chart: ChordChart): void {
    this.panel ??= this.open();
    this.panel.webview.html = chartHtml(chart);
    if (!this.panel.visible) this.panel.reveal(undefined, true);
  }

  dispose(): void {
    this.panel?.dispose();
  }

  private open(): vscode.WebviewPanel {
    const column = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    const panel = vscode.window.createWebviewPanel('pegbox.chart', 'Chord Chart', column, {
      enableFindWidget: true,
    });
    panel.onDidDispose(() => (this.panel = undefined));
    return panel;
  }
}

/** The sheet in the editor's colours, and why some chord has no shape. */
function chartHtml({ svg, chords, remarks }: ChordChart): string {
  const style = `
    body { padding: 0 1em 1.5em; font-size: var(--vscode-font-size); line-height: 1.5; }
    main > svg { display: block; max-width: 100%; height: auto; color: var(--vscode-foreground); }
    .ground { display: none; }
    p { max-width: 40em; }`;
  const missing = chords.filter(({ shape }) => shape === null);
  const sentences = [...missing.map(({ name, reason }) => `${name}: ${reason}`), ...remarks];
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>Chord Chart</title>
<style>${style}</style>
</head>
<body>
<main>
${svg}
${sentences.map((one) => `<p>${escaped(one)}</p>`).join('\n')}
</main>
</body>
</html>`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
