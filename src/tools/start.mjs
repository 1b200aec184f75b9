// Opens Pegbox in a real VS Code. Usage: npm start [-- FOLDER] [-- --browser] [-- --port N]
//   FOLDER     what to open; default work/demo, the player's own copies of the demo songs
//   --browser  uses the editor in the browser even when a desktop VS Code is there
//   --port     of the editor in the browser; default 7640, or a free one
// Sets up what is missing first. Stops on Ctrl+C.
import { cpSync, existsSync, mkdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { inRoot, workDir } from './paths.mjs';
import { setUp } from './setup.mjs';

/**
 * The folder to open. The demo songs are copied where they are missing; a file that is there is the player's.
 * @param {string | undefined} given
 */
function folderToOpen(given) {
  if (given !== undefined) {
    const folder = path.resolve(process.env['INIT_CWD'] ?? '', given); // npm changes the working folder
    if (!existsSync(folder)) throw new Error(`There is no folder ${folder}: make it first, or leave it out.`);
    return statSync(folder).isDirectory() ? folder : path.dirname(folder);
  }
  const folder = path.join(workDir, 'demo');
  mkdirSync(folder, { recursive: true });
  cpSync(inRoot('media/demo'), folder, { recursive: true, force: false });
  return folder;
}

try {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { browser: { type: 'boolean', default: false }, port: { type: 'string', default: '7640' } },
  });
  const port = Number(values.port);
  if (!Number.isInteger(port) || port < 1 || port > 65535)
    throw new Error(`--port takes a number from 1 to 65535, not ${values.port}.`);
  const folder = folderToOpen(positionals[0]);
  await setUp();
  // only now are the packages there that these need
  const { build } = await import('./build.mjs');
  const { desktopProgram, openDesktop } = await import('./desktop.mjs');
  console.log('Building Pegbox …');
  await build();
  const code = values.browser ? undefined : desktopProgram();
  if (code) await openDesktop(code, folder);
  else await (await import('./startInBrowser.mjs')).startInBrowser(folder, port);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
