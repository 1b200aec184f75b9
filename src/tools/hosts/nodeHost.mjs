// Starts the VS Code server of the Node host, and says under which address a page finds what.
import { spawn } from 'node:child_process';
import { createWriteStream, existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import net from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { installNodeHost } from './installNodeHost.mjs';
import { quietSettings } from './quietSettings.mjs';

/** @typedef {{ port: number, stop: () => Promise<void>, ended: Promise<number> }} NodeHost */

/**
 * Starts the server on this machine's loopback address and waits until it listens.
 * @param {object} [options]
 * @param {string} [options.dataDir] the profile: settings, state, logs; default a passing one
 * @param {string} [options.extensionsDir] default inside the profile
 * @param {Record<string, unknown>} [options.settings] the user's settings; not written over a file that is there
 * @param {string} [options.token] a secret that the address must carry; default none
 * @param {number} [options.port] default a free one
 * @param {boolean} [options.forTests] lets pages name extensions and tests to load
 * @returns {Promise<NodeHost>}
 */
export async function startNodeHost(options = {}) {
  const { settings = {}, token, forTests = false } = options;
  const server = await installNodeHost();
  const passing = options.dataDir === undefined;
  const dataDir = options.dataDir ?? mkdtempSync(path.join(tmpdir(), 'pegbox-host-'));
  writeSettings(dataDir, settings);
  const port = options.port ?? (await freePort());
  const args = ['out/server-main.js', '--host', '127.0.0.1', '--port', String(port)];
  args.push('--server-data-dir', dataDir, '--accept-server-license-terms', '--disable-workspace-trust');
  args.push(
    '--telemetry-level',
    'off',
    '--disable-telemetry',
    '--disable-experiments',
    '--disable-update-check',
  );
  args.push(...(token ? ['--connection-token', token] : ['--without-connection-token']));
  if (options.extensionsDir) args.push('--extensions-dir', options.extensionsDir);
  if (forTests) args.push('--enable-smoke-test-driver'); // without it the server ignores development paths
  const child = spawn(process.execPath, args, {
    cwd: server,
    env: { ...process.env, EXTENSIONS_GALLERY: '{"serviceUrl":""}' },
    stdio: ['ignore', 'pipe', 'pipe'],
    detached: true, // a group of its own, so that its children end with it
  });
  const kill = (/** @type {NodeJS.Signals} */ signal) => {
    try {
      process.kill(-(child.pid ?? 0), signal);
    } catch {
      child.kill(signal); // no groups on Windows, or it has ended
    }
  };
  const killNow = () => kill('SIGKILL');
  process.once('exit', killNow); // never leave the server behind
  const ended = new Promise((/** @type {(code: number) => void} */ resolve) =>
    child.once('exit', (code) => resolve(code ?? 1)),
  );
  const log = createWriteStream(path.join(dataDir, 'server.log'));
  child.stdout.pipe(log);
  child.stderr.pipe(log);
  await listening(child);
  const stop = async () => {
    kill('SIGTERM');
    const late = setTimeout(killNow, 3000);
    await ended;
    clearTimeout(late);
    process.off('exit', killNow);
    if (passing) rmSync(dataDir, { recursive: true, force: true, maxRetries: 3 });
  };
  return { port, stop, ended };
}

/**
 * @param {string} dataDir
 * @param {Record<string, unknown>} settings
 */
function writeSettings(dataDir, settings) {
  const file = path.join(dataDir, 'data/User/settings.json'); // this server keeps the user's settings here
  if (existsSync(file)) return;
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, JSON.stringify({ ...quietSettings, ...settings }, null, 2));
}

/** @param {import('node:child_process').ChildProcessByStdio<null, import('node:stream').Readable, import('node:stream').Readable>} child */
function listening(child) {
  return new Promise((/** @type {(value?: undefined) => void} */ resolve, reject) => {
    let output = '';
    const timer = setTimeout(
      () => reject(new Error(`The VS Code server did not start in 60 s:\n${output}`)),
      60_000,
    );
    const take = (/** @type {Buffer} */ data) => {
      output += data.toString();
      if (!output.includes('Extension host agent listening')) return;
      clearTimeout(timer);
      resolve();
    };
    child.stdout.on('data', take);
    child.stderr.on('data', take);
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`The VS Code server ended with ${code}:\n${output}`)));
  });
}

/** @returns {Promise<number>} a port of the loopback address that nothing listens on */
export const freePort = (wanted = 0) =>
  new Promise((resolve, reject) => {
    const probe = net.createServer().once('error', reject);
    probe.listen(wanted, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(address && typeof address === 'object' ? address.port : 0));
    });
  });

/**
 * The address of a page of the server.
 * @param {NodeHost} host
 * @param {object} what
 * @param {string} [what.folder] to open
 * @param {string} [what.file] to open in it, perhaps with `:line:column`
 * @param {string[]} [what.extensions] folders of extensions under development; needs `forTests`
 * @param {string} [what.tests] the module to run in the extension host; needs `forTests`
 * @param {string} [what.token]
 */
export function pageAddress({ port }, { folder, file, extensions = [], tests, token }) {
  const remote = (/** @type {string} */ place) =>
    new URL(
      `vscode-remote://127.0.0.1:${port}${place
        .split(path.sep)
        .join('/')
        .replace(/^(?!\/)/, '/')}`,
    ).href;
  /** @type {[string, string][]} */
  const payload = extensions.map((place) => ['extensionDevelopmentPath', remote(place)]);
  if (tests) payload.push(['extensionTestsPath', remote(tests)]);
  if (file) payload.push(['openFile', remote(file)]);
  if (file && /:\d+$/.test(file)) payload.push(['gotoLineMode', 'true']);
  const query = new URLSearchParams();
  if (token) query.set('tkn', token);
  if (folder) query.set('folder', folder);
  else query.set('ew', 'true');
  if (payload.length > 0) query.set('payload', JSON.stringify(payload));
  return `http://127.0.0.1:${port}/?${query}`;
}
