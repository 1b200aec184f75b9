import { mkdirSync } from 'node:fs';
import { run } from '../run.mjs';
import { installNodeHost } from './installNodeHost.mjs';

/**
 * Installs a packed extension in the Node host, as a user's editor does.
 * @param {string} vsix
 * @param {string} extensionsDir where installed extensions stand
 * @throws {Error} with the server's words when it refuses the package
 */
export async function installPackage(vsix, extensionsDir) {
  const server = await installNodeHost();
  mkdirSync(extensionsDir, { recursive: true });
  const args = ['out/server-main.js', '--accept-server-license-terms', '--extensions-dir', extensionsDir];
  args.push('--server-data-dir', `${extensionsDir}-profile`, '--install-extension', vsix, '--force');
  const env = { ...process.env, EXTENSIONS_GALLERY: '{"serviceUrl":""}' };
  const { code, output } = await run(process.execPath, args, { cwd: server, env });
  if (code !== 0 || !output.includes('was successfully installed'))
    throw new Error(`The package could not be installed:\n${output.trim()}`);
}
