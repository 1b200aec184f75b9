import { spawn, type ChildProcess } from 'node:child_process';
import path from 'node:path';
import {
  ConfigurationRequest,
  createMessageConnection,
  ExitNotification,
  InitializedNotification,
  LogMessageNotification,
  PublishDiagnosticsNotification,
  RegistrationRequest,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
  type ClientCapabilities,
  type Diagnostic,
  type InitializeResult,
  type MessageConnection,
  type PublishDiagnosticsParams,
  type Range,
} from 'vscode-languageserver/node';

/** The server that is tested: the bundle as it is shipped. */
export const SERVER = process.env['PEGBOX_SERVER'] ?? path.resolve('dist/server.js');

export interface StartOptions {
  readonly initializationOptions?: unknown;
  readonly capabilities?: ClientCapabilities;
  /** What the client answers when the server asks for the section `pegbox`. */
  readonly settings?: unknown;
}

interface Waiting {
  readonly fits: (params: PublishDiagnosticsParams) => boolean;
  readonly take: (params: PublishDiagnosticsParams) => void;
}

/** Servers that run; a test that fails half-way leaves one, which would keep the test run alive. */
const running = new Set<ChildProcess>();
after(() => {
  for (const child of running) child.kill();
});

/** A client of the language server over standard input and output, in a process of its own. */
export class TestClient {
  readonly published: PublishDiagnosticsParams[] = [];
  readonly log: string[] = [];
  readonly registered: string[] = [];
  settings: unknown;
  result: InitializeResult | undefined;
  private waiting: Waiting[] = [];
  private readonly versions = new Map<string, number>();

  private constructor(
    readonly child: ChildProcess,
    readonly connection: MessageConnection,
    readonly exitCode: Promise<number | null>,
  ) {}

  /** Spawns the server and talks to it, without `initialize`. */
  static spawn(): TestClient {
    const child = spawn(process.execPath, [SERVER, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
    running.add(child);
    const connection = createMessageConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    );
    const exitCode = new Promise<number | null>((resolve) =>
      child.once('exit', (code) => {
        running.delete(child);
        resolve(code);
      }),
    );
    const client = new TestClient(child, connection, exitCode);
    connection.onNotification(PublishDiagnosticsNotification.type, (params) => client.take(params));
    connection.onNotification(LogMessageNotification.type, ({ message }) => void client.log.push(message));
    connection.onRequest(ConfigurationRequest.type, ({ items }) => items.map(() => client.settings ?? null));
    connection.onRequest(RegistrationRequest.type, ({ registrations }) => {
      client.registered.push(...registrations.map(({ method }) => method));
    });
    connection.listen();
    return client;
  }

  static async start(options: StartOptions = {}): Promise<TestClient> {
    const client = TestClient.spawn();
    client.settings = options.settings;
    client.result = await client.request<InitializeResult>('initialize', {
      processId: process.pid,
      workspaceFolders: null,
      capabilities: options.capabilities ?? {},
      initializationOptions: options.initializationOptions,
    });
    await client.connection.sendNotification(InitializedNotification.type, {});
    return client;
  }

  /** Ends the server as a client should, and returns its exit code. */
  async stop(): Promise<number | null> {
    await this.connection.sendRequest(ShutdownRequest.type);
    await this.connection.sendNotification(ExitNotification.type);
    const code = await this.exitCode;
    this.connection.dispose();
    return code;
  }

  request<T>(method: string, params: unknown): Promise<T> {
    return this.connection.sendRequest<T>(method, params);
  }

  /** Sends a notification in whatever shape, also a wrong one. */
  notify(method: string, params: unknown): Promise<void> {
    return this.connection.sendNotification(method, params);
  }

  /** Sends notifications in one write, so that the server finds them all in its queue. */
  notifyTogether(messages: readonly { readonly method: string; readonly params: unknown }[]): void {
    const frames = messages.map((message) => {
      const body = JSON.stringify({ jsonrpc: '2.0', ...message });
      return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
    });
    this.child.stdin?.write(frames.join(''));
  }

  open(uri: string, text: string): Promise<void> {
    this.versions.set(uri, 1);
    return this.notify('textDocument/didOpen', {
      textDocument: { uri, languageId: 'pegbox', version: 1, text },
    });
  }

  /** Opens a document and waits for its first diagnostics. */
  async opened(uri: string, text: string): Promise<readonly Diagnostic[]> {
    // Not the empty list, without a version, of a document that was closed before.
    const first = this.next(uri, ({ version }) => version === 1);
    await this.open(uri, text);
    return (await first).diagnostics;
  }

  /** Sends changes in the order given; returns the version that the document has then. */
  async change(uri: string, ...contentChanges: { range?: Range; text: string }[]): Promise<number> {
    const version = (this.versions.get(uri) ?? 0) + 1;
    this.versions.set(uri, version);
    await this.notify('textDocument/didChange', { textDocument: { uri, version }, contentChanges });
    return version;
  }

  close(uri: string): Promise<void> {
    return this.notify('textDocument/didClose', { textDocument: { uri } });
  }

  /** The next publication for a document that fits; only such as come after this call count. */
  next(
    uri: string,
    fits: (params: PublishDiagnosticsParams) => boolean = () => true,
  ): Promise<PublishDiagnosticsParams> {
    return new Promise((take) => {
      this.waiting.push({ fits: (params) => params.uri === uri && fits(params), take });
    });
  }

  private take(params: PublishDiagnosticsParams): void {
    this.published.push(params);
    this.waiting = this.waiting.filter(({ fits, take }) => {
      if (!fits(params)) return true;
      take(params);
      return false;
    });
  }
}

/** A range on one line, or from one place to another. */
export function range(line: number, from: number, toLine: number, to: number): Range {
  return { start: { line, character: from }, end: { line: toLine, character: to } };
}
