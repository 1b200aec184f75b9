// Measures speed. Usage: npm run bench [-- NAME…] [--no-build]
// Each benchmark (test/bench/NAME.bench.ts) runs in a process of its own, one after the other. A goal that is missed
// is said, never an error: times depend on the machine. Exit code 1 only when a benchmark cannot run.
import { fork } from 'node:child_process';
import { readdirSync } from 'node:fs';
import * as esbuild from 'esbuild';
import { build } from './build.mjs';
import { inRoot, root } from './paths.mjs';
import { setUp } from './setup.mjs';

/**
 * One line of the table; test/bench/rows.ts says more.
 * @typedef {object} Row
 * @property {string} what
 * @property {number[]} runs
 * @property {string} unit
 * @property {{ atMost?: number, atLeast?: number, alarmUnder?: number }} [goal]
 * @property {string} [note]
 */

/** In the order in which they are run: what a player feels first. */
const ORDER = [
  'keystroke',
  'hover',
  'open',
  'start',
  'format',
  'fill',
  'shapes',
  'find',
  'import',
  'chordNaming',
  'timeReading',
  'parsing',
  'conversion',
  'convertText',
  'hand',
  'suit',
];
const PEERS = ['nothingServer', 'jsonServer', 'cssServer'];

const all = readdirSync(inRoot('test/bench'))
  .filter((file) => file.endsWith('.bench.ts'))
  .map((file) => file.slice(0, -'.bench.ts'.length))
  .sort((a, b) => place(a) - place(b) || a.localeCompare(b));

const wanted = process.argv.slice(2).filter((argument) => !argument.startsWith('--'));
const unknown = wanted.filter((name) => !all.includes(name));
if (unknown.length > 0) {
  console.error(`No such benchmark: ${unknown.join(', ')}. There are: ${all.join(', ')}.`);
  process.exit(2);
}

let reached = 0;
let missed = 0;
let broken = 0;

await setUp();
if (!process.argv.includes('--no-build')) await build();
await bundlePeers();
for (const name of wanted.length > 0 ? wanted : all) await bench(name);
console.log(
  `\n${reached} goals reached, ${missed} missed${broken ? `, ${broken} benchmarks did not run` : ''}.`,
);
process.exitCode = broken > 0 ? 1 : 0;

/** @param {string} name */
function place(name) {
  const at = ORDER.indexOf(name);
  return at < 0 ? ORDER.length : at;
}

/** The servers that ours is measured against, bundled as ours is. */
async function bundlePeers() {
  await esbuild.build({
    absWorkingDir: root,
    entryPoints: PEERS.map((name) => `test/bench/peers/${name}.ts`),
    outdir: 'dist/bench',
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    mainFields: ['module', 'main'],
    minifySyntax: true,
    minifyWhitespace: true,
    logLevel: 'warning',
  });
}

/**
 * Runs a benchmark and prints its rows as they come.
 * @param {string} name
 */
async function bench(name) {
  const begun = Date.now();
  console.log(`\n${name}`);
  const child = fork(inRoot('test/bench/runBench.ts'), [name], {
    cwd: root,
    execArgv: ['--import', 'tsx'],
  });
  child.on('message', (message) => print(/** @type {Row} */ (message)));
  const code = await new Promise((resolve) => child.once('close', resolve));
  if (code !== 0) {
    broken += 1;
    console.log(`  ${name} ended with ${code}.`);
  }
  console.log(`  (${((Date.now() - begun) / 1000).toFixed(0)} s)`);
}

/** @param {Row} row */
function print({ what, runs, unit, goal, note }) {
  const sorted = [...runs].sort((a, b) => a - b);
  const middle = sorted[sorted.length >> 1] ?? NaN;
  const value = `${figure(middle)} ${unit}`.padStart(13);
  const spread = `${figure(sorted[0] ?? NaN)}–${figure(sorted.at(-1) ?? NaN)}`.padEnd(17);
  const end = [goal && judge(middle, goal), note].filter(Boolean).join('; ');
  console.log(`  ${what.padEnd(54)}${value}   ${spread}${end}`.trimEnd());
}

/**
 * @param {number} value
 * @param {NonNullable<Row['goal']>} goal
 */
function judge(value, { atMost, atLeast, alarmUnder }) {
  const text = atMost !== undefined ? `goal ≤ ${atMost}` : `goal ≥ ${atLeast}`;
  const well = atMost !== undefined ? value <= atMost : value >= (atLeast ?? Infinity);
  if (well) reached += 1;
  else missed += 1;
  if (well) return `${text}: reached`;
  return alarmUnder !== undefined && value < alarmUnder
    ? `${text}: MISSED, and under the alarm of ${alarmUnder}`
    : `${text}: missed`;
}

/** Three digits that count. @param {number} value */
function figure(value) {
  if (!Number.isFinite(value)) return '?';
  if (Math.abs(value) >= 100) return value.toLocaleString('en', { maximumFractionDigits: 0 });
  return value.toPrecision(3);
}
