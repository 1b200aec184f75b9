import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { Refusal } from './refusal';

/** Folders that hold no one's songs. */
const PASSED_OVER = /^(?:\.|node_modules$)/;

/**
 * The tab files of folders and all folders in them, in the order of their paths; a file that is named stands for
 * itself. Folders behind symbolic links are not entered.
 * @throws {Refusal} for what is not there
 */
export async function tabFiles(names: readonly string[]): Promise<readonly string[]> {
  const found = new Set<string>();
  for (const name of names) for (const file of await filesAt(name)) found.add(file);
  return [...found];
}

async function filesAt(name: string): Promise<readonly string[]> {
  const info = await stat(name).catch(() => undefined);
  if (!info) throw new Refusal(`There is no folder ${name}; see how it is spelled.`);
  return info.isDirectory() ? filesIn(name) : [name];
}

async function filesIn(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  entries.sort((a, b) => (a.name < b.name ? -1 : 1));
  const found: string[] = [];
  for (const entry of entries) {
    const at = path.join(folder, entry.name);
    if (entry.isDirectory() && !PASSED_OVER.test(entry.name)) found.push(...(await filesIn(at)));
    else if (!entry.isDirectory() && entry.name.toLowerCase().endsWith('.pegbox')) found.push(at);
  }
  return found;
}
