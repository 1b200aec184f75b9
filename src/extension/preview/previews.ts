import * as vscode from 'vscode';
import type { Range } from 'vscode-languageclient';
import { CHANGED_MEANWHILE, refuse, tellReport, type ChangeOutcome } from '../applyChange';
import { toRange } from '../ranges';
import type { ReportPages } from '../reportPages';
import { isGrave } from '../reportText';
import type { RequestedChange } from '../requestedChange';
import { Preview } from './preview';
import { fileName } from '../fileName';
import { PREVIEW_SCHEME, previewAddresses } from './previewAddress';
import { SummaryItem } from './previewSummary';
import { tabsShowing, textsOf } from './previewTabs';

/** The key by which the title actions know whether there are several ways. */
const SEVERAL_WAYS = 'pegbox.previewSeveralWays';

/** The key by which the title actions know whether there are other requests that leave out less. */
const OFFERS = 'pegbox.previewOffers';

/** How long a text must rest before its preview is worked out again, in milliseconds: not after each key of a word. */
const REST = 200;

/** Changes that are shown before they are made, one for each document. */
export class Previews implements vscode.Disposable {
  private readonly shown = new Map<string, Preview>();
  private readonly waiting = new Map<Preview, ReturnType<typeof setTimeout>>();
  private readonly texts = new vscode.EventEmitter<vscode.Uri>();
  private readonly summary = new SummaryItem();
  private readonly disposables: readonly { dispose(): unknown }[];
  private opened = 0;
  /** Whose change is being made, and whether its document was edited since. */
  private taken: { readonly preview: Preview; missed: boolean } | undefined;

  constructor(
    private readonly pages: ReportPages,
    private readonly scheme = PREVIEW_SCHEME,
  ) {
    const settle = (): void => this.settle();
    this.disposables = [
      this.texts,
      this.summary,
      vscode.workspace.registerTextDocumentContentProvider(scheme, {
        onDidChange: this.texts.event,
        provideTextDocumentContent: (uri) => this.textAt(uri),
      }),
      vscode.workspace.onDidChangeTextDocument((event) => this.follow(event)),
      vscode.window.tabGroups.onDidChangeTabs(settle),
      vscode.window.tabGroups.onDidChangeTabGroups(settle),
    ];
    this.settle();
    // Tabs that a reload of the window brought back have nothing behind them.
    void closeTabs((uri) => uri.scheme === scheme);
  }

  /** Shows what a change would do; a preview of the same document that was open gives way to it. */
  async open(
    document: vscode.TextDocument,
    range: Range | undefined,
    change: RequestedChange,
  ): Promise<ChangeOutcome> {
    const addresses = previewAddresses(document.uri, ++this.opened, this.scheme);
    const preview = new Preview(document, range, change, addresses, (changed) => this.redraw(changed));
    await preview.renew();
    const { variant } = preview;
    if (variant === undefined) return refuse(preview.trouble ?? CHANGED_MEANWHILE);
    const { report } = variant;
    if (preview.variants.every(({ edits }) => edits.length === 0)) {
      tellReport(document.uri, report, `${change.asked} changes nothing`, this.pages);
      return { report };
    }
    const earlier = this.shown.get(document.uri.toString());
    this.shown.set(document.uri.toString(), preview);
    if (earlier) await this.close(earlier);
    const title = `${fileName(document.uri)}: before ↔ ${change.after}`;
    await vscode.commands.executeCommand('vscode.diff', addresses.before, addresses.after, title, {
      preview: false, // the next file that is looked at would take its place
      selection: toRange(firstChange(preview)),
    } satisfies vscode.TextDocumentShowOptions);
    this.settle();
    this.tellIfGrave(preview);
    return { report, preview: addresses.after.toString() };
  }

  /** The preview that an address names, else the one of the active tab. */
  find(address?: unknown): Preview | undefined {
    const tab = vscode.window.tabGroups.activeTabGroup.activeTab;
    const uris = address instanceof vscode.Uri ? [address] : tab ? textsOf(tab) : [];
    return [...this.shown.values()].find((preview) => uris.some((uri) => isOf(preview, uri)));
  }

  /** Shows the next way of making the change, after the last the first. */
  next(preview: Preview): void {
    preview.next();
    this.settle();
  }

  /**
   * Shows another change of the same passage. What cannot be made is refused, and the preview stays as it was.
   */
  async instead(preview: Preview, change: RequestedChange): Promise<ChangeOutcome> {
    const trouble = await preview.instead(change);
    if (trouble !== undefined) return refuse(trouble);
    this.settle();
    this.tellIfGrave(preview);
    return preview.variant && { report: preview.variant.report, preview: preview.addresses.after.toString() };
  }

  async showReport({ variant, trouble, change, document }: Preview): Promise<void> {
    if (variant === undefined) {
      refuse(trouble ?? CHANGED_MEANWHILE);
      return;
    }
    const page = this.pages.keep(document.uri, { asked: change.asked, report: variant.report });
    await this.pages.show(page);
  }

