import type * as vscode from 'vscode';
import type { Range } from 'vscode-languageclient';
import type { ChangeVariant, MadeChange } from '../../server/requests';
import type { RequestedChange } from '../requestedChange';
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
    readonly change: RequestedChange,
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
      const answer = this.lost ? { error: LOST } : await this.change.ask(this.range);
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
