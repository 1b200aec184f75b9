// Runs a test module in VS Code for the web, where extensions run in a web worker and no Node is there.
import { openPage, testRun } from './page.mjs';
import { startWebHost } from './webHost.mjs';

/**
 * @param {object} what
 * @param {string} what.extension folder of the extension under development
 * @param {string} what.tests the module, which exports `run()`
 * @param {string} [what.folder] the workspace; what is written there stays in memory
 * @param {number} [what.timeout] in milliseconds
 * @returns {Promise<number>} exit code
 */
export async function runInWebHost({ extension, tests, folder, timeout = 240_000 }) {
  const host = await startWebHost({ extension, tests, ...(folder && { folder }) });
  try {
    const { page, close } = await openPage();
    try {
      const ended = await testRun(page, timeout);
      await page.goto(host.address);
      return await ended();
    } finally {
      await close();
    }
  } finally {
    host.stop();
  }
}
