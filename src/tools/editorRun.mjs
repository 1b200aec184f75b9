// Runs the editor tests in one kind of real editor. Usage: node src/tools/editorRun.mjs web|node|desktop|packed
//   web      VS Code for the web: extensions in a web worker
//   node     a VS Code server: extensions in Node
//   desktop  a desktop VS Code, downloaded from its maker's server when it is not there yet
//   packed   as node, but with the packed .vsix installed as a user gets it
// Needs a build with tests (node src/tools/build.mjs --tests); packed needs pegbox.vsix too.
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { exitOnSignals } from './exitOnSignals.mjs';
import { electronRun } from './hosts/electronRun.mjs';
import { installPackage } from './hosts/installPackage.mjs';
import { keepInGit } from './hosts/keepInGit.mjs';
import { runInWebHost } from './hosts/runInWebHost.mjs';
import { inRoot, root } from './paths.mjs';

exitOnSignals();
const passing = mkdtempSync(path.join(tmpdir(), 'pegbox-tests-'));
const folder = path.join(passing, 'workspace'); // a copy: tests write there
cpSync(inRoot('test/editor/workspace'), folder, { recursive: true });
keepInGit(folder);
const nodeTests = inRoot('dist/test-node/index.js');

/** @type {Record<string, () => Promise<number>>} */
const kinds = {
  web: () => runInWebHost({ extension: root, tests: inRoot('dist/test-web/index.js'), folder }),
  node: () => electronRun({ extension: root, tests: nodeTests, folder }),
  desktop: () => electronRun({ extension: root, tests: nodeTests, folder, desktop: true }),
  packed: async () => {
    const extensionsDir = path.join(passing, 'extensions');
    await installPackage(inRoot('pegbox.vsix'), extensionsDir);
    // not the checkout: the installed one must answer
    return electronRun({ extension: inRoot('test/editor/bare'), tests: nodeTests, folder, extensionsDir });
  },
};

const kind = kinds[process.argv[2] ?? ''];
try {
  if (!kind) throw new Error(`Usage: node src/tools/editorRun.mjs ${Object.keys(kinds).join('|')}`);
  process.exitCode = await kind();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 2;
} finally {
  rmSync(passing, { recursive: true, force: true, maxRetries: 3 });
}
