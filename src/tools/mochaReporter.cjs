'use strict';
// Mocha's usual report, and the counts in the line that resultLine.mjs reads. Loaded by mocha, so not an .mjs.
const { Spec } = require('mocha').reporters;

module.exports = class extends Spec {
  /** @param {import('mocha').Runner} runner @param {import('mocha').MochaOptions} options */
  constructor(runner, options) {
    super(runner, options);
    runner.once('end', () => {
      const { passes, failures, pending } = this.stats;
      console.log(`pegbox-result ${JSON.stringify({ passed: passes, failed: failures, skipped: pending })}`);
    });
  }
};
