import type { Place, Range } from '../notation/tabDocument';
import type { Settings } from '../service/records';
import type { EditableDocument, LanguageService } from '../service/serviceApi';

/** A document that the client has open. */
export interface OpenDocument {
  readonly uri: string;
  readonly version: number;
  readonly document: EditableDocument;
}

/** One change as the client tells it; without a range the whole text is new. */
export interface TextChange {
  readonly range: Range | undefined;
  readonly text: string;
}

interface Entry extends OpenDocument {
  version: number;
  document: EditableDocument;
}

/**
 * The documents that the client has open, each kept up to date by the ranges that change. The client owns the text:
 * what it says is applied in its order, and the version is the client's.
 */
export class DocumentStore {
  private readonly entries = new Map<string, Entry>();

  constructor(
    private readonly service: LanguageService,
    private settings: Settings,
  ) {}

  open(uri: string, version: number, text: string): OpenDocument {
    const entry: Entry = { uri, version, document: this.service.open(text, this.settings) };
    this.entries.set(uri, entry);
    return entry;
  }

  /**
   * Applies changes one after the other, each to the text that the one before left. Ranges past the end are cut to
   * the text. Returns undefined for a document that is not open. When a change cannot be applied the document is
   * dropped, since its text would no longer be the client's, and the error is thrown on.
   */
  change(uri: string, version: number, changes: readonly TextChange[]): OpenDocument | undefined {
    const entry = this.entries.get(uri);
    if (!entry) return undefined;
    try {
      for (const change of changes) {
        if (change.range === undefined) {
          entry.document = this.service.open(change.text, this.settings);
        } else {
          entry.document.edit([{ range: clampRange(entry.document, change.range), newText: change.text }]);
        }
      }
    } catch (error) {
      this.entries.delete(uri);
      throw error;
    }
    entry.version = version;
    return entry;
  }

  close(uri: string): void {
    this.entries.delete(uri);
  }

  get(uri: string): OpenDocument | undefined {
    return this.entries.get(uri);
  }

  all(): Iterable<OpenDocument> {
    return this.entries.values();
  }

  /** Every open document takes the new settings. */
  configure(settings: Settings): void {
    this.settings = settings;
    for (const entry of this.entries.values()) entry.document.configure(settings);
  }
}

/**
 * The place as it lies in the text: a line past the end is the end of the text, a character past the end of its line
 * the end of that line, as the protocol asks; what is no whole number from 0 counts as 0.
 */
export function clampPlace(document: EditableDocument, place: Place): Place {
  const last = document.lineCount - 1;
  const line = toCount(place.line);
  if (line > last) return { line: last, character: document.line(last).text.length };
  return { line, character: Math.min(toCount(place.character), document.line(line).text.length) };
}

/** Both ends cut to the text, the earlier one first. */
export function clampRange(document: EditableDocument, range: Range): Range {
  const start = clampPlace(document, range.start);
  const end = clampPlace(document, range.end);
  const turned = end.line < start.line || (end.line === start.line && end.character < start.character);
  return turned ? { start: end, end: start } : { start, end };
}

function toCount(value: number): number {
  return value > 0 ? Math.floor(value) : 0;
}
