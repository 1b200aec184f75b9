// One way to fill a folder of .hosts: beside it, then moved into place, so that no half-made folder is met.
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { hostsDir } from '../paths.mjs';

/**
 * Gives the folder `.hosts/<name>`, filling it first when it is not there.
 * @param {string} name holds the versions, so that another version is another folder
 * @param {string} what for the message: `Fetching <what> from npm …`
 * @param {(dir: string) => Promise<void>} fill
 * @returns {Promise<string>} the folder
 */
export async function cached(name, what, fill) {
  const dir = path.join(hostsDir, name);
  if (existsSync(dir)) return dir;
  console.log(`Fetching ${what} from npm into .hosts/${name} (once) …`);
  const beside = `${dir}.${process.pid}.part`;
  rmSync(beside, { recursive: true, force: true });
  mkdirSync(beside, { recursive: true });
  try {
    writeFileSync(path.join(beside, 'package.json'), '{ "private": true }\n');
    await fill(beside);
    renameSync(beside, dir);
  } catch (error) {
    if (!existsSync(dir)) throw error; // otherwise another run was faster
  } finally {
    rmSync(beside, { recursive: true, force: true });
  }
  return dir;
}
