// The walkthrough as a user goes through it: each step's button does what it says, and ticks that step alone.
import assert from 'node:assert/strict';
import { command } from '../../src/tools/hosts/drive.mjs';
import { closeEditor, editorPage, until } from './editor.mjs';

/** Steps in their order: the button, and what comes up when it was pressed. */
const steps = [
  { id: 'read', button: 'Point at a Fret', shows: '.monaco-hover:not(.hidden) .hover-contents' },
  { id: 'tuning', button: 'Show the Tuning Sheet', shows: '.tab:has-text("Tuning")' },
  { id: 'convert', button: 'Convert a Passage', shows: '.quick-input-widget:visible:has-text("Convert")' },
  { id: 'share', button: 'Show Note Names Beside', shows: '.tab:has-text("Note names of")' },
  { id: 'start', button: 'New Tab', shows: '.quick-input-widget:visible:has-text("New tab")' },
];

/** @typedef {import('playwright-core').Page} Page */

/** @param {Page} page */
async function openWalkthrough(page) {
  const shown = page.locator('.getting-started-step').first();
  if (await shown.isVisible()) return;
  const tab = page.locator('.tab:has-text("Walkthrough")');
  if ((await tab.count()) > 0) {
    await tab.first().click();
  } else {
    await command(page, 'Welcome: Open Walkthrough');
    await page.waitForTimeout(500); // its list takes the place of the palette's
    await page.keyboard.type('Tab in Your Own', { delay: 20 });
    await page.locator('.quick-input-list .monaco-list-row:has-text("Tab in Your Own")').first().waitFor();
    await page.keyboard.press('Enter');
  }
  await shown.waitFor();
}

/** The steps that are ticked. @param {Page} page @returns {Promise<string[]>} */
async function ticked(page) {
  await openWalkthrough(page);
  return page
    .locator('.getting-started-step[aria-checked="true"]')
    .evaluateAll((all) => all.map((step) => step.getAttribute('data-step-id')?.replace(/^.*#/, '') ?? ''));
}

after(closeEditor);

describe('The walkthrough', () => {
  before(async () => {
    // Other pages were shown in this editor before, which ticks their steps too.
    await command(await editorPage(), 'Developer: Reset Welcome Page Walkthrough Progress');
  });

  it('has five steps, each with a picture that is there', async () => {
    const page = await editorPage();
    await openWalkthrough(page);
    assert.equal(await page.locator('.getting-started-step').count(), 5);
    assert.deepEqual(await ticked(page), []);
  });

  for (const [i, { id, button, shows }] of steps.entries())
    it(`ticks the step “${id}” and no other when its button is pressed`, async () => {
      const page = await editorPage();
      const before = await ticked(page);
      const step = page.locator(`.getting-started-step[data-step-id$="${id}"]`);
      const shown = page.locator(shows).first();
      // Again when nothing came: a list closes by itself when an editor that opens late takes the keys.
      await until(async () => {
        await openWalkthrough(page);
        if (!(await step.getByRole('button', { name: button }).isVisible())) await step.click();
        await step.getByRole('button', { name: button }).click();
        return shown.waitFor({ timeout: 15_000 }).then(
          () => true,
          () => false,
        );
      });
      await page.keyboard.press('Escape');
      await until(async () => (await ticked(page)).length > before.length);
      assert.deepEqual(
        (await ticked(page)).sort(),
        steps
          .slice(0, i + 1)
          .map((one) => one.id)
          .sort(),
      );
    });
});
