// One browser page that can reach this machine only, and the bridge that an editor's test run speaks over.
import { format } from 'node:util';
import { chromium } from 'playwright-core';
import { installBrowser } from './installBrowser.mjs';
import { isNoise } from './noise.mjs';

/** @typedef {import('playwright-core').Page} Page */

const args = [
  '--no-sandbox', // as root, and in containers without user namespaces, there is none
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--disable-dev-shm-usage',
];

const ownMachine = /^(127\.0\.0\.1|localhost|([a-z0-9-]+\.)*localhost)$/;

/**
 * Opens a page in a headless browser. Every request beyond this machine is refused: the editor asks for
 * galleries and surveys that no test needs.
 * @param {{ width?: number, height?: number, scale?: number, colorScheme?: 'dark' | 'light' }} [options]
 * @returns {Promise<{ page: Page, close: () => Promise<void> }>}
 */
export async function openPage({ width = 1400, height = 900, scale = 1, colorScheme = 'dark' } = {}) {
  const { executablePath, env } = await installBrowser();
  const browser = await chromium.launch({ executablePath, args, env: { ...definedEnv(), ...env } });
  const context = await browser.newContext({
    viewport: { width, height },
    deviceScaleFactor: scale,
    colorScheme,
  });
  await context.route(
    (url) => /^(https?|wss?):$/.test(url.protocol) && !ownMachine.test(url.hostname),
    (route) => route.abort(),
  );
  const page = await context.newPage();
  if (process.env['PEGBOX_VERBOSE']) page.on('console', (message) => console.log('[page]', message.text()));
  return { page, close: () => browser.close() };
}

/** @returns {Record<string, string>} */
const definedEnv = () =>
  Object.fromEntries(Object.entries(process.env).flatMap(([k, v]) => (v === undefined ? [] : [[k, v]])));

/**
 * Listens to the test run inside the page: passes on what it prints, and waits for its end.
 * @param {Page} page before it goes to the editor
 * @param {number} timeout in milliseconds
 * @returns {Promise<() => Promise<number>>} waits for the run's exit code; 124 when the time was up
 */
export async function testRun(page, timeout) {
  /** @type {(code: number) => void} */
  let end = () => undefined;
  const ended = new Promise((/** @type {(code: number) => void} */ resolve) => (end = resolve));
  await page.exposeFunction(
    'codeAutomationLog',
    (/** @type {string} */ type, /** @type {unknown[]} */ words) => {
      const text = format(...words); // the page's own test reporter leaves %s to the console
      if (process.env['PEGBOX_VERBOSE'] || !isNoise(text))
        (type === 'error' ? console.error : console.log)(text);
    },
  );
  await page.exposeFunction('codeAutomationExit', (/** @type {number} */ code) => end(code));
  let over = false;
  const gone = (/** @type {string} */ what) => () => {
    if (!over) console.error(`${what} in the middle of the test run.`);
    end(125);
  };
  page.once('crash', gone('The browser page crashed'));
  page.once('close', gone('The browser ended'));
  return () => {
    const timer = setTimeout(() => {
      console.error(`The editor's test run did not end within ${timeout / 1000} s.`);
      end(124);
    }, timeout);
    return ended.finally(() => {
      over = true;
      clearTimeout(timer);
    });
  };
}
