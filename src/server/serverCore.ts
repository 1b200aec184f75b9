import {
  CodeLensRefreshRequest,
  DidChangeConfigurationNotification,
  type Connection,
} from 'vscode-languageserver';
import { initializeResult } from './capabilities';
import { registerChangeRequests } from './changeRequests';
import { readClientFacts, type ClientFacts } from './clientFacts';
import { DiagnosticsPublisher, type Later } from './diagnosticsPublisher';
import { DocumentStore } from './documents';
import { registerLanguageFeatures } from './languageFeatures';
import { registerLibraryRequests } from './libraryRequests';
import { fromContentChange } from './protocolConverter';
import { registerPlainTabRequests } from './plainTabRequests';
import { registerSectionLenses } from './sectionLenses';
import type { Session, Guard } from './session';
import { readSettings } from './settingsReader';
import { registerSuitRequest } from './suitRequest';
import { registerTellRequests } from './tellRequests';

/**
 * Joins a connection to the language service. The service is loaded once the client has the answer to
 * `initialize`; messages that come before it is there wait for it in their order.
 */
export function startServer(connection: Connection, later: Later): void {
  let session: Session | undefined;
  let loading: Promise<Session> | undefined;
  let facts: ClientFacts | undefined;

  const log = (text: string): void => connection.console.error(text);
  const failed = (name: string, error: unknown): void =>
    log(
      `Pegbox could not finish ${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
    );

  const load = (): Promise<Session> => {
    loading ??= loadSession(connection, facts ?? readClientFacts({ ...NO_PARAMS }, log), later, failed).then(
      (loaded) => (session = loaded),
    );
    return loading;
  };

  const guard: Guard = (name, empty, run) => {
    const fail = (error: unknown): typeof empty => {
      failed(name, error);
      return empty;
    };
    const attempt = (ready: Session): typeof empty | Promise<typeof empty> => {
      try {
        const answer = run(ready);
        return answer instanceof Promise ? answer.catch(fail) : answer;
      } catch (error) {
        return fail(error);
      }
    };
    return session ? attempt(session) : load().then(attempt, fail);
  };

  connection.onInitialize((params) => {
    facts = readClientFacts(params, log);
    return initializeResult(facts);
  });

  connection.onInitialized(() => {
    // Not before: the library writes an answer some turns of the queue after it is given.
    load().catch((error: unknown) => failed('loading', error));
    if (facts?.configurationNews) {
      connection.client
        .register(DidChangeConfigurationNotification.type, { section: 'pegbox' })
        .catch((error: unknown) => failed('asking for news of settings', error));
    }
    if (facts?.configuration) pullSettings();
  });

  connection.onDidChangeConfiguration((params) => {
    if (facts?.configuration) pullSettings();
    else
      void guard('a change of settings', undefined, (ready) =>
        configure(ready, entry(entry(params, 'settings'), 'pegbox')),
      );
  });

  connection.onDidOpenTextDocument((params) => {
    void guard('opening', undefined, ({ store, publisher }) => {
      const { uri, version, text } = params.textDocument;
      store.open(uri, version, text);
      publisher.renew(uri, version);
    });
  });

  connection.onDidChangeTextDocument((params) => {
    void guard('an edit', undefined, ({ store, publisher }) => {
      const { uri, version } = params.textDocument;
      const changes = params.contentChanges.map(fromContentChange);
      if (store.change(uri, version, changes)) publisher.changed(uri, version, changes);
      else log(`An edit of ${uri} is passed over: the document is not open.`);
    });
  });

  connection.onDidCloseTextDocument((params) => {
    void guard('closing', undefined, ({ store, publisher }) => {
      store.close(params.textDocument.uri);
      publisher.closed(params.textDocument.uri);
    });
  });

  registerLanguageFeatures(connection, guard);
  registerChangeRequests(connection, guard);
  registerTellRequests(connection, guard);
  registerSectionLenses(connection, guard);
  registerLibraryRequests(connection, guard);
  registerPlainTabRequests(connection, guard);
  registerSuitRequest(connection, guard, later);
  connection.listen();

  function pullSettings(): void {
    connection.workspace
      .getConfiguration('pegbox')
      .then((value: unknown) => guard('a change of settings', undefined, (ready) => configure(ready, value)))
      .catch((error: unknown) => failed('reading the settings', error));
  }

  function configure(ready: Session, value: unknown): void {
    const settings = readSettings(value, log);
    if (JSON.stringify(settings) === JSON.stringify(ready.settings)) return;
    ready.settings = settings;
    ready.store.configure(settings);
    for (const { uri, version } of ready.store.all()) ready.publisher.renew(uri, version);
    if (ready.facts.refreshInlayHints) void connection.languages.inlayHint.refresh().catch(ignore);
    if (ready.facts.refreshLenses) void connection.sendRequest(CodeLensRefreshRequest.type).catch(ignore);
    if (ready.facts.refreshTokens) void connection.languages.semanticTokens.refresh().catch(ignore);
  }
}

const NO_PARAMS = { processId: null, rootUri: null, capabilities: {}, workspaceFolders: null };

/** A refresh is a courtesy: a client that cannot take it asks again by itself. */
function ignore(): void {
  return;
}

/** What an object holds under a name; undefined for anything else. */
function entry(value: unknown, name: string): unknown {
  if (typeof value !== 'object' || value === null) return undefined;
  return Object.entries(value).find(([key]) => key === name)?.[1];
}

async function loadSession(
  connection: Connection,
  facts: ClientFacts,
  later: Later,
  failed: (name: string, error: unknown) => void,
): Promise<Session> {
  const { createLanguageService, pasteTab, readPlainTab, writePlainTab } = await import('./core');
  const service = createLanguageService();
  const store = new DocumentStore(service, facts.settings);
  const session: Session = {
    service,
    plainTab: { read: readPlainTab, paste: pasteTab, write: writePlainTab },
    store,
    facts,
    settings: facts.settings,
    publisher: new DiagnosticsPublisher({
      store,
      service,
      settings: () => session.settings,
      helpLink: facts.helpLink,
      send: (params) => void connection.sendDiagnostics(params),
      later,
      failed: (error) => failed('diagnostics', error),
    }),
  };
  return session;
}
