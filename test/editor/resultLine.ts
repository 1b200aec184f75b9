import type { Runner } from 'mocha';

/**
 * Prints the counts of a run as the line that src/tools/resultLine.mjs reads, then settles.
 */
export function resultLine(runner: Runner, resolve: () => void, reject: (error: Error) => void): void {
  const counts = { passed: 0, failed: 0, skipped: 0 };
  runner.on('pass', () => counts.passed++);
  runner.on('fail', () => counts.failed++);
  runner.on('pending', () => counts.skipped++);
  runner.once('end', () => {
    console.log(`pegbox-result ${JSON.stringify(counts)}`);
    if (counts.failed === 0) resolve();
    else reject(new Error(`${counts.failed} tests failed.`));
  });
}
