import type { ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { CLIENT_ID, CLIENT_NAME, clientOptions, startPegbox } from './client';

let client: LanguageClient | undefined;

export function activate(context: ExtensionContext): void {
  const module = context.asAbsolutePath('dist/server.js');
  const server = { module, transport: TransportKind.ipc };
  client = new LanguageClient(CLIENT_ID, CLIENT_NAME, { run: server, debug: server }, clientOptions());
  startPegbox(context, client);
}

export async function deactivate(): Promise<void> {
  if (client?.isRunning()) await client.stop();
}
