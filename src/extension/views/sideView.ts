import * as vscode from 'vscode';
import type { Message } from '../../views/messages/message';
import type { PanelKind } from './panel';
import { hearView, type ViewLink } from './viewLink';
import { viewOptions, viewPage } from './viewPage';

/**
 * A page in the side bar, under a view of `contributes.views` with the type `webview`. VS Code throws the page away
 * while it is hidden and asks for it again; it says `ready` each time, and finds what it remembered.
 */
export class SideView<In extends Message, Out extends Message>
  implements ViewLink<Out>, vscode.WebviewViewProvider, vscode.Disposable
{
  private view: vscode.WebviewView | undefined;
  private readonly registration: vscode.Disposable;

  constructor(
    private readonly extension: vscode.Uri,
    private readonly kind: PanelKind<In>,
  ) {
    this.registration = vscode.window.registerWebviewViewProvider(kind.id, this);
  }

  get visible(): boolean {
    return this.view?.visible === true;
  }

  /** Opens the side bar at this view. */
  show(): Thenable<unknown> {
    return vscode.commands.executeCommand(`${this.kind.id}.focus`);
  }

  send(message: Out): void {
    void this.view?.webview.postMessage(message);
  }

  resolveWebviewView(view: vscode.WebviewView): void {
    const { extension, kind } = this;
    this.view = view;
    view.webview.options = viewOptions(extension);
    const listening = vscode.Disposable.from(
      hearView(view.webview, kind.read, kind.hear),
      view.onDidChangeVisibility(() => kind.seen?.(view.visible)),
    );
    view.onDidDispose(() => {
      listening.dispose();
      if (this.view === view) this.view = undefined;
    });
    view.webview.html = viewPage(view.webview, extension, kind); // last: the page may speak at once
  }

  dispose(): void {
    this.registration.dispose();
  }
}
