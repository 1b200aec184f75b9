// Takes the pictures of the walkthrough from the running extension, all in one run.
// Usage: node src/tools/walkthroughPictures.mjs [--out FOLDER]   (default media/walkthrough; needs a build)
import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { exitOnSignals } from './exitOnSignals.mjs';
import { command, editorReady, hover, viewFrame } from './hosts/drive.mjs';
import { linkExtension } from './hosts/linkExtension.mjs';
import { pageAddress, startNodeHost } from './hosts/nodeHost.mjs';
import { openPage } from './hosts/page.mjs';
import { inRoot } from './paths.mjs';

/** @typedef {import('playwright-core').Page} Page */

const { values } = parseArgs({ options: { out: { type: 'string', default: inRoot('media/walkthrough') } } });
const song = 'bees-on-the-water.pegbox';
const settings = {
  'workbench.colorTheme': 'Default Light Modern',
  'workbench.activityBar.location': 'hidden',
  'workbench.statusBar.visible': false,
  'window.commandCenter': false,
  'workbench.layoutControl.enabled': false,
  'workbench.tips.enabled': false,
  'editor.minimap.enabled': false,
  'editor.fontSize': 13,
  'editor.lineNumbers': 'off',
  'editor.folding': false,
  'editor.renderLineHighlight': 'none',
  'breadcrumbs.enabled': false,
};

/**
 * @param {Page} page
 * @param {string} name
 */
async function save(page, name) {
  await page.mouse.move(5, 615); // away from what would show a hint
  await page.waitForTimeout(1200);
  await page.screenshot({ path: path.join(values.out, `${name}.png`) });
  console.log(`Saved ${name}.png`);
}

/**
 * Puts the cursor on a fret of the first system, whatever the editor showed before.
 * @param {Page} page
 */
async function toFret(page) {
  await page.keyboard.press('Control+1');
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Control+g');
  await page.waitForSelector('.quick-input-widget input', { state: 'visible' });
  await page.keyboard.type('18:14');
  await page.waitForTimeout(200);
  await page.keyboard.press('Enter');
  await page.waitForTimeout(500);
}

/** @param {Page} page */
async function closeOthers(page) {
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await command(page, 'View: Close All Editor Groups');
  await page.waitForTimeout(600);
  const discard = page.locator('.monaco-dialog-box .monaco-button', { hasText: /Don't Save/ });
  if (await discard.first().isVisible()) await discard.first().click();
  await page.waitForTimeout(400);
  await page.keyboard.press('Control+p');
  await page.keyboard.type('bees-on', { delay: 20 });
  await page.waitForTimeout(800);
  await page.keyboard.press('Enter');
  await page.waitForSelector('.monaco-editor .view-line');
  await page.waitForTimeout(800);
}

/**
 * Waits for a question of a command.
 * @param {Page} page
 * @param {string} start how its placeholder begins
 */
async function asked(page, start) {
  await page.waitForSelector(`.quick-input-widget input[placeholder^="${start}"]`, { state: 'visible' });
  await page.waitForTimeout(400);
}

/** Each step of the walkthrough. @type {[name: string, take: (page: Page) => Promise<void>][]} */
const steps = [
  [
    'read',
    async (page) => {
      await toFret(page);
      await hover(page);
    },
  ],
  [
    'tuning',
    async (page) => {
      await toFret(page);
      await command(page, 'Pegbox: Show Tuning Sheet');
      await viewFrame(page, 'Tuning Sheet').catch((error) => console.error(error.message));
    },
  ],
  [
    'share',
    async (page) => {
      await toFret(page);
      await command(page, 'Pegbox: Show Note Names Beside');
      await page.waitForTimeout(1500);
    },
  ],
  [
    'convert',
    async (page) => {
      await toFret(page);
      await command(page, 'Pegbox: Convert Passage to Another');
      await asked(page, 'Which passage');
      await page.keyboard.press('Enter');
      await asked(page, 'Which tuning');
      await page.keyboard.type('open D', { delay: 30 });
      await page.waitForTimeout(500);
      for (let i = 0; i < 3; i++) {
        await page.keyboard.press('Enter');
        await page.waitForTimeout(1200);
      }
      await page.waitForTimeout(2500);
      await command(page, 'Notifications: Clear All Notifications');
    },
  ],
  [
    'start',
    async (page) => {
      await command(page, 'Pegbox: New Tab');
      await asked(page, 'Which instrument');
      await page.keyboard.press('Enter');
      await asked(page, 'Which tuning');
      await page.keyboard.type('D', { delay: 40 });
    },
  ],
];

exitOnSignals();
const passing = mkdtempSync(path.join(tmpdir(), 'pegbox-walkthrough-'));
try {
  mkdirSync(values.out, { recursive: true });
  const folder = path.join(passing, 'demo');
  cpSync(inRoot('media/demo'), folder, { recursive: true });
  const host = await startNodeHost({ dataDir: path.join(passing, 'profile'), settings, forTests: true });
  try {
    const { page, close } = await openPage({ width: 1000, height: 620, colorScheme: 'light' });
    try {
      const file = path.join(folder, song);
      await page.goto(pageAddress(host, { folder, file, extensions: [linkExtension(passing)] }));
      await editorReady(page);
      await page.keyboard.press('Control+b');
      await page.waitForTimeout(2500);
      for (const [name, take] of steps) {
        await take(page).catch((error) => console.error(`${name}: ${error.message}`));
        await save(page, name);
        await closeOthers(page).catch((error) => console.error(`${name}: ${error.message}`));
      }
    } finally {
      await close();
    }
  } finally {
    await host.stop();
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
} finally {
  rmSync(passing, { recursive: true, force: true, maxRetries: 3 });
}
