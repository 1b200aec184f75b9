import * as vscode from 'vscode';
import { countsText, isGrave } from '../reportText';
import { fileName } from '../fileName';
import type { Preview } from './preview';

/** What is said of a preview, for as long as it is looked at. */
export interface Summary {
  readonly text: string;
  readonly detail: string;
  readonly grave: boolean;
}

/**
 * One line on a preview: the counts, which of several ways it is, whether the text changed since.
 *
 * @example summaryOf(preview).text // '6 kept, 0 moved, 0 unplaced, way 2 of 3'
 */
export function summaryOf(preview: Preview): Summary {
  const { variant, variants, number, trouble, renewals, change } = preview;
  const name = fileName(preview.document.uri);
  if (variant === undefined)
    return { text: 'Nothing to take', detail: `${name}: ${trouble ?? 'not worked out yet.'}`, grave: true };
  const { report, title } = variant;
  const way = title === undefined ? `way ${number}` : `way ${number}: ${title},`;
  const pieces = [
    countsText(report),
    ...(variants.length > 1 ? [`${way} of ${variants.length}`] : []),
    ...(renewals > 0 ? ['worked out again'] : []),
  ];
  const again = renewals > 0 ? [`${name} was changed since, so this was worked out again.`] : [];
  return {
    text: pieces.join(', '),
    detail: [`${change.asked}.`, ...again, ...report.remarks].join('\n\n'),
    grave: isGrave(report),
  };
}

/** The summary in the status bar, where it takes nothing from the tab; a click opens the report. */
export class SummaryItem implements vscode.Disposable {
  private readonly item: vscode.StatusBarItem;

  constructor() {
    this.item = vscode.window.createStatusBarItem('pegbox.preview', vscode.StatusBarAlignment.Left, 100);
    this.item.name = 'Pegbox: Preview';
    this.item.command = 'pegbox.showReport';
  }

  show(preview: Preview | undefined): void {
    if (preview === undefined) return this.item.hide();
    const { text, detail, grave } = summaryOf(preview);
    this.item.text = `$(${grave ? 'warning' : 'diff'}) ${text}`;
    this.item.tooltip = detail;
    this.item.accessibilityInformation = { label: `Preview: ${text}. Show report` };
    this.item.show();
  }

  dispose(): void {
    this.item.dispose();
  }
}
