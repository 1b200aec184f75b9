// Tests the pages of the extension in a real browser, in one kind of real editor.
// Usage: node src/tools/viewsRun.mjs web|node [--grep TEXT]
//   web   VS Code for the web: extensions in a web worker
//   node  a VS Code server: extensions in Node
// Needs a build (node src/tools/build.mjs). The tests stand in test/views; a page to test is a row of views.mjs there.
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import Mocha from 'mocha';
import { exitOnSignals } from './exitOnSignals.mjs';
import { inRoot } from './paths.mjs';

exitOnSignals();
const kind = process.argv[2];
const grep = process.argv[process.argv.indexOf('--grep') + 1];
const passing = mkdtempSync(path.join(tmpdir(), 'pegbox-views-'));
const folder = path.join(passing, 'workspace'); // a copy: tests write there
cpSync(inRoot('test/views/workspace'), folder, { recursive: true });
process.env['PEGBOX_VIEWS_HOST'] = kind;
process.env['PEGBOX_VIEWS_FOLDER'] = folder;

try {
  if (kind !== 'web' && kind !== 'node') throw new Error('Usage: node src/tools/viewsRun.mjs web|node');
  const mocha = new Mocha({
    ui: 'bdd',
    timeout: 240_000 /* a test waits for several things, each with patience */,
    forbidOnly: true,
    reporter: inRoot('src/tools/mochaReporter.cjs'),
    ...(process.argv.includes('--grep') && grep && { grep }),
  });
  for (const name of readdirSync(inRoot('test/views')))
    if (name.endsWith('.test.mjs')) mocha.addFile(inRoot('test/views', name));
  await mocha.loadFilesAsync();
  const failures = await new Promise((resolve) => void mocha.run(resolve));
  process.exitCode = failures > 0 ? 1 : 0;
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 2;
} finally {
  rmSync(passing, { recursive: true, force: true, maxRetries: 3 });
}
