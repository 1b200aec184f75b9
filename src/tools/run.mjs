// Starting other programs and waiting for them.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { root } from './paths.mjs';

/**
 * What a program answered.
 * @typedef {{ code: number, output: string }} Ran
 */

/**
 * Runs a program to its end and keeps its output.
 * @param {string} command
 * @param {string[]} args
 * @param {{ cwd?: string, env?: NodeJS.ProcessEnv, show?: boolean, limit?: number }} [options]
 *   `show`: also prints the output; `limit`: milliseconds after which the program is ended, default none.
 * @returns {Promise<Ran>} code 0 when all went well, 124 after the limit, 127 when it cannot be started
 */
export function run(command, args, { cwd = root, env = process.env, show = false, limit } = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd, env, stdio: ['ignore', 'pipe', 'pipe'] });
    const end = () => child.kill();
    process.once('exit', end); // nothing is left behind
    let late = false;
    const tooLate = () => {
      late = true;
      child.kill();
      child.stdout.destroy(); // what it started may hold them open
      child.stderr.destroy();
    };
    const timer = limit === undefined ? undefined : setTimeout(tooLate, limit);
    let output = '';
    const take = (/** @type {Buffer} */ data) => {
      output += data.toString();
      if (show) process.stdout.write(data);
    };
    child.stdout.on('data', take);
    child.stderr.on('data', take);
    child.once('error', (error) => resolve({ code: 127, output: `${command}: ${error.message}` }));
    child.once('close', (code) => {
      process.off('exit', end);
      clearTimeout(timer);
      resolve({ code: late ? 124 : (code ?? 1), output });
    });
  });
}

/**
 * Runs npm: the one that runs us, else the one beside our Node, else the one on the path.
 * @param {string[]} args
 * @param {string} [cwd]
 * @throws {Error} with npm's own words when it fails.
 */
export async function npm(args, cwd = root) {
  const beside = path.join(path.dirname(process.execPath), '../lib/node_modules/npm/bin/npm-cli.js');
  const cli = [process.env['npm_execpath'] ?? '', beside].find(
    (p) => /npm-cli\.c?js$/.test(p) && existsSync(p),
  );
  const all = [...args, '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  const { code, output } = cli
    ? await run(process.execPath, [cli, ...all], { cwd })
    : await run(process.platform === 'win32' ? 'npm.cmd' : 'npm', all, { cwd });
  if (code !== 0) throw new Error(`npm ${args.join(' ')} failed in ${cwd}:\n${output.trim()}`);
}
