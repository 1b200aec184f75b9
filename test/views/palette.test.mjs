// The command palette, looked through with the keyboard: what is offered where.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { command } from '../../src/tools/hosts/drive.mjs';
import { inRoot } from '../../src/tools/paths.mjs';
import { closeEditor, editorPage, openFile } from './editor.mjs';

/** @typedef {import('playwright-core').Page} Page */

const { contributes } = /** @type {{ contributes: { commands: { command: string, title: string }[],
  menus: { commandPalette: { command: string, when: string }[] } } }} */ (
  JSON.parse(readFileSync(inRoot('package.json'), 'utf8'))
);

/** Titles of the commands of which this holds, in order. @param {(when: string) => boolean} holds */
function titlesWhere(holds) {
  const conditions = new Map(contributes.menus.commandPalette.map(({ command: id, when }) => [id, when]));
  return contributes.commands
    .filter(({ command: id }) => holds(conditions.get(id) ?? ''))
    .map(({ title }) => `Pegbox: ${title}`)
    .sort();
}

/** What the palette offers of Pegbox. @param {Page} page @returns {Promise<string[]>} */
async function offered(page) {
  await page.keyboard.press('F1');
  await page.waitForSelector('.quick-input-widget input', { state: 'visible' });
  await page.keyboard.type('Pegbox:', { delay: 10 });
  await page.locator('.quick-input-list .monaco-list-row[aria-label^="Pegbox: "]').first().waitFor();
  await page.waitForTimeout(1000); // the list is sorted again as the last letters arrive
  /** @type {Set<string>} */
  const found = new Set();
  // Only rows in sight are there; it goes round at the end.
  for (let first = ''; ;) {
    const focused = page.locator('.quick-input-list .monaco-list-row.focused');
    const label = ((await focused.getAttribute('aria-label')) ?? '').replace(/,.*$/, '');
    if (label === first) break;
    first ||= label;
    // The editor itself has a command for each view of the side bar.
    if (/^Pegbox: (?!Focus on .* View$)/.test(label)) found.add(label);
    await page.keyboard.press('ArrowDown');
  }
  await page.keyboard.press('Escape');
  return [...found].sort();
}

const anywhere = (/** @type {string} */ when) => when === '' || when === 'workspaceFolderCount > 0';

after(closeEditor);

describe('The command palette', () => {
  it('has in a tab every command that works in a tab', async () => {
    const page = await editorPage();
    await openFile(page, 'lantern.pegbox');
    await page.locator('.view-line').first().click();
    const inTab = (/** @type {string} */ when) =>
      anywhere(when) ||
      (when.startsWith('editorLangId == pegbox') && !when.includes('gitOpenRepositoryCount'));
    assert.deepEqual(await offered(page), titlesWhere(inTab));
  });

  it('has in a text of another kind what works anywhere, and nothing else', async () => {
    const page = await editorPage();
    await command(page, 'File: New Untitled Text File');
    await page.waitForSelector('.tab.active:has-text("Untitled")');
    await command(page, 'Change Language Mode');
    await page.waitForTimeout(500); // its list takes the place of the palette's
    await page.keyboard.type('Markdown', { delay: 20 });
    await page.locator('.quick-input-list .monaco-list-row:has-text("Markdown")').first().waitFor();
    await page.keyboard.press('Enter');
    await page.locator('.statusbar-item:has-text("Markdown")').first().waitFor();
    assert.deepEqual(await offered(page), titlesWhere(anywhere));
    await command(page, 'View: Revert and Close Editor');
  });

  it('has the same where no file is open', async () => {
    const page = await editorPage();
    await command(page, 'View: New Editor Group to the Right');
    await page.waitForSelector('.editor-group-container.active.empty');
    assert.deepEqual(await offered(page), titlesWhere(anywhere));
    await command(page, 'View: Close Editor Group');
  });
});
