import { openPage, testRun } from './page.mjs';
import { pageAddress, startNodeHost } from './nodeHost.mjs';

/**
 * Runs a test module in the Node extension host of a real VS Code server.
 * @param {object} what
 * @param {string[]} what.extensions folders of extensions under development
 * @param {string} what.tests the module, which exports `run()`
 * @param {string} [what.folder] the workspace
 * @param {string} [what.extensionsDir] a folder of installed extensions to load too
 * @param {Record<string, unknown>} [what.settings]
 * @param {number} [what.timeout] in milliseconds
 * @returns {Promise<number>} exit code
 */
export async function runInNodeHost({
  extensions,
  tests,
  folder,
  extensionsDir,
  settings,
  timeout = 240_000,
}) {
  const host = await startNodeHost({
    forTests: true,
    ...(settings && { settings }),
    ...(extensionsDir && { extensionsDir }),
  });
  try {
    const { page, close } = await openPage();
    try {
      const ended = await testRun(page, timeout);
      await page.goto(pageAddress(host, { extensions, tests, ...(folder && { folder }) }));
      return await ended();
    } finally {
      await close();
    }
  } finally {
    await host.stop();
  }
}
