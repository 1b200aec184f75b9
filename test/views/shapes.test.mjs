// The page of shapes as a person works it, by keyboard.
import assert from 'node:assert/strict';
import { command, editorText, goTo, viewFrame } from '../../src/tools/hosts/drive.mjs';
import { closeEditor, editorPage, openFile, until, untilKept } from './editor.mjs';

/** @typedef {import('playwright-core').Frame} Frame */

after(closeEditor);

describe('The shapes', () => {
  /** @type {import('playwright-core').Page} */
  let page;
  /** @type {Frame} */
  let view;

  const box = () => view.locator('#chord');
  const problem = () => view.locator('#chord-problem').innerText();
  const status = () => view.locator('.status').innerText();
  const chosen = () => view.locator('input[type=radio]:checked').inputValue();
  const copied = () => page.evaluate(() => navigator.clipboard.readText());
  const focusInText = () => page.evaluate(() => document.activeElement?.closest('.editor-instance') !== null);

  before(async () => {
    page = await editorPage();
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await page.keyboard.press('Control+1');
    await openFile(page, 'named.pegbox');
    await goTo(page, 5, 19); // on A7sus4
    await command(page, 'Pegbox: Find Shapes');
    view = await viewFrame(page, 'Shapes');
  });

  it('begin with the chord at the cursor, ready to be typed over', async () => {
    await until(async () => (await box().inputValue()) === 'A7sus4');
    await until(async () => (await view.locator('.card').count()) > 0);
    assert.ok((await view.locator('.card').count()) <= 12);
    assert.equal(await view.locator('.card svg.picture').count(), await view.locator('.card').count());
    await until(async () => view.evaluate(() => document.activeElement?.id === 'chord'));
    await page.keyboard.type('G/B');
    await until(async () => (await view.locator('main').innerText()).includes('G/B (G B D'));
  });

  it('tell beside the box a chord that cannot be read, and write nothing then', async () => {
    await box().fill('Hm7');
    await until(async () => (await problem()) !== '');
    assert.equal(await box().getAttribute('aria-invalid'), 'true');
    assert.equal(await box().getAttribute('aria-describedby'), 'chord-problem');
    assert.ok(await view.locator('button.main').isDisabled());
    await box().fill('D');
    await until(async () => (await problem()) === '' && (await view.locator('button.main').isEnabled()));
  });

  it('are chosen by arrow keys, each told in words', async () => {
    const first = await chosen();
    const words = () => view.locator('.chosen > p').innerText();
    const before = await words();
    await view.locator('input[type=radio]:checked').focus();
    await page.keyboard.press('ArrowRight');
    assert.notEqual(await chosen(), first);
    assert.notEqual(await words(), before);
    await page.keyboard.press('ArrowLeft');
    assert.equal(await chosen(), first);
  });

  it('are written by Enter where the cursor last stood: one undo, and the focus is in the text', async () => {
    const before = await editorText(page);
    const shape = (await chosen()).split(' ');
    await view.locator('input[type=radio]:checked').focus();
    await page.keyboard.press('Enter');
    await until(async () => (await editorText(page)) !== before);
    await until(focusInText);
    // The cursor stood over the tenth column of the first bar; the top line is string 1.
    const lines = (await editorText(page)).split('\n').filter((line) => /^[A-G]\d +\|/.test(line));
    const column = lines.map((line) => line.slice(line.indexOf('|') + 1).match(/^[-.]*([\dx]+)/)?.[1] ?? 'x');
    assert.deepEqual(column.reverse(), shape);
    await page.keyboard.press('Control+z');
    await until(async () => (await editorText(page)) === before);
  });

  it('are copied as tab', async () => {
    await view.locator('button', { hasText: 'Copy as Tab' }).click();
    await until(async () => (await status()).endsWith('is copied as tab.'));
    const lines = (await copied()).trimEnd().split('\n');
    assert.match(lines[0] ?? '', /^chords\s*\|D/);
    assert.equal(lines.length, 7);
  });

  it('are saved as pictures', async () => {
    await view.locator('button', { hasText: 'Save Picture…' }).click();
    await page.waitForSelector('.quick-input-widget input', { state: 'visible' });
    const file = page.locator('.quick-input-widget input').first();
    await until(async () => /D-[\dx-]+\.svg$/.test(await file.inputValue()));
    await page.keyboard.press('Enter');
    await until(async () => /^Saved D-[\dx-]+\.svg\.$/.test(await status()));
  });

  it('of the usual tuning stand beside what became of them, string by string', async () => {
    await view.locator('[role=tab]').first().focus();
    await page.keyboard.press('ArrowRight');
    await until(async () => (await view.locator('.pair svg.picture').count()) === 2);
    assert.equal(await view.locator('.pair tbody tr').count(), 6);
    await box().fill('x32010');
    await until(async () => (await view.locator('.pair').innerText()).includes('x 3 2 0 1 0'));
  });

  it('of the song are all there, and lead to their places', async () => {
    await view.locator('[role=tab]', { hasText: 'This song' }).click();
    await until(async () => (await view.locator('.song > li').count()) === 4);
    const names = await view.locator('.song h2').allInnerTexts();
    assert.deepEqual(names, ['Gadd9', 'A7sus4', 'D', 'Bm7']);
    await view.locator('.song button').nth(3).click();
    await until(focusInText);
    await until(async () =>
      (await page.locator('.part.statusbar').innerText()).replaceAll('\n', ' ').includes('Ln 5, Col 34'),
    );
  });

  it('are there again after a reload of the window', async () => {
    await view.locator('[role=tab]').first().click();
    await box().fill('Gadd9');
    await until(async () => (await view.locator('main').innerText()).includes('Gadd9 (G '));
    await view.locator('.card').nth(2).click();
    const shape = await chosen();
    await untilKept(page, new RegExp(`Gadd9.*${shape}`));
    await page.reload();
    view = await viewFrame(page, 'Shapes');
    await until(async () => (await view.locator('.card').count()) > 2);
    assert.equal(await box().inputValue(), 'Gadd9');
    assert.equal(await chosen(), shape);
  });
});
