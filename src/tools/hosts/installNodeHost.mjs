// The Node host: a VS Code server whose extensions run in a Node process, trimmed to what needs no compiler.
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { npm } from '../run.mjs';
import { cached } from './cached.mjs';
import { loggerSource } from './plainLogger.mjs';

const version = '4.100.3'; // VS Code 1.100, the lowest that package.json's engines.vscode allows; runs on Node 20

/** Native or unused parts of the server: leaving them out leaves nothing to compile. */
const leftOut = [
  '@devcontainers/cli',
  '@vscode/deviceid',
  '@vscode/spdlog',
  '@vscode/windows-process-tree',
  '@vscode/windows-registry',
  'kerberos',
  'native-watchdog',
];

/** @returns {Promise<string>} the server's folder, which holds `out/server-main.js` */
export async function installNodeHost() {
  const dir = await cached({
    name: `node-${version}`,
    what: `the VS Code server (code-server ${version})`,
    holds: path.join(serverFolder, 'out/server-main.js'),
    fill: async (into) => {
      await npm(['install', `code-server@${version}`], into);
      await trim(path.join(into, serverFolder));
    },
  });
  return path.join(dir, serverFolder);
}

const serverFolder = 'node_modules/code-server/lib/vscode';

/** @param {string} server */
async function trim(server) {
  const file = path.join(server, 'package.json');
  const manifest = JSON.parse(readFileSync(file, 'utf8'));
  for (const name of leftOut) delete manifest.dependencies[name];
  delete manifest.overrides;
  writeFileSync(file, JSON.stringify(manifest, null, 2));
  for (const lock of ['npm-shrinkwrap.json', 'package-lock.json']) {
    const from = path.join(server, lock);
    if (existsSync(from)) renameSync(from, `${from}.orig`); // it would bring the left-out parts back
  }
  await npm(['install', '--omit=dev'], server);
  standIn(server, '@vscode/spdlog', loggerSource);
  standIn(server, 'native-watchdog', 'exports.start = () => {};\n');
}

/**
 * Puts plain JavaScript in the place of a native package.
 * @param {string} server
 * @param {string} name
 * @param {string} source
 */
function standIn(server, name, source) {
  const dir = path.join(server, 'node_modules', name);
  mkdirSync(dir, { recursive: true });
  writeFileSync(path.join(dir, 'package.json'), JSON.stringify({ name, version: '0.0.0', main: 'index.js' }));
  writeFileSync(path.join(dir, 'index.js'), source);
}
