// The neck as a person works it, by keyboard and mouse.
import assert from 'node:assert/strict';
import { command, editorText, goTo, viewFrame } from '../../src/tools/hosts/drive.mjs';
import { closeEditor, editorPage, hostName, openFile, until, untilKept } from './editor.mjs';

/** @typedef {import('playwright-core').Frame} Frame */

/** @param {Frame} view */
const focused = (view) => view.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');

/** @param {Frame} view @param {string} name */
const labelOf = (view, name) => view.locator(`[role=gridcell][aria-label^="${name}"]`).innerText();

after(closeEditor);

describe('The neck', () => {
  /** @type {import('playwright-core').Page} */
  let page;
  /** @type {Frame} */
  let view;

  before(async () => {
    page = await editorPage();
    await openFile(page, 'lantern.pegbox');
    await goTo(page, 5, 11);
    await command(page, 'Pegbox: Show Neck');
    view = await viewFrame(page, 'Neck');
  });

  it('names the places of the tuning in force, and what sounds at the cursor', async () => {
    assert.match(await view.locator('h1').innerText(), /^DADGAD: D2 A2 D3 G3 A3 D4$/);
    assert.equal(await labelOf(view, 'string 3 fret 2, A'), 'A');
    // The last beat of the bar: strings 3 and 1 are struck, string 6 rings from the first beat.
    const sounding = view.locator('[role=gridcell] .struck');
    await until(async () => (await sounding.allInnerTexts()).join(' ') === 'G E');
    assert.ok((await view.locator('[role=gridcell] .rings').count()) > 0);
  });

  it('follows the cursor', async () => {
    await goTo(page, 7, 14);
    await until(async () => (await view.locator('.moment').innerText()).includes('A3 on string 3, fret 2'));
    await goTo(page, 5, 11);
    await until(async () => (await view.locator('.moment').innerText()).includes('E4 on string 1, fret 2'));
  });

  it('is walked by arrow keys, one place at a time under Tab', async () => {
    await view.locator('#place-6-0').focus();
    await page.keyboard.press('ArrowDown');
    assert.match(await focused(view), /^string 6 fret 1, Eb/);
    await page.keyboard.press('ArrowRight');
    assert.match(await focused(view), /^string 5 fret 1, Bb/);
    await page.keyboard.press('End');
    assert.match(await focused(view), /^string 5 fret 12, A/);
    await page.keyboard.press('Home');
    assert.match(await focused(view), /^string 5 open, A/);
    assert.equal(await view.locator('[role=gridcell][tabindex="0"]').count(), 1);
  });

  it('writes the selected place at the cursor and gives the focus back; its Undo takes it back', async () => {
    const before = await editorText(page);
    assert.match(before, /A2 \|----0---\|/);
    await view.locator('#place-5-0').focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await until(async () => (await editorText(page)).includes('A2 |----0-2-|'));
    const focus = () => page.evaluate(() => document.activeElement?.closest('.editor-instance') !== null);
    await until(focus);
    await view.locator('text=Undo').click();
    await until(async () => (await editorText(page)) === before);
    await until(focus);
  });

  it('refuses in a sentence outside a system', async () => {
    await goTo(page, 1, 1);
    await until(async () => view.locator('button.main').isDisabled());
    assert.match(await view.locator('main').innerText(), /Put the cursor on a column of a system of tab/);
    await goTo(page, 5, 11);
    await until(async () => view.locator('button.main').isEnabled());
  });

  it('marks a chord, and says beside the input what it cannot read', async () => {
    await view.locator('label:has-text("Mark") select').selectOption('chord');
    await view.locator('input').fill('Hm7');
    await until(async () => (await view.locator('#problem').innerText()).includes('H is B here'));
    await view.locator('input').fill('G/B');
    await until(async () => (await view.locator('.marked').innerText()).includes('G/B: G B D'));
    assert.equal(await view.locator('#problem').innerText(), '');
    await view.locator('label:has-text("Show") select').selectOption('intervals');
    assert.equal(await labelOf(view, 'string 4 open, D'), 'P5');
  });

  it('remembers choices and place over a reload of the window', async () => {
    await view.locator('#place-4-5').click();
    await until(async () => (await view.locator('#place-4-5').getAttribute('aria-selected')) === 'true');
    await untilKept(page, /intervals.*string\\*":4,\\*"fret\\*":5/);
    await untilKept(page, /workbench\.view\.extension\.pegbox/); // the side bar shows the neck
    await page.reload();
    view = await viewFrame(page, 'Neck');
    await until(
      async () => (await view.locator('label:has-text("Show") select').inputValue()) === 'intervals',
    );
    assert.equal(await view.locator('input').inputValue(), 'G/B');
    await until(async () => (await view.locator('.marked').innerText()).includes('G/B'));
    assert.equal(await view.locator('[aria-selected=true]').getAttribute('id'), 'place-4-5');
    await view.locator('label:has-text("Mark") select').selectOption('key');
    await view.locator('label:has-text("Show") select').selectOption('notes');
  });

  it('follows the cursor over 24 frets and 8 strings', async () => {
    await openFile(page, 'eight.pegbox');
    await view.locator('label:has-text("Frets") select').selectOption('0');
    await goTo(page, 5, 6);
    await until(async () => (await view.locator('[role=gridcell]').count()) === 200);
    await view.evaluate(() => performance.clearMeasures());
    for (let i = 0; i < 34; i++) {
      await page.keyboard.press('ArrowRight');
      await page.waitForTimeout(70); // as a player moves: each stop is answered
    }
    const spent = await view.evaluate(() =>
      performance.getEntriesByName('pegbox-neck').map(({ duration }) => duration),
    );
    assert.ok(spent.length > 10, `${spent.length} answers were drawn`);
    spent.sort((a, b) => a - b);
    const at = (/** @type {number} */ share) =>
      (spent[Math.floor((spent.length - 1) * share)] ?? 0).toFixed(1);
    console.log(
      `neck, ${hostName}: script following the cursor, 24 frets and 8 strings: median ${at(0.5)} ms, 95 % within ${at(0.95)} ms, most ${at(1)} ms of ${spent.length} (wanted: 8)`,
    );
    await view.locator('label:has-text("Frets") select').selectOption('12');
  });
});
