// Where things stand in this checkout.
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The top folder of the checkout. */
export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');

/** What is fetched from npm for running editors in tests; can be deleted at any time. */
export const hostsDir = path.join(root, '.hosts');

/** The player's own copies of the demo songs: never overwritten, never deleted by a tool. */
export const workDir = path.join(root, 'work');

/**
 * A path inside the checkout.
 * @param {...string} parts
 */
export const inRoot = (...parts) => path.join(root, ...parts);
