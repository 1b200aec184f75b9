import { readFile } from 'node:fs/promises';
import { Refusal } from './refusal';

const BOM = '\uFEFF';

/** A text that was read, without its byte order mark. */
export interface TextFile {
  /** As the user wrote it; `-` for standard input. */
  readonly name: string;
  readonly text: string;
  /** The byte order mark, or nothing: to be put before a text that replaces this one. */
  readonly mark: string;
}

/**
 * Reads a file, or standard input for `-`.
 * @throws {Refusal} for what is not there, may not be read, is a directory, or is not UTF-8
 */
export async function readTextFile(name: string): Promise<TextFile> {
  const bytes = name === '-' ? await readStandardInput() : await readBytes(name);
  const text = decoded(name, bytes);
  return text.startsWith(BOM) ? { name, text: text.slice(BOM.length), mark: BOM } : { name, text, mark: '' };
}

async function readBytes(name: string): Promise<Uint8Array> {
  try {
    return await readFile(name);
  } catch (error) {
    throw new Refusal(whyUnread(name, error));
  }
}

async function readStandardInput(): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  try {
    for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
  } catch (error) {
    throw new Refusal(whyUnread('Standard input', error));
  }
  return Buffer.concat(chunks);
}

function whyUnread(name: string, error: unknown): string {
  const code = error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;
  if (code === 'ENOENT') return `There is no file ${name}; see how it is spelled and in which folder it is.`;
  if (code === 'ENOTDIR') return `There is no file ${name}, since a part of its path is not a folder.`;
  if (code === 'EISDIR') return `${name} is a directory; name the files in it, such as ${name}/*.pegbox.`;
  if (code === 'EACCES' || code === 'EPERM') return `${name} may not be read: its permissions forbid it.`;
  return `${name} cannot be read (${code ?? String(error)}).`;
}

function decoded(name: string, bytes: Uint8Array): string {
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  try {
    return decoder.decode(bytes);
  } catch {
    const file = name === '-' ? 'Standard input' : name;
    throw new Refusal(`${file} is not UTF-8: line ${badLine(bytes)} cannot be read; save it as UTF-8.`);
  }
}

/** The line, from 1, of the first bytes that are not UTF-8: no sequence of UTF-8 goes across a line feed. */
function badLine(bytes: Uint8Array): number {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let line = 1;
  for (let start = 0; start < bytes.length; line++) {
    const feed = bytes.indexOf(10, start);
    const end = feed < 0 ? bytes.length : feed + 1;
    try {
      decoder.decode(bytes.subarray(start, end));
    } catch {
      return line;
    }
    start = end;
  }
  return line;
}
