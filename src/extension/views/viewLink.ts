import type * as vscode from 'vscode';
import { kindOf, type Message } from '../../views/messages/message';

/** The extension's side of the talk with one view, wherever it is shown. */
export interface ViewLink<Out extends Message> {
  /** Whether a page is there and seen: only then is it worth working something out for it. */
  readonly visible: boolean;
  /** Says something to the page; nobody hears it where none is there. */
  send(message: Out): void;
}

/**
 * Hears what a page says, as far as it is understood; anything else is noted for whoever looks for it.
 * @param read the reader of the messages from the view
 */
export function hearView<In extends Message>(
  webview: vscode.Webview,
  read: (value: unknown) => In | undefined,
  hear: (message: In) => void,
): vscode.Disposable {
  return webview.onDidReceiveMessage((data: unknown) => {
    const message = read(data);
    if (message) hear(message);
    else console.warn(`Pegbox: a message from a view was not understood: ${kindOf(data)}`);
  });
}
