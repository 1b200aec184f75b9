// Presses random keys in a real editor and holds the text to a plain model (test/keys/plainModel.mjs).
// Usage: node src/tools/keysRun.mjs web|node [--speed] [--late] [--other]
//   web      VS Code for the web: extensions in a web worker
//   node     a VS Code server: extensions in Node
//   --late   100 ms added to the link to the extension host (node alone)
//   --other  with an extension that owns the editor's `type`
//   --speed  measures the time from a key to the text change seen in the page, in a short and a long file
// 150 keys of one seed at each gap; PEGBOX_LONG=1: 1,000 keys of five seeds. Needs a build (node src/tools/build.mjs).
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PlainModel, nextKey, random } from '../../test/keys/plainModel.mjs';
import { exitOnSignals } from './exitOnSignals.mjs';
import { command, editorReady, editorText, goTo } from './hosts/drive.mjs';
import { lateLink } from './hosts/lateLink.mjs';
import { linkExtension } from './hosts/linkExtension.mjs';
import { pageAddress, startNodeHost } from './hosts/nodeHost.mjs';
import { openPage } from './hosts/page.mjs';
import { startWebHost } from './hosts/webHost.mjs';
import { measureKeys } from './keySpeed.mjs';
import { inRoot } from './paths.mjs';

/** @typedef {import('playwright-core').Page} Page */

exitOnSignals();
const kind = process.argv[2];
const has = (/** @type {string} */ option) => process.argv.includes(option);
const isLong = process.env['PEGBOX_LONG'] === '1';
const COUNT = isLong ? 1000 : 150;
const SEEDS = isLong ? [1, 2, 3, 4, 5] : [1];
const GAPS = has('--late') ? [0] : [50, 10, 0];
const FILE = 'harbour.pegbox';
/** Signs whose keys have to be named to be pressed as a hand does. @type {Record<string, string>} */
const NAMES = {
  '.': 'Period',
  '~': 'Shift+Backquote',
  '/': 'Slash',
  '\\': 'Backslash',
  '(': 'Shift+Digit9',
  ')': 'Shift+Digit0',
  '<': 'Shift+Comma',
  '>': 'Shift+Period',
};

const passing = mkdtempSync(path.join(tmpdir(), 'pegbox-keys-'));
const folder = path.join(passing, 'workspace');
cpSync(inRoot('test/keys/workspace'), folder, { recursive: true });
const TEXT = readFileSync(path.join(folder, FILE), 'utf8');

/** @type {(() => Promise<void> | void)[]} */
const closing = [() => rmSync(passing, { recursive: true, force: true, maxRetries: 3 })];
let passed = 0;
let failed = 0;
/** @type {Page | undefined} */
let openedPage;

/** What the page shows when something failed, where `PEGBOX_PICTURE` names a file for it. */
async function picture() {
  const file = process.env['PEGBOX_PICTURE'];
  if (file) await openedPage?.screenshot({ path: file });
}

/** @param {string} what @param {() => Promise<void>} check */
async function it(what, check) {
  try {
    await check();
    passed++;
    console.log(`  ✔ ${what}`);
  } catch (error) {
    failed++;
    await picture();
    console.log(`  ✖ ${what}\n${error instanceof Error ? error.message : String(error)}`);
  }
}

async function start() {
  const other = inRoot('test/keys/ownsType');
  if (kind === 'web') {
    const also = has('--other') ? { also: other } : {};
    const { address, stop } = await startWebHost({ extension: inRoot(), folder, ...also });
    closing.push(stop);
    return address;
  }
  // A page names one extension under development; the other one is installed.
  const extensionsDir = path.join(passing, 'extensions');
  if (has('--other'))
    cpSync(other, path.join(extensionsDir, 'pegbox-tests.owns-type-0.0.1'), { recursive: true });
  const host = await startNodeHost({ forTests: true, ...(has('--other') && { extensionsDir }) });
  closing.push(() => host.stop());
  let { port } = host;
  if (has('--late')) {
    const late = await lateLink(port, 100);
    closing.push(late.stop);
    port = late.port;
  }
  return pageAddress({ ...host, port }, { folder, extensions: [linkExtension(passing)] });
}

/** Waits until the page shows a text. @param {Page} page @param {string} text @param {number} [patience] */
async function shows(page, text, patience = 20_000) {
  let last = '';
  for (const end = Date.now() + patience; Date.now() < end;) {
    last = await editorText(page);
    if (last === text) return;
    await page.waitForTimeout(50);
  }
  const [a, b] = [text.split('\n'), last.split('\n')];
  const at = a.findIndex((line, i) => line !== b[i]);
  throw new Error(`Line ${at + 1} was to be\n  ${a[at] ?? ''}\nand is\n  ${b[at] ?? ''}`);
}

