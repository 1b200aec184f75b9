// Works a VS Code page by keyboard, as a user would.

/** @typedef {import('playwright-core').Page} Page */

/**
 * Waits until the workbench and a first editor are drawn.
 * @param {Page} page
 */
export async function editorReady(page) {
  await page.waitForSelector('.monaco-workbench .part.statusbar, .monaco-workbench.nostatusbar', {
    timeout: 60_000,
    state: 'attached',
  });
  await page.waitForSelector('.monaco-editor .view-line', { timeout: 60_000 });
}

/**
 * Runs a command by its title, from the command palette.
 * @param {Page} page
 * @param {string} title as the palette shows it, such as `Pegbox: Convert Passage`
 * @throws {Error} when the palette knows no such command
 */
export async function command(page, title) {
  for (let tries = 0; tries < 20; tries++) {
    await page.keyboard.press('F1');
    const shown = page.waitForSelector('.quick-input-widget input', { state: 'visible', timeout: 1000 });
    if (await shown.catch(() => undefined)) break;
  }
  await page.keyboard.type(title, { delay: 10 });
  await page.waitForSelector('.quick-input-list .monaco-list-row', { timeout: 15_000 });
  await page.waitForTimeout(400); // the list is sorted again as the last letters arrive
  const first = await page.locator('.quick-input-list .monaco-list-row').first().innerText();
  if (/no matching/i.test(first)) throw new Error(`The command palette has no “${title}”.`);
  await page.keyboard.press('Enter');
}

/**
 * Puts the cursor in the text, so that keys go there.
 * @param {Page} page
 * @param {number} line from 1
 * @param {number} column from 1
 */
export async function goTo(page, line, column) {
  // Headings that stay in sight while one scrolls may lie over the first line: then the middle of the text will do.
  const clicked = page.locator('.monaco-editor .view-line').first().click({ timeout: 3000 });
  await clicked.catch(() => page.locator('.monaco-editor .view-lines').first().click());
  await page.keyboard.press('Control+g');
  await page.waitForSelector('.quick-input-widget input', { state: 'visible' });
  await page.keyboard.type(`${line}:${column}`);
  await page.waitForTimeout(100);
  await page.keyboard.press('Enter');
  await page.waitForTimeout(200);
}

/**
 * Shows the hover at the cursor.
 * @param {Page} page
 * @returns {Promise<string>} its text
 * @throws {Error} when there is none: the language server may have no answer there
 */
export async function hover(page) {
  for (let tries = 0; tries < 20; tries++) {
    await page.keyboard.press('Control+k');
    await page.keyboard.press('Control+i');
    const shown = page.waitForSelector('.monaco-hover:not(.hidden) .hover-contents', {
      state: 'visible',
      timeout: 1500,
    });
    if (await shown.catch(() => undefined)) {
      const text = (await page.locator('.monaco-hover .hover-contents').allInnerTexts()).join('\n');
      if (/\S/.test(text) && !text.includes('Loading')) return text;
    }
    await page.keyboard.press('Escape');
  }
  throw new Error('No hover came up.');
}

/**
 * The page inside a webview of the extension, by its title: the frame that the editor keeps inside a frame of its own.
 * @param {Page} page
 * @param {string} title such as `Neck`
 * @param {number} [patience] how long it is waited for, in milliseconds
 * @returns {Promise<import('playwright-core').Frame>}
 * @throws {Error} when no such page is there by then
 */
export async function viewFrame(page, title, patience = 120_000) {
  for (const end = Date.now() + patience; Date.now() < end;) {
    for (const frame of page.frames()) if ((await filledTitle(frame)) === title) return frame;
    await page.waitForTimeout(50);
  }
  const there = (await Promise.all(page.frames().map(filledTitle))).filter(Boolean);
  throw new Error(`No page “${title}” came up; there were: ${there.join(', ') || 'none'}.`);
}

/**
 * The title of a page of the extension once it has drawn something. A frame that is being loaded may never answer, so it
 * is not waited for long.
 * @param {import('playwright-core').Frame} frame
 * @returns {Promise<string | undefined>}
 */
async function filledTitle(frame) {
  const filled = () => (document.getElementById('view')?.childElementCount ? document.title : undefined);
  const answer = frame.evaluate(filled).catch(() => undefined);
  return Promise.race([answer, frame.page().waitForTimeout(3000)]).then((title) => title ?? undefined);
}

/**
 * The text of the editor in front.
 * @param {Page} page
 */
export async function editorText(page) {
  const lines = await page.locator('.editor-instance .view-lines .view-line').evaluateAll((all) =>
    all
      .map((line) => ({
        top: parseInt(/** @type {HTMLElement} */ (line).style.top),
        text: (line.textContent ?? '').replaceAll('\u00a0', ' '),
      }))
      .sort((a, b) => a.top - b.top)
      .map(({ text }) => text),
  );
  return lines.join('\n');
}
