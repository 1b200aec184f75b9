import * as vscode from 'vscode';
import type { Position, Range } from 'vscode-languageclient';
import type { PlaceParams } from '../server/requests';

/** Takes a range of the protocol, or one of VS Code's. */
export function toRange({ start, end }: Range): vscode.Range {
  return new vscode.Range(start.line, start.character, end.line, end.character);
}

/** VS Code's own places and ranges turn into something else as JSON; what goes to the server must be plain. */
export function plainPosition({ line, character }: vscode.Position): Position {
  return { line, character };
}

export function plainRange({ start, end }: vscode.Range): Range {
  return { start: plainPosition(start), end: plainPosition(end) };
}

/** A place of a document as the server is asked about it. */
export function askedAt({
  document,
  position,
}: {
  readonly document: vscode.TextDocument;
  readonly position: vscode.Position;
}): PlaceParams {
  return { uri: document.uri.toString(), position: plainPosition(position) };
}
