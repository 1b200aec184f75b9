import { spawn, type ChildProcessByStdio } from 'node:child_process';
import path from 'node:path';
import type { Readable, Writable } from 'node:stream';
import type { Diagnostic } from 'vscode-languageserver';
import type { BenchText, Key } from './texts';

/** The servers that are measured, all in one shape; `src/tools/bench.mjs` bundles the peers with our own options. */
export const SERVERS = {
  pegbox: process.env['PEGBOX_SERVER'] ?? path.resolve('dist/server.js'),
  json: path.resolve('dist/bench/jsonServer.js'),
  css: path.resolve('dist/bench/cssServer.js'),
  nothing: path.resolve('dist/bench/nothingServer.js'),
} as const;

export type ServerName = keyof typeof SERVERS;

/** How the table names them. */
export const SERVER_TITLES: Readonly<Record<ServerName, string>> = {
  pegbox: 'Pegbox',
  json: 'JSON',
  css: 'CSS',
  nothing: 'does nothing',
};

const URI = 'file:///bench/document';
/** Milliseconds after which an answer is not waited for any more. */
const PATIENCE = 30_000;
const HEADER_END = Buffer.from('\r\n\r\n');

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: { readonly version?: number; readonly diagnostics?: readonly Diagnostic[] };
  readonly result?: unknown;
  readonly error?: { readonly message: string };
}

/**
 * A server in a process of its own, spoken to over standard input and output with as little as that takes, so that
 * what is measured is the server and not the client.
 */
export class ServerProcess {
  private readonly child: ChildProcessByStdio<Writable, Readable, null>;
  private rest: Buffer = Buffer.alloc(0);
  private nextId = 1;
  private version = 0;
  private waiting: { fits: (message: Message) => boolean; take: (message: Message) => void } | undefined;

  constructor(private readonly name: ServerName) {
    this.child = spawn(process.execPath, [SERVERS[name], '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
    this.child.stdout.on('data', (data: Buffer) => this.take(data));
    this.child.once('exit', (code) => {
      if (this.waiting) throw new Error(`The server ${name} ended with ${code} before it answered.`);
    });
  }

  async initialize(): Promise<void> {
    await this.request('initialize', { processId: process.pid, rootUri: null, capabilities: {} });
    this.notify('initialized', {});
  }

  /** Opens the document and waits for its first diagnostics. */
  async open({ languageId, text }: BenchText): Promise<readonly Diagnostic[]> {
    this.version = 1;
    const published = this.published();
    this.notify('textDocument/didOpen', { textDocument: { uri: URI, languageId, version: 1, text } });
    return published;
  }

  /** Sends one key and waits for the diagnostics of the text that it leaves. */
  async type({ line, character, text }: Key): Promise<readonly Diagnostic[]> {
    this.version += 1;
    const published = this.published();
    const range = { start: { line, character }, end: { line, character: character + 1 } };
    this.notify('textDocument/didChange', {
      textDocument: { uri: URI, version: this.version },
      contentChanges: [{ range, text }],
    });
    return published;
  }

  async hover(position: { readonly line: number; readonly character: number }): Promise<unknown> {
    return this.request('textDocument/hover', { textDocument: { uri: URI }, position });
  }

  async stop(): Promise<void> {
    await this.request('shutdown', undefined);
    const exited = new Promise<void>((resolve) => this.child.once('exit', () => resolve()));
    this.notify('exit', undefined);
    await exited;
  }

  private async published(): Promise<readonly Diagnostic[]> {
    const { version } = this;
    const message = await this.next(
      ({ method, params }) => method === 'textDocument/publishDiagnostics' && params?.version === version,
    );
    return message.params?.diagnostics ?? [];
  }

  private async request(method: string, params: unknown): Promise<unknown> {
    const id = this.nextId++;
    const answered = this.next((message) => message.id === id && message.method === undefined);
    this.send({ id, method, params });
    const { result, error } = await answered;
    if (error) throw new Error(`${method}: ${error.message}`);
    return result;
  }

  private notify(method: string, params: unknown): void {
    this.send({ method, params });
  }

  private send(message: object): void {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    this.child.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  }

  private next(fits: (message: Message) => boolean): Promise<Message> {
    return new Promise((resolve, reject) => {
      const late = setTimeout(() => {
        this.child.kill();
        reject(new Error(`The server ${this.name} has not answered for ${PATIENCE / 1000} seconds.`));
      }, PATIENCE);
      const take = (message: Message): void => {
        clearTimeout(late);
        resolve(message);
      };
      this.waiting = { fits, take };
    });
  }

  private take(data: Buffer): void {
    this.rest = this.rest.length === 0 ? data : Buffer.concat([this.rest, data]);
    for (;;) {
      const headerEnd = this.rest.indexOf(HEADER_END);
      if (headerEnd < 0) return;
      const length = Number(/Content-Length: (\d+)/i.exec(this.rest.toString('latin1', 0, headerEnd))?.[1]);
      const end = headerEnd + HEADER_END.length + length;
      if (!(this.rest.length >= end)) return;
      const message = JSON.parse(this.rest.toString('utf8', headerEnd + HEADER_END.length, end)) as Message;
      this.rest = this.rest.subarray(end);
      const { waiting } = this;
      if (!waiting?.fits(message)) continue;
      this.waiting = undefined;
      waiting.take(message);
    }
  }
}
