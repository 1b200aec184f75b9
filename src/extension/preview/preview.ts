import type * as vscode from 'vscode';
import type { Range } from 'vscode-languageclient';
import type { ChangeVariant, MadeChange } from '../../server/requests';
import type { Offer } from '../../service/serviceApi';
import { WAYS_IN_PREVIEW, type RequestedChange } from '../requestedChange';
import { changedText } from './changedText';
import { movedRange, type TextReplaced } from './movedRange';
import type { PreviewAddresses } from './previewAddress';

const LOST = 'The bars that were to change are no longer there; run the command again.';

/**
 * A change that is shown and not made yet. It follows its document: `moved` after each edit of it, `renew` asks again.
 */
export class Preview {
  beforeText = '';
  /** Why there is nothing to take; undefined while there is. */
  trouble: string | undefined;
  /** How often it was worked out again. */
  renewals = 0;
  /** Its tab was there, so that it is over once the tab is gone. */
  seen = false;
  private answer: MadeChange | undefined;
  private texts: readonly string[] = [];
  private chosen = 0;
  private lost = false;
  private renewing: Promise<void> | undefined;

  constructor(
    public document: vscode.TextDocument,
    public range: Range | undefined,
    public change: RequestedChange,
    readonly addresses: PreviewAddresses,
    /** Called whenever one of the texts or what is said of them is another. */
    private readonly changed: (preview: Preview) => void,
  ) {}

  /** The way that is shown; undefined when there is trouble. */
  get variant(): ChangeVariant | undefined {
    return this.variants[this.chosen];
  }

  get variants(): readonly ChangeVariant[] {
    return this.answer ? [this.answer, ...(this.answer.alternatives ?? [])] : [];
  }

  /** Requests that leave out less than the shown way, which may be a few. */
  get offers(): readonly Offer[] {
    return this.variant?.report.offers ?? [];
  }

  /** The text as the shown way leaves it; the text as it is when there is trouble. */
  get afterText(): string {
    return this.texts[this.chosen] ?? this.beforeText;
  }

  /** Which of the ways is shown, from 1. */
  get number(): number {
    return this.chosen + 1;
  }

  /** The version of the document that the shown texts belong to. */
  get version(): number | undefined {
    return this.answer?.version;
  }

  next(): void {
    this.chosen = (this.chosen + 1) % Math.max(1, this.variants.length);
    this.changed(this);
  }

  /** Shows another change of the same passage. The sentence why not, when it cannot be made; the former stays then. */
  async instead(change: RequestedChange): Promise<string | undefined> {
    await this.renewing;
    const former = { change: this.change, chosen: this.chosen, renewals: this.renewals };
    this.change = change;
    this.chosen = 0;
    await this.renew();
    const trouble = this.trouble;
    if (trouble !== undefined) {
      this.change = former.change;
      this.chosen = former.chosen;
      await this.renew();
    }
    // The user asked for it; the text did not change.
    this.renewals = former.renewals;
    this.changed(this);
    return trouble;
  }

  /** The range goes where its text went. */
  moved(changes: readonly TextReplaced[]): void {
    if (this.range === undefined) return;
    const range = movedRange(this.range, changes);
    if (range === undefined) this.lost = true;
    else this.range = range;
  }

  /** Asks until the answer is for the document as it is; several calls at once wait for the same one. */
  renew(): Promise<void> {
    this.renewing ??= this.ask().finally(() => (this.renewing = undefined));
    return this.renewing;
  }

  private async ask(): Promise<void> {
    for (;;) {
      const { version } = this.document;
      const answer = this.lost ? { error: LOST } : await this.change.ask(this.range, WAYS_IN_PREVIEW);
      if (this.document.isClosed) return;
      const asked = 'error' in answer ? version : answer.version;
      if (this.document.version !== asked) continue;
      if (this.version !== undefined || this.trouble !== undefined) this.renewals += 1;
      this.answer = 'error' in answer ? undefined : answer;
      this.trouble = 'error' in answer ? answer.error : undefined;
      this.chosen = Math.min(this.chosen, Math.max(0, this.variants.length - 1));
      this.beforeText = this.document.getText();
      this.texts = this.variants.map(({ edits }) => changedText(this.document, edits));
      this.changed(this);
      return;
    }
  }
}
