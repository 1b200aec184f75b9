// Everything that is tested, from a fresh clone on. Usage: npm test [-- --only NAME,…] [--verbose]
// Ends with one line, `N passed, N failed`; exit code 1 when something failed.
import { exitOnSignals } from './exitOnSignals.mjs';
import { countsIn } from './resultLine.mjs';
import { run } from './run.mjs';
import { setUp } from './setup.mjs';
import { desktopSteps, builtSteps, sourceSteps } from './steps.mjs';

/** @typedef {import('./steps.mjs').Step} Step */

const option = process.argv.indexOf('--only');
const only = option < 0 ? undefined : (process.argv[option + 1] ?? '').split(',');
const verbose = process.argv.includes('--verbose');
/** No step may hold up the run for longer, in milliseconds. */
const stepLimit = 900_000;
const total = { passed: 0, failed: 0 };
/** @type {Set<string>} */
const failedSteps = new Set();

/**
 * @param {Step} step
 * @param {{ code: number, output: string }} ran
 * @returns {{ passed: number, failed: number, skipped?: number, cause?: string }}
 */
function judge(step, { code, output }) {
  if (step.kind === 'check') return code === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
  if (code === 124) return { passed: 0, failed: 1, cause: 'It took too long, and was ended.' };
  const counts = countsIn(output);
  if (!counts) return { passed: 0, failed: 1, cause: `The run ended with ${code} before its tests did.` };
  if (counts.passed + counts.failed === 0) return { passed: 0, failed: 1, cause: 'No test ran.' };
  if (code !== 0 && counts.failed === 0)
    return { ...counts, failed: 1, cause: `The run ended with ${code}.` };
  return counts;
}

/** @param {Step} step */
async function runStep(step) {
  const start = Date.now();
  if (step.needs && failedSteps.has(step.needs)) {
    report(step, { passed: 0, failed: 1, cause: `Not run: ${step.needs} failed.` }, '', start);
    return;
  }
  const ran = await run(process.execPath, step.args, { show: verbose, limit: stepLimit });
  report(step, judge(step, ran), ran.output, start);
}

/**
 * @param {Step} step
 * @param {ReturnType<typeof judge>} result
 * @param {string} output
 * @param {number} start
 */
function report(step, { passed, failed, skipped = 0, cause }, output, start) {
  total.passed += passed;
  total.failed += failed;
  if (failed > 0) failedSteps.add(step.name);
  const seconds = ((Date.now() - start) / 1000).toFixed(1);
  const counts = `${passed} passed${failed ? `, ${failed} failed` : ''}${skipped ? `, ${skipped} skipped` : ''}`;
  console.log(`${failed > 0 ? '✗' : '✓'} ${step.name}: ${step.does}: ${counts} (${seconds} s)`);
  if (failed === 0) return;
  if (output.trim() && !verbose) console.log(output.trim().replace(/^/gm, '    '));
  if (cause) console.log(`    ${cause}`);
}

/** @param {Step[]} steps */
async function inOrder(steps) {
  for (const step of steps) if (!only || only.includes(step.name)) await runStep(step);
}

/** @param {Step[]} known */
function checkNames(known) {
  const names = known.map(({ name }) => name);
  const wrong = only?.filter((name) => !names.includes(name)) ?? [];
  if (wrong.length > 0)
    throw new Error(`No step is named ${wrong.join(', ')}; the steps are ${names.join(', ')}.`);
}

exitOnSignals();
try {
  checkNames([...sourceSteps, ...builtSteps, ...desktopSteps]);
  await setUp();
  const built = only ? [...builtSteps, ...desktopSteps] : builtSteps;
  await Promise.all([inOrder(sourceSteps), inOrder(built)]); // two lanes: most machines have two cores
} catch (error) {
  console.log(error instanceof Error ? error.message : error);
  total.failed++;
}
console.log(`${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed > 0 ? 1 : 0;