  /** From now on nothing is known of it; its tab may still be there. */
  forget(preview: Preview): void {
    clearTimeout(this.waiting.get(preview));
    this.waiting.delete(preview);
    const key = preview.document.uri.toString();
    if (this.shown.get(key) === preview) this.shown.delete(key);
    this.settle();
  }

  /**
   * Makes a preview's own change, which it does not follow like an edit of the user. False when it was not made; then
   * what the user edited meanwhile is followed after all.
   */
  async making(preview: Preview, make: () => Promise<boolean>): Promise<boolean> {
    this.taken = { preview, missed: false };
    const made = await make();
    const { missed } = this.taken;
    this.taken = undefined;
    if (made) this.forget(preview);
    else if (missed) this.renewSoon(preview);
    return made;
  }

  async close(preview: Preview): Promise<void> {
    this.forget(preview);
    await closeTabs((uri) => isOf(preview, uri));
  }

  dispose(): void {
    for (const timer of this.waiting.values()) clearTimeout(timer);
    for (const disposable of this.disposables) disposable.dispose();
  }

  /** The status bar has the counts; for less than a loss or harm a notification would cover the tab for nothing. */
  private tellIfGrave({ variant, document, change, offers, addresses }: Preview): void {
    if (variant === undefined || !isGrave(variant.report)) return;
    const press = (): unknown => vscode.commands.executeCommand('pegbox.makeItFit', addresses.after);
    const fit = offers.length > 0 ? [{ title: 'Make it fit…', press }] : [];
    tellReport(document.uri, variant.report, change.asked, this.pages, fit);
  }

  private textAt(uri: vscode.Uri): string | undefined {
    const preview = this.find(uri);
    if (preview === undefined) return undefined;
    return preview.addresses.before.toString() === uri.toString() ? preview.beforeText : preview.afterText;
  }

  private redraw({ addresses }: Preview): void {
    this.texts.fire(addresses.before);
    this.texts.fire(addresses.after);
  }

  /** Its document was edited: it is worked out again once the text rests. */
  private follow({ document, contentChanges }: vscode.TextDocumentChangeEvent): void {
    const preview = this.shown.get(document.uri.toString());
    if (preview === undefined || contentChanges.length === 0) return;
    preview.moved(contentChanges);
    if (this.taken?.preview === preview) this.taken.missed = true;
    else this.renewSoon(preview);
  }

  private renewSoon(preview: Preview): void {
    clearTimeout(this.waiting.get(preview));
    const renew = (): void => void this.renew(preview).catch((error: unknown) => refuse(String(error)));
    this.waiting.set(preview, setTimeout(renew, REST));
  }

  private async renew(preview: Preview): Promise<void> {
    this.waiting.delete(preview);
    const had = preview.trouble;
    await preview.renew();
    if (!this.has(preview)) return;
    this.settle();
    const name = fileName(preview.document.uri);
    if (preview.trouble === undefined) {
      if (preview.renewals > 1 && had === undefined) return;
      void vscode.window.showInformationMessage(`${name} was changed, so its preview was worked out again.`);
    } else if (preview.trouble !== had) {
      void vscode.window.showWarningMessage(
        `${name} was changed, and its preview cannot be worked out again: ${preview.trouble}`,
      );
    }
  }

  private has(preview: Preview): boolean {
    return this.shown.get(preview.document.uri.toString()) === preview;
  }

  /** Brings summary and title actions in line with the tabs; a preview whose tab was closed is over. */
  private settle(): void {
    for (const preview of [...this.shown.values()]) {
      const there = tabsShowing((uri) => isOf(preview, uri)).length > 0;
      if (there) preview.seen = true;
      else if (preview.seen) this.forget(preview);
    }
    const active = this.find();
    this.summary.show(active);
    const several = (active?.variants.length ?? 0) > 1;
    void vscode.commands.executeCommand('setContext', SEVERAL_WAYS, several);
    void vscode.commands.executeCommand('setContext', OFFERS, (active?.offers.length ?? 0) > 0);
  }
}

function isOf({ addresses }: Preview, uri: vscode.Uri): boolean {
  const address = uri.toString();
  return address === addresses.before.toString() || address === addresses.after.toString();
}

async function closeTabs(fits: (uri: vscode.Uri) => boolean): Promise<void> {
  const tabs = tabsShowing(fits);
  if (tabs.length > 0) await vscode.window.tabGroups.close(tabs, true);
}

/** An empty range where the first change begins: both texts are the same up to there. */
function firstChange({ variants }: Preview): Range {
  const starts = variants.flatMap(({ edits }) => edits.map(({ range }) => range.start));
  const start = starts.sort((one, other) => one.line - other.line)[0] ?? { line: 0, character: 0 };
  return { start, end: start };
}
