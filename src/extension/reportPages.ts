import * as vscode from 'vscode';
import { reportText, type ChangeReport } from './reportText';

const SCHEME = 'pegbox-report';

/** Where the report on a document can be opened. */
export function reportAddress(document: vscode.Uri): vscode.Uri {
  const name = document.path.slice(document.path.lastIndexOf('/') + 1);
  return vscode.Uri.from({ scheme: SCHEME, path: `/Report on ${name}.txt`, query: document.toString() });
}

/** Reports of changes as read-only documents, the last one for each file. */
export class ReportPages implements vscode.Disposable {
  private readonly texts = new Map<string, string>();
  private readonly changed = new vscode.EventEmitter<vscode.Uri>();
  private readonly registration: vscode.Disposable;

  constructor() {
    this.registration = vscode.workspace.registerTextDocumentContentProvider(SCHEME, {
      onDidChange: this.changed.event,
      provideTextDocumentContent: (uri) => this.texts.get(uri.toString()) ?? '',
    });
  }

  /** Keeps the report and returns where it can be opened. */
  keep(document: vscode.Uri, change: ChangeReport): vscode.Uri {
    const name = document.path.slice(document.path.lastIndexOf('/') + 1);
    const page = vscode.Uri.from({
      scheme: SCHEME,
      path: `/Report on ${name}.txt`,
      query: document.toString(),
    });
    this.texts.set(page.toString(), reportText(name, change));
    this.changed.fire(page);
    return page;
  }

  async show(page: vscode.Uri): Promise<void> {
    await vscode.window.showTextDocument(page, { viewColumn: vscode.ViewColumn.Beside, preview: true });
  }

  dispose(): void {
    this.registration.dispose();
    this.changed.dispose();
  }
}
