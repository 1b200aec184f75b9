// One editor with the extension for all tests of a run: opened at the first test, closed after the last.
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { command, editorReady } from '../../src/tools/hosts/drive.mjs';
import { linkExtension } from '../../src/tools/hosts/linkExtension.mjs';
import { pageAddress, startNodeHost } from '../../src/tools/hosts/nodeHost.mjs';
import { openPage } from '../../src/tools/hosts/page.mjs';
import { startWebHost } from '../../src/tools/hosts/webHost.mjs';
import { inRoot } from '../../src/tools/paths.mjs';

/** @typedef {import('playwright-core').Page} Page */

const host = process.env['PEGBOX_VIEWS_HOST'];
const folder = process.env['PEGBOX_VIEWS_FOLDER'] ?? '';

/** `web` or `node`. */
export const hostName = host ?? '';

/** @type {Page | undefined} */
let opened;
/** @type {(() => Promise<void> | void)[]} */
const closing = [];

/** @returns {Promise<Page>} with the workbench drawn and every file of the workspace open in it */
export async function editorPage() {
  if (opened) return opened;
  const address = host === 'web' ? await startWeb() : await startNode();
  const { page, close } = await openPage({ width: 1280, height: 900 });
  closing.push(close);
  page.setDefaultTimeout(10_000);
  await page.goto(address);
  await page.waitForSelector('.monaco-workbench .part.statusbar', { timeout: 60_000 });
  await openAll(page);
  opened = page;
  return page;
}

export async function closeEditor() {
  for (const close of closing.splice(0).reverse()) await close();
}

async function startWeb() {
  const { address, stop } = await startWebHost({ extension: inRoot(), folder });
  closing.push(stop);
  return address;
}

async function startNode() {
  const passing = mkdtempSync(path.join(tmpdir(), 'pegbox-extension-'));
  const server = await startNodeHost({ forTests: true });
  closing.push(
    () => rmSync(passing, { recursive: true, force: true }),
    () => server.stop(),
  );
  return pageAddress(server, { folder, extensions: [linkExtension(passing)] });
}

/**
 * Brings a file of the workspace to the front; all of them are open at first.
 * @param {Page} page
 * @param {string} name
 */
export async function openFile(page, name) {
  const tab = page.locator(`.tab[data-resource-name="${name}"]`);
  if ((await tab.count()) > 0) {
    await tab.first().click();
  } else {
    await command(page, 'View: Show Explorer');
    await page.locator('.explorer-folders-view .monaco-list-row').filter({ hasText: name }).dblclick();
  }
  await page.waitForSelector(`.tab.active[data-resource-name="${name}"]`);
  await editorReady(page);
}

/** Opens every file of the workspace from the explorer: a search by name has nothing to search in the web host. */
async function openAll(/** @type {Page} */ page) {
  const rows = page.locator('.explorer-folders-view .monaco-list-row');
  await rows.first().waitFor({ timeout: 60_000 });
  for (const name of readdirSync(folder)) {
    await rows.filter({ hasText: name }).dblclick();
    await page.waitForSelector(`.tab.active[data-resource-name="${name}"]`);
  }
}

/** How long a condition is waited for, in milliseconds: long, since a machine that tests others too is slow. */
const PATIENCE = 60_000;

/**
 * Waits for a condition.
 * @param {() => Promise<unknown>} condition
 * @param {number} [patience] how long it is waited for, in milliseconds
 * @throws {Error} when it has not come true by then
 */
export async function until(condition, patience = PATIENCE) {
  for (const end = Date.now() + patience; Date.now() < end;) {
    if (await condition()) return;
    await new Promise((resolve) => setTimeout(resolve, 40));
  }
  throw new Error(`This did not come true in ${patience / 1000} s: ${condition.toString()}`);
}

/**
 * Waits until the editor has put away what a panel remembers, or what it remembers of its own state. In a browser it does
 * so every few seconds only, since a page
 * that is reloaded has no time left for it.
 * @param {Page} page
 * @param {RegExp} text that stands in what is remembered; quotes have backslashes before them there
 * @param {number} [patience] how long it is waited for, in milliseconds
 */
export async function untilKept(page, text, patience = PATIENCE) {
  // Every five seconds when the page has the focus and nothing to do, which may take a while on a busy machine.
  await page.bringToFront();
  await until(() => isKept(page, text), patience).catch(async (error) => {
    throw new Error(`${error.message}\nKept is: ${await keptValues(page)}`);
  });
}

/** @param {Page} page @param {RegExp} text */
async function isKept(page, text) {
  return (await kept(page)).some((value) => text.test(value));
}

/** What is kept of the extension's pages, for whoever looks for why something is not. @param {Page} page */
async function keptValues(page) {
  return (await kept(page)).filter((value) => /webviewState|scroll/.test(value)).join('\n');
}

/** All that the editor keeps in this browser, as text. @param {Page} page @returns {Promise<string[]>} */
async function kept(page) {
  return page.evaluate(async () => {
    /** @template T @param {IDBRequest<T>} request @returns {Promise<T>} */
    const answer = (request) =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error ?? new Error('no answer'));
      });
    /** @type {string[]} */
    const all = [];
    for (const { name } of await globalThis.indexedDB.databases()) {
      if (!name?.startsWith('vscode-web-state-db')) continue;
      const store = await answer(globalThis.indexedDB.open(name));
      const table = store.objectStoreNames[0];
      const values =
        table === undefined ? [] : await answer(store.transaction(table).objectStore(table).getAll());
      store.close();
      all.push(...values.filter((value) => typeof value === 'string'));
    }
    return all;
  });
}

/** Kinds of theme as a page is told them, and a theme of each by its name in the editor's list. */
export const themes = {
  'vscode-dark': 'Dark Modern',
  'vscode-light': 'Light Modern',
  'vscode-high-contrast': 'Dark High Contrast',
  'vscode-high-contrast-light': 'Light High Contrast',
};

/**
 * Goes over to a theme, as a user does.
 * @param {Page} page
 * @param {import('playwright-core').Frame} view a page that has to hear of it
 * @param {keyof typeof themes} kind
 */
export async function takeTheme(page, view, kind) {
  const taken = () => view.evaluate(() => document.body.dataset['vscodeThemeKind']);
  if ((await taken()) === kind) return;
  await page.locator('.view-line').first().click(); // so that the keys go to the editor
  await page.keyboard.press('Control+k');
  await page.keyboard.press('Control+t');
  await page.waitForSelector('.quick-input-list .monaco-list-row');
  await page.keyboard.type(themes[kind], { delay: 10 });
  await page.waitForTimeout(300);
  await page.keyboard.press('Enter');
  for (let tries = 0; (await taken()) !== kind; tries++) {
    if (tries > 100) throw new Error(`The theme ${themes[kind]} did not come.`);
    await page.waitForTimeout(50);
  }
}