/** Goes back to the text as it was saved, with the cursor on the first string. @param {Page} page */
async function anew(page) {
  await command(page, 'File: Revert File');
  await shows(page, TEXT);
  await goTo(page, 7, 8);
  await page.waitForTimeout(1000);
}

/** @param {Page} page @param {string[]} keys @param {number} gap */
async function press(page, keys, gap) {
  const raw = await page.context().newCDPSession(page);
  for (const key of keys) {
    if (key.startsWith('Numpad')) await pressOnPad(raw, key);
    else await page.keyboard.press(NAMES[key] ?? key);
    if (gap > 0) await page.waitForTimeout(gap);
  }
  await raw.detach();
}

/** A key of the number pad while it writes numbers. @param {import('playwright-core').CDPSession} raw @param {string} code */
async function pressOnPad(raw, code) {
  const text = code === 'NumpadSubtract' ? '-' : code.slice(-1);
  const windowsVirtualKeyCode = text === '-' ? 109 : 96 + Number(text);
  const key = { code, key: text, windowsVirtualKeyCode, location: 3, isKeypad: true };
  await raw.send('Input.dispatchKeyEvent', { type: 'keyDown', text, ...key });
  await raw.send('Input.dispatchKeyEvent', { type: 'keyUp', ...key });
}

/** @param {Page} page */
async function tests(page) {
  for (const gap of GAPS) {
    for (const seed of SEEDS) {
      await it(`${COUNT} random keys, ${gap} ms between them, seed ${seed}`, async () => {
        await anew(page);
        const model = new PlainModel(TEXT, 6, 7);
        const next = random(seed);
        const keys = [];
        while (keys.length < COUNT) {
          const key = nextKey(model, next);
          model.press(key);
          keys.push(key);
        }
        await press(page, keys, gap);
        await shows(page, model.text, has('--late') ? 240_000 : 30_000);
      });
    }
  }
  await it('one undo a key, and redo survives', async () => {
    await anew(page);
    const model = new PlainModel(TEXT, 6, 7);
    const states = [model.text];
    const keys = [
      '1',
      '2',
      'ArrowRight',
      '5',
      'h',
      '7',
      'Backspace',
      'ArrowDown',
      'x',
      '3',
      '1',
      'Delete',
      '-',
    ];
    for (const key of keys) {
      await press(page, [key], 0);
      model.press(key);
      if (states.at(-1) !== model.text) states.push(model.text);
    }
    await shows(page, model.text);
    for (let i = states.length - 2; i >= 0; i--) {
      await page.keyboard.press('Control+z');
      await shows(page, states[i] ?? '');
    }
    for (let i = 1; i < states.length; i++) {
      await page.keyboard.press('Control+y');
      await shows(page, states[i] ?? '');
    }
  });
}

try {
  if (kind !== 'web' && kind !== 'node')
    throw new Error('Usage: node src/tools/keysRun.mjs web|node [--late] [--other] [--speed]');
  if (has('--late') && kind === 'web')
    throw new Error('In the web host the extension host is no link away: --late is for node.');
  const address = await start();
  const { page, close } = await openPage({ width: 1280, height: 900 });
  closing.push(close);
  openedPage = page;
  page.setDefaultTimeout(10_000);
  if (has('--speed'))
    for (const [name, bars] of /** @type {const} */ ([
      ['short.pegbox', 10],
      ['long.pegbox', 10_000],
    ]))
      writeFileSync(path.join(folder, name), measureKeys.text(bars));
  await page.goto(address);
  const rows = page.locator('.explorer-folders-view .monaco-list-row');
  await rows.first().waitFor({ timeout: 60_000 });
  await rows.filter({ hasText: FILE }).dblclick();
  await editorReady(page);
  await page.waitForSelector('.statusbar-item:has-text("Over the staff: on")', { timeout: 60_000 });
  if (has('--speed')) await measureKeys.run(page, ['short.pegbox', 'long.pegbox']);
  else await tests(page);
} catch (error) {
  failed++;
  await picture();
  console.error(error instanceof Error ? error.message : error);
} finally {
  for (const close of closing.reverse()) await close();
}
if (!has('--speed')) console.log(`pegbox-result ${JSON.stringify({ passed, failed })}`);
process.exitCode = failed > 0 ? 1 : 0;
