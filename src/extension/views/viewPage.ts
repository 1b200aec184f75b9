import * as vscode from 'vscode';

/** Where the build puts the script and the style sheet of every view. */
function viewFolder(extension: vscode.Uri): vscode.Uri {
  return vscode.Uri.joinPath(extension, 'dist', 'views');
}

/** What a view's page may do: run its script; read nothing but the folder of the views. */
export function viewOptions(extension: vscode.Uri): vscode.WebviewOptions {
  return { enableScripts: true, enableCommandUris: false, localResourceRoots: [viewFolder(extension)] };
}

/** A view as the build names it: `src/views/<name>/main.tsx` becomes `dist/views/<name>.js` and `.css`. */
export interface ViewName {
  readonly name: string;
  /** As the page's title and for screen readers. */
  readonly title: string;
}

/**
 * The page of a view. It loads one script and one style sheet of the extension's own and pictures out of data
 * addresses; everything else, the network above all, is forbidden to it.
 */
export function viewPage(webview: vscode.Webview, extension: vscode.Uri, { name, title }: ViewName): string {
  const address = (file: string): string =>
    webview.asWebviewUri(vscode.Uri.joinPath(viewFolder(extension), file)).toString();
  const nonce = crypto.randomUUID().replaceAll('-', '');
  const policy = [
    "default-src 'none'",
    `script-src 'nonce-${nonce}'`,
    `style-src ${webview.cspSource}`,
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<link rel="stylesheet" href="${address(`${name}.css`)}">
</head>
<body>
<main id="view"></main>
<script nonce="${nonce}" src="${address(`${name}.js`)}"></script>
</body>
</html>`;
}
