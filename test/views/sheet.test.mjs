// The tuning sheet as a person works it.
import assert from 'node:assert/strict';
import { command, goTo, viewFrame } from '../../src/tools/hosts/drive.mjs';
import { closeEditor, editorPage, openFile, until, untilKept } from './editor.mjs';

/** @typedef {import('playwright-core').Frame} Frame */

after(closeEditor);

describe('The tuning sheet', () => {
  /** @type {import('playwright-core').Page} */
  let page;
  /** @type {Frame} */
  let view;

  /** @param {string} title */
  const section = (title) =>
    view.locator('details.section', { has: view.locator('h2', { hasText: new RegExp(`^${title}$`) }) });
  const heading = () => view.locator('h1').innerText();
  const status = () => view.locator('header [role=status]').innerText();
  /** The cursor into the text, which is in the first group of editors. @param {number} line */
  const cursorTo = async (line) => {
    await page.keyboard.press('Control+1');
    await goTo(page, line, 1);
  };

  before(async () => {
    page = await editorPage();
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await page.keyboard.press('Control+1');
    await openFile(page, 'retuned.pegbox');
    await cursorTo(17);
    await command(page, 'Pegbox: Show Tuning Sheet');
    view = await viewFrame(page, 'Tuning Sheet');
  });

  it('leaves the cursor in the text, and follows it from one tuning to the other', async () => {
    await until(async () => (await heading()) === 'Open E on the guitar');
    assert.ok(await page.evaluate(() => document.activeElement?.closest('.editor-instance') !== null));
    await cursorTo(7);
    await until(async () => (await heading()) === 'Standard on the guitar');
    // E2 of standard tuning is 82.41 Hz (ISO 16, A4 = 440 Hz, and equal temperament).
    assert.match(await section('Strings').innerText(), /6\s+E2\s+82\.41/);
  });

  it('says how to get here from the earlier tuning, in order, with cautions, and what carries over', async () => {
    await cursorTo(17);
    const retuning = section('Retuning');
    await until(async () => /^From standard: raise strings? /m.test(await retuning.innerText()));
    // Common practice, no source: open E from standard raises strings 5 and 4 a whole step, string 3 a half step.
    const steps = (await retuning.locator('ol > li').allInnerTexts()).map(
      (step) => step.split('\n')[0] ?? '',
    );
    const raised = steps.flatMap(
      (step) => /^Raise string (\d) slowly by (\d)/.exec(step)?.slice(1).join(' by ') ?? [],
    );
    assert.deepEqual(raised.sort(), ['3 by 1', '4 by 2', '5 by 2']);
    assert.match(steps.at(-1) ?? '', /^Check every string again/);
    assert.ok((await retuning.locator('.caution').innerText()).length > 0);
    assert.match(await retuning.innerText(), /What carries over/);
  });

  it('takes another tuning to come from, and tells beside the box one that it cannot read', async () => {
    const retuning = section('Retuning');
    await retuning.locator('select').selectOption('open D');
    await until(async () => (await retuning.innerText()).includes('From open D: raise'));
    await retuning.locator('select').selectOption({ label: 'another tuning…' });
    const box = retuning.locator('input');
    await box.fill('D A Q');
    await box.press('Enter');
    await until(async () => (await retuning.locator('.mistake').innerText()) !== '');
    assert.equal(await box.getAttribute('aria-invalid'), 'true');
    await box.fill('D A D G B E');
    await box.press('Enter');
    await until(async () => (await retuning.innerText()).includes('From drop D'));
    assert.equal(await retuning.locator('.mistake').innerText(), '');
  });

  it('keeps folded sections and the place on the page while it follows', async () => {
    await section('Strings').locator('summary').click();
    await view.evaluate(() => window.scrollTo(0, 150));
    await cursorTo(7);
    await until(async () => (await heading()) === 'Standard on the guitar');
    assert.equal(await section('Strings').getAttribute('open'), null);
    // What is looked at stays where it is, though lines above it become more or fewer.
    assert.ok(Math.abs((await view.evaluate(() => window.scrollY)) - 150) < 60);
    await cursorTo(17);
    await until(async () => (await heading()) === 'Open E on the guitar');
  });

  it('copies the frets of the scale, and the handout as text', async () => {
    await view.locator('button', { hasText: 'Copy Frets' }).click();
    await until(async () => (await status()) === 'The frets of the scale are copied.');
    const copied = () => page.evaluate(() => navigator.clipboard.readText());
    assert.match(await copied(), /^E major: 0 2 4 /);
    await view.locator('button', { hasText: 'Copy Handout as Text' }).click();
    await until(async () => (await status()) === 'The handout is copied as text.');
    assert.match(await copied(), /open E on the guitar/i);
  });

  it('saves the handout by the editor’s dialog', async () => {
    await view.locator('button', { hasText: 'Save Handout as SVG…' }).click();
    await page.waitForSelector('.quick-input-widget input', { state: 'visible' });
    const box = page.locator('.quick-input-widget input').first();
    await until(async () => (await box.inputValue()).endsWith('.svg'));
    await page.keyboard.press('Enter');
    await until(async () => /^Saved .+\.svg\.$/.test(await status()));
    await command(page, 'View: Show Explorer'); // whatever the side bar showed before
    await until(async () => (await page.locator('.explorer-folders-view').innerText()).includes('.svg'));
  });

  it('is there again after a reload of the window, as it was', async () => {
    // The page has the focus, so that no tab is active.
    // As far down as the page goes; again where the page was drawn anew meanwhile, which takes it elsewhere.
    let scroll = 0;
    await until(async () => {
      await view.locator('summary').first().focus();
      scroll = await view.evaluate(async () => {
        for (const at of [0, 157]) {
          window.scrollTo(0, at);
          await new Promise((resolve) => setTimeout(resolve, 200));
        }
        return Math.round(window.scrollY);
      });
      return untilKept(page, new RegExp(`Strings.*scroll\\\\*":${scroll}\\D`), 15_000).then(
        () => true,
        () => false,
      );
    }, 200_000);
    assert.ok(scroll > 60, `scrolled to ${scroll}`);
    await page.reload();
    view = await viewFrame(page, 'Tuning Sheet');
    // The editor may have forgotten where the cursor stood; the page is filled before anything has the focus.
    await until(async () => / on the guitar$/.test(await heading()));
    await cursorTo(17);
    await until(async () => (await heading()) === 'Open E on the guitar');
    assert.equal(await section('Strings').getAttribute('open'), null);
    await until(async () => (await section('Retuning').innerText()).includes('From drop D'));
    await until(async () => Math.abs((await view.evaluate(() => window.scrollY)) - scroll) < 60);
    await section('Strings').locator('summary').click();
  });
});
