// One way to fill a folder of .hosts: beside it, then moved into place, so that no half-made folder is met.
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { hostsDir } from '../paths.mjs';

/**
 * Gives the folder `.hosts/<name>`, filling it first when it is not there or not whole.
 * @param {object} wanted
 * @param {string} wanted.name holds the versions, so that another version is another folder
 * @param {string} wanted.what for the message: `Fetching <what> from npm …`
 * @param {string} wanted.holds a file that is there when the folder is whole
 * @param {(dir: string) => Promise<void>} wanted.fill
 * @returns {Promise<string>} the folder
 */
export async function cached({ name, what, holds, fill }) {
  const dir = path.join(hostsDir, name);
  if (existsSync(path.join(dir, holds))) return dir;
  console.log(`Fetching ${what} from npm into .hosts/${name} (once) …`);
  const beside = `${dir}.${process.pid}.part`;
  rmSync(beside, { recursive: true, force: true });
  mkdirSync(beside, { recursive: true });
  try {
    writeFileSync(path.join(beside, 'package.json'), '{ "private": true }\n');
    await fill(beside);
    if (!existsSync(path.join(beside, holds))) throw new Error(`${what} came from npm without ${holds}.`);
    if (!existsSync(path.join(dir, holds))) rmSync(dir, { recursive: true, force: true });
    renameSync(beside, dir);
  } catch (error) {
    if (!existsSync(path.join(dir, holds))) throw error; // otherwise another run was faster
  } finally {
    rmSync(beside, { recursive: true, force: true });
  }
  return dir;
}
