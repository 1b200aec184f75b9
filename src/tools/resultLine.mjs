// The one line by which every test run says its counts, whatever it ran in.

/** @typedef {{ passed: number, failed: number, skipped?: number }} Counts */

/**
 * Reads the counts out of a run's output.
 * @param {string} output
 * @returns {Counts | undefined} undefined when the run did not come to its end
 */
export function countsIn(output) {
  const found = [...output.matchAll(/^.*?pegbox-result (\{.*?\})/gm)].at(-1)?.[1];
  return found === undefined ? undefined : JSON.parse(found);
}
