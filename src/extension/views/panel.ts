import * as vscode from 'vscode';
import type { Message } from '../../views/messages/message';
import { hearView, type ViewLink } from './viewLink';
import { viewOptions, viewPage, type ViewName } from './viewPage';

export interface PanelKind<In extends Message> extends ViewName {
  /** As `activationEvents` names it after `onWebviewPanel:`, so that it comes back after a reload. */
  readonly id: string;
  /** The reader of the messages from the view. */
  readonly read: (value: unknown) => In | undefined;
  readonly hear: (message: In) => void;
  /** Called when it is seen again or no longer. */
  readonly seen?: (visible: boolean) => void;
}

/** A page in a tab of its own, beside the text; there is one of its kind, used again. */
export class Panel<In extends Message, Out extends Message> implements ViewLink<Out>, vscode.Disposable {
  private panel: vscode.WebviewPanel | undefined;
  private readonly restoring: vscode.Disposable;

  constructor(
    private readonly extension: vscode.Uri,
    private readonly kind: PanelKind<In>,
  ) {
    this.restoring = vscode.window.registerWebviewPanelSerializer(kind.id, {
      deserializeWebviewPanel: async (panel) => {
        if (this.panel) panel.dispose();
        else this.fill(panel);
      },
    });
  }

  get visible(): boolean {
    return this.panel?.visible === true;
  }

  /** Opens it beside the text, or brings it to the front; the cursor stays in the text unless `focus` is asked for. */
  show(focus = false): void {
    const { id, title } = this.kind;
    if (this.panel) {
      this.panel.reveal(undefined, !focus);
      return;
    }
    const column = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: !focus };
    this.fill(vscode.window.createWebviewPanel(id, title, column, { enableFindWidget: true }));
  }

  send(message: Out): void {
    void this.panel?.webview.postMessage(message);
  }

  dispose(): void {
    this.restoring.dispose();
    this.panel?.dispose();
  }

  private fill(panel: vscode.WebviewPanel): void {
    const { extension, kind } = this;
    this.panel = panel;
    panel.webview.options = viewOptions(extension);
    const listening = vscode.Disposable.from(
      hearView(panel.webview, kind.read, kind.hear),
      panel.onDidChangeViewState(() => kind.seen?.(panel.visible)),
    );
    panel.onDidDispose(() => {
      listening.dispose();
      this.panel = undefined;
      kind.seen?.(false);
    });
    panel.webview.html = viewPage(panel.webview, extension, kind); // last: the page may speak at once
  }
}
