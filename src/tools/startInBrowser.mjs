// Serves a real VS Code with Pegbox installed to the browser, on a real folder, for this machine only.
import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { installPackage } from './hosts/installPackage.mjs';
import { freePort, pageAddress, startNodeHost } from './hosts/nodeHost.mjs';
import { pack } from './pack.mjs';
import { hostsDir } from './paths.mjs';

/**
 * Runs until Ctrl+C.
 * @param {string} folder
 * @param {number} wantedPort
 * @throws {Error} when the editor ends by itself
 */
export async function startInBrowser(folder, wantedPort) {
  const extensionsDir = path.join(hostsDir, 'extensions');
  rmSync(extensionsDir, { recursive: true, force: true }); // always the Pegbox built just now
  await installPackage(await pack(), extensionsDir);
  const dataDir = path.join(hostsDir, 'profile');
  const token = secret(path.join(dataDir, 'token'));
  const port = await freePort(wantedPort).catch(() => freePort());
  const settings = { 'window.autoDetectColorScheme': true };
  const host = await startNodeHost({ dataDir, extensionsDir, token, port, settings });

  const first = readdirSync(folder)
    .sort()
    .find((name) => name.endsWith('.pegbox'));
  const address = pageAddress(host, { folder, token, ...(first && { file: path.join(folder, first) }) });
  console.log(`\nPegbox runs on ${folder}, at\n\n  ${address}\n\nPress Ctrl+C to stop.`);
  openInBrowser(address);

  const stopped = new Promise((/** @type {(how: 'asked') => void} */ resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => resolve('asked'));
  });
  const how = await Promise.race([stopped, host.ended]);
  if (how !== 'asked')
    throw new Error(`The editor ended with ${how}; see ${path.join(dataDir, 'server.log')}.`);
  console.log('\nStopping …');
  await host.stop();
}

/**
 * The secret of this profile's address: without it any program or page on this machine could reach the editor.
 * @param {string} file
 */
function secret(file) {
  if (existsSync(file)) return readFileSync(file, 'utf8').trim();
  const made = randomBytes(16).toString('hex');
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, made, { mode: 0o600 });
  return made;
}

/**
 * Opens the address where there is a browser to open it; it is printed in any case.
 * @param {string} address
 */
function openInBrowser(address) {
  if (process.env['CI'] || !process.stdout.isTTY) return;
  if (process.platform === 'linux' && !process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY']) return;
  const [program, args] =
    process.platform === 'win32'
      ? /** @type {const} */ (['rundll32', ['url.dll,FileProtocolHandler', address]])
      : /** @type {const} */ ([process.platform === 'darwin' ? 'open' : 'xdg-open', [address]]);
  const child = spawn(program, args, { stdio: 'ignore', detached: true });
  child.once('error', () => undefined); // no such program: the user opens the address
  child.unref();
}
