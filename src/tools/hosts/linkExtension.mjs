import { mkdirSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import { inRoot } from '../paths.mjs';

/** What the extension consists of once it is built; `.vscodeignore` packs the same. */
const PARTS = ['package.json', 'dist', 'syntaxes', 'snippets', 'media'];

/**
 * The extension under a path of its own. The editor prefers the themes that lie below the extension it develops, and
 * below the project lies the editor itself (.hosts).
 * @param {string} into a folder in which it is made
 * @returns {string} its path
 */
export function linkExtension(into) {
  const place = path.join(into, 'extension');
  mkdirSync(place);
  for (const name of PARTS) symlinkSync(inRoot(name), path.join(place, name));
  return place;
}
