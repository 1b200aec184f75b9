import type { pasteTab, readPlainTab, writePlainTab } from './core';
import type { Settings } from '../service/records';
import type { LanguageService } from '../service/serviceApi';
import type { ClientFacts } from './clientFacts';
import type { DiagnosticsPublisher } from './diagnosticsPublisher';
import type { DocumentStore, OpenDocument } from './documents';

/** What the handlers share once the language service is loaded. */
export interface Session {
  readonly service: LanguageService;
  readonly plainTab: {
    readonly read: typeof readPlainTab;
    readonly paste: typeof pasteTab;
    readonly write: typeof writePlainTab;
  };
  readonly store: DocumentStore;
  readonly publisher: DiagnosticsPublisher;
  readonly facts: ClientFacts;
  settings: Settings;
}

/**
 * Runs a handler: once the language service is there, in the order in which messages came. Whatever goes wrong is
 * logged under `name` and answered with `empty`, so that nothing a client sends reaches it as an exception. A handler
 * that takes long gives a promise.
 */
export type Guard = <T>(name: string, empty: T, run: (session: Session) => T | Promise<T>) => T | Promise<T>;

/** The open document, or undefined: a client may ask about one that it has closed already. */
export function documentOf(session: Session, identifier: { readonly uri: string }): OpenDocument | undefined {
  return session.store.get(identifier.uri);
}
