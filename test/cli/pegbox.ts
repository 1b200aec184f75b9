import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import assert from 'node:assert/strict';

/** The program that is tested: the bundle as it is shipped. */
export const PROGRAM = process.env['PEGBOX_CLI'] ?? path.resolve('dist/cli.js');

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the program as a shell would. */
export function pegbox(args: readonly string[], stdin: string | Uint8Array = ''): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [PROGRAM, ...args]);
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    child.stdout.on('data', (chunk: Buffer) => out.push(chunk));
    child.stderr.on('data', (chunk: Buffer) => err.push(chunk));
    child.on('error', reject);
    child.on('close', (code) =>
      resolve({ code, out: Buffer.concat(out).toString(), err: Buffer.concat(err).toString() }),
    );
    child.stdin.on('error', () => undefined); // a command that reads no input may be gone before it is written
    child.stdin.end(stdin);
  });
}

/** The JSON that a command answers with, which must be all that stands on standard output. */
export async function json(args: readonly string[], stdin = ''): Promise<unknown> {
  const { code, out, err } = await pegbox([...args, '--json'], stdin);
  assert.equal(code, 0, err);
  return JSON.parse(out);
}

/** Expects exit code 2, nothing on standard output, and one line on standard error, which is returned. */
export async function unreadable(args: readonly string[], stdin: string | Uint8Array = ''): Promise<string> {
  const { code, out, err } = await pegbox(args, stdin);
  assert.equal(code, 2, `${args.join(' ')}: ${out}${err}`);
  assert.equal(out, '');
  assert.match(err, /^pegbox: [^\n]+\n$/);
  return err.slice('pegbox: '.length).trimEnd();
}

const folder = mkdtempSync(path.join(tmpdir(), 'pegbox-cli-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));

/** Writes a file that is gone after the tests, and gives its path. */
export function fileWith(name: string, contents: string | Uint8Array): string {
  const file = path.join(folder, name);
  writeFileSync(file, contents);
  return file;
}

/** A folder that is there while the tests run. */
export const FOLDER = folder;
