import type * as lsp from 'vscode-languageserver';
import type { Settings } from '../service/records';
import type { LanguageService } from '../service/serviceApi';
import { cutDiagnostics, MORE_CODE } from './diagnosticsList';
import type { DocumentStore, TextChange } from './documents';
import { toDiagnostic } from './protocolConverter';

/** Runs a task after the messages that wait already: `setImmediate`, or its like in a worker. */
export type Later = (task: () => void) => void;

/** After so many turns of the queue diagnostics are published even while changes keep coming. */
const MOST_TURNS = 16;

interface Waiting {
  version: number;
  /** Whether an edit touched a line that carries a diagnostic, so that the client may have lost its mark. */
  touched: boolean;
}

interface Published {
  readonly json: string;
  readonly lines: readonly { readonly from: number; readonly to: number }[];
}

export interface PublisherOptions {
  readonly store: DocumentStore;
  readonly service: LanguageService;
  readonly settings: () => Settings;
  readonly helpLink: string | undefined;
  readonly send: (params: lsp.PublishDiagnosticsParams) => void;
  readonly later: Later;
  readonly failed: (error: unknown) => void;
}

/**
 * Tells the client the diagnostics after each change. There is no waiting time: changes that already stand in the
 * queue are taken together, nothing else. What equals the last publication is not sent again.
 */
export class DiagnosticsPublisher {
  private readonly waiting = new Map<string, Waiting>();
  private readonly published = new Map<string, Published>();

  constructor(private readonly options: PublisherOptions) {}

  /** The document is new, or its settings are: everything is worked out again. */
  renew(uri: string, version: number): void {
    this.schedule(uri, version, true);
  }

  changed(uri: string, version: number, changes: readonly TextChange[]): void {
    this.schedule(uri, version, this.touches(uri, changes));
  }

  /** Clears what the client shows for a document that is closed. */
  closed(uri: string): void {
    this.waiting.delete(uri);
    this.published.delete(uri);
    this.options.send({ uri, diagnostics: [] });
  }

  private schedule(uri: string, version: number, touched: boolean): void {
    const waiting = this.waiting.get(uri);
    if (waiting) {
      waiting.version = version;
      waiting.touched ||= touched;
      return;
    }
    this.waiting.set(uri, { version, touched });
    // The first turn never publishes: the library takes one message a turn, and the next one is behind this task.
    this.options.later(() => this.run(uri, undefined, MOST_TURNS));
  }

  /** Publishes, unless a change came in meanwhile: then the queue is asked again, a few times at most. */
  private run(uri: string, version: number | undefined, turns: number): void {
    const waiting = this.waiting.get(uri);
    if (!waiting) return;
    if (waiting.version !== version && turns > 0) {
      this.options.later(() => this.run(uri, waiting.version, turns - 1));
      return;
    }
    this.waiting.delete(uri);
    try {
      this.publish(uri, waiting.touched);
    } catch (error) {
      this.options.failed(error);
    }
  }

  private publish(uri: string, evenIfEqual: boolean): void {
    const { store, service, settings, helpLink, send } = this.options;
    const open = store.get(uri);
    if (!open) return;
    const found = cutDiagnostics(service.diagnostics(open.document, settings()));
    const diagnostics = found.map((item) =>
      toDiagnostic(item, item.code === MORE_CODE ? undefined : helpLink),
    );
    const json = JSON.stringify(diagnostics);
    const last = this.published.get(uri);
    if (!evenIfEqual && last?.json === json) return;
    const lines = found.map(({ range }) => ({ from: range.start.line, to: range.end.line }));
    this.published.set(uri, { json, lines });
    send({ uri, version: open.version, diagnostics });
  }

  /**
   * An editor moves its marks with the text and may lose one that is typed over, so an equal list must be sent again
   * when a marked line was edited.
   */
  private touches(uri: string, changes: readonly TextChange[]): boolean {
    const marked = this.published.get(uri)?.lines ?? [];
    if (marked.length === 0) return false;
    return changes.some(({ range }) => {
      if (range === undefined) return true;
      return marked.some((line) => line.from <= range.end.line && range.start.line <= line.to);
    });
  }
}
