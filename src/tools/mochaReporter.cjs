'use strict';
// Mocha's report of what failed, and the counts in the line that resultLine.mjs reads. Loaded by mocha, so not an
// .mjs.
const { Base } = require('mocha').reporters;

module.exports = class extends Base {
  /** @param {import('mocha').Runner} runner @param {import('mocha').MochaOptions} options */
  constructor(runner, options) {
    super(runner, options);
    runner.once('end', () => {
      const { passes, failures, pending } = this.stats;
      if (failures > 0) this.epilogue();
      console.log(`pegbox-result ${JSON.stringify({ passed: passes, failed: failures, skipped: pending })}`);
    });
  }
};
