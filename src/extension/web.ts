import { Uri, type ExtensionContext } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { CLIENT_ID, CLIENT_NAME, clientOptions, startPegbox } from './client';

/** The compiler's libraries describe Node; the extension host of a browser has workers of its own. */
declare const Worker: new (script: string) => object;

let client: LanguageClient | undefined;

export function activate(context: ExtensionContext): void {
  const worker = new Worker(Uri.joinPath(context.extensionUri, 'dist/web/server.js').toString(true));
  client = new LanguageClient(CLIENT_ID, CLIENT_NAME, worker, clientOptions());
  startPegbox(context, client);
}

export async function deactivate(): Promise<void> {
  if (client?.isRunning()) await client.stop();
}
