// Brings node_modules in step with package-lock.json. Imports nothing but Node: it runs on a fresh clone.
import { existsSync, readFileSync } from 'node:fs';
import { inRoot } from './paths.mjs';
import { npm } from './run.mjs';

/** @typedef {{ packages: Record<string, { version?: string, optional?: boolean, devOptional?: boolean }> }} Lock */

/** @param {string} file @returns {Lock} */
const readLock = (file) => JSON.parse(readFileSync(file, 'utf8'));

/**
 * Says why the installed packages do not fit the lock; undefined when they do. It compares versions, not
 * file times: a checkout of another branch changes times but not always packages.
 * @returns {string | undefined}
 */
export function whatIsMissing() {
  const installed = inRoot('node_modules/.package-lock.json');
  if (!existsSync(installed)) return 'nothing is installed yet';
  const wanted = readLock(inRoot('package-lock.json')).packages;
  const there = readLock(installed).packages;
  for (const [place, { version, optional, devOptional }] of Object.entries(wanted)) {
    if (place === '' || optional || devOptional) continue; // optional ones are for other systems
    if (there[place]?.version !== version)
      return `${place.replace(/^.*node_modules\//, '')} ${version} is missing`;
  }
  return undefined;
}

/** Installs what is missing from the npm registry; says so. */
export async function setUp() {
  const [major = 0] = process.versions.node.split('.').map(Number);
  if (major < 20) throw new Error(`Pegbox needs Node 20 or later; this is Node ${process.versions.node}.`);
  const missing = whatIsMissing();
  if (!missing) return;
  console.log(`Installing packages from npm (${missing}) …`);
  await npm(['ci']);
}
