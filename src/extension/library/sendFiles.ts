import * as vscode from 'vscode';
import { REQUESTS, type ListedFile } from '../../server/requests';
import type { ServerRequests } from '../serverRequests';

/** Some at a time, so that the server answers others between, and hears that it is to stop. */
const AT_A_TIME = 8;

/**
 * Reads files and sends them to the server.
 * @param told hears how many were sent
 * @returns false when it was cancelled
 */
export async function sendFiles(
  requests: ServerRequests,
  files: readonly ListedFile[],
  cancellation: vscode.CancellationToken,
  told: (done: number) => void = () => undefined,
): Promise<boolean> {
  for (let i = 0; i < files.length; i += AT_A_TIME) {
    if (cancellation.isCancellationRequested) return false;
    const texts = await Promise.all(files.slice(i, i + AT_A_TIME).map(withText));
    await requests.ask(REQUESTS.readFiles, { files: texts.flat() });
    told(Math.min(files.length, i + AT_A_TIME));
  }
  return !cancellation.isCancellationRequested;
}

async function withText(file: ListedFile): Promise<(ListedFile & { readonly text: string })[]> {
  const text = await savedText(vscode.Uri.parse(file.uri, true)).catch(() => undefined);
  return text === undefined ? [] : [{ ...file, text }];
}

/** What a file says as it is saved, whatever stands in an editor; a byte order mark is no part of it. */
export async function savedText(uri: vscode.Uri): Promise<string> {
  return new TextDecoder('utf-8').decode(await vscode.workspace.fs.readFile(uri));
}
