// A desktop VS Code that is installed: where it is, and how it opens Pegbox beside the user's own set-up.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { hostsDir, root } from './paths.mjs';

/** @returns {string | undefined} the program, when it is on the path and can open a window here */
export function desktopProgram() {
  if (process.platform === 'linux' && !process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY'])
    return undefined;
  if (process.env['VSCODE_IPC_HOOK_CLI']) return undefined; // `code` of a remote terminal opens no window of its own
  if (process.getuid?.() === 0) return undefined; // it refuses to run as root
  const name = process.platform === 'win32' ? 'code.cmd' : 'code';
  const found = (process.env['PATH'] ?? '')
    .split(path.delimiter)
    .map((dir) => path.join(dir, name))
    .find((file) => existsSync(file));
  if (!found || process.platform !== 'win32') return found;
  return path.join(path.dirname(found), '../Code.exe'); // Node starts no .cmd file without a shell
}

/**
 * Opens a folder with Pegbox under development in a profile of its own; waits until the window is closed.
 * @param {string} program
 * @param {string} folder
 * @returns {Promise<void>}
 */
export function openDesktop(program, folder) {
  console.log(`Opening ${folder} in VS Code. Close the window, or press Ctrl+C here, to end.`);
  const args = [folder, '--new-window', '--wait', `--extensionDevelopmentPath=${root}`];
  args.push(`--user-data-dir=${path.join(hostsDir, 'desktop-profile')}`);
  args.push(`--extensions-dir=${path.join(hostsDir, 'desktop-extensions')}`);
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { stdio: 'inherit' });
    for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP']))
      process.on(signal, () => child.kill(signal));
    child.once('error', reject);
    child.once('exit', (code) => (code ? reject(new Error(`VS Code ended with ${code}.`)) : resolve()));
  });
}
