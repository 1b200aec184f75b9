// Runs a test module through @vscode/test-electron: in the Node host, or in a downloaded desktop VS Code.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { runTests } from '@vscode/test-electron';
import { hostsDir } from '../paths.mjs';

const shim = fileURLToPath(new URL('codeShim.mjs', import.meta.url));

/**
 * @param {object} what
 * @param {string} what.extension folder of the extension under development
 * @param {string} what.tests the module, which exports `run()`
 * @param {string} what.folder the workspace
 * @param {string} [what.extensionsDir] a folder of installed extensions; default none are loaded
 * @param {boolean} [what.desktop] downloads and uses a desktop VS Code
 * @returns {Promise<number>} exit code
 */
export async function electronRun({ extension, tests, folder, extensionsDir, desktop = false }) {
  const profile = mkdtempSync(path.join(tmpdir(), 'pegbox-profile-')); // short: a desktop puts a socket there
  const launchArgs = [folder, `--user-data-dir=${profile}`, `--extensions-dir=${extensionsDir ?? profile}`];
  if (!extensionsDir) launchArgs.push('--disable-extensions');
  const program = desktop
    ? { version: 'stable', cachePath: path.join(hostsDir, 'desktop') }
    : { vscodeExecutablePath: shim };
  try {
    return await runTests({
      ...program,
      extensionDevelopmentPath: extension,
      extensionTestsPath: tests,
      launchArgs,
    });
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    return 1;
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 3 });
  }
}
