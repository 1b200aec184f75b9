#!/usr/bin/env node
// Stands in for the VS Code desktop program: @vscode/test-electron gets it as vscodeExecutablePath, starts it
// with the desktop's arguments, and the tests run in the Node host instead.
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { exitOnSignals } from '../exitOnSignals.mjs';
import { runInNodeHost } from './runInNodeHost.mjs';

/** @type {Map<string, string[]>} */
const named = new Map();
/** @type {string[]} */
const plain = [];
for (const argument of process.argv.slice(2)) {
  const [, name, value = ''] = /^--([^=]+)(?:=(.*))?$/s.exec(argument) ?? [];
  if (name) named.set(name, [...(named.get(name) ?? []), value]);
  else plain.push(argument);
}
const last = (/** @type {string} */ name) => named.get(name)?.at(-1);

const tests = last('extensionTestsPath');
const extensions = (named.get('extensionDevelopmentPath') ?? []).map((place) => path.resolve(place));
if (!tests || extensions.length === 0) {
  console.error('codeShim: needs --extensionDevelopmentPath=… and --extensionTestsPath=…');
  process.exit(2);
}
const folder = plain.map((place) => path.resolve(place)).find((place) => existsSync(place));
const extensionsDir = named.has('disable-extensions') ? undefined : last('extensions-dir');
const settingsFile = path.join(last('user-data-dir') ?? '', 'User/settings.json');

exitOnSignals();
process.exitCode = await runInNodeHost({
  extensions,
  // the desktop resolves a folder or a name without ending; a page wants the file
  tests: createRequire(import.meta.url).resolve(path.resolve(tests)),
  ...(folder && { folder }),
  ...(extensionsDir && { extensionsDir: path.resolve(extensionsDir) }),
  ...(existsSync(settingsFile) && { settings: JSON.parse(readFileSync(settingsFile, 'utf8')) }),
});
