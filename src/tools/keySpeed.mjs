// Measures in the page itself how long a key takes until the text changes there.
import { editorReady, goTo } from './hosts/drive.mjs';

/** @typedef {import('playwright-core').Page} Page */

const KEYS = 80;
const ROUNDS = 3;

/** A tab of so many bars, four a line. @param {number} bars */
function text(bars) {
  const lines = ['title: Long Way Round', ''];
  for (let bar = 0; bar < bars; bar += 4) {
    for (const label of ['E4', 'B3', 'G3', 'D3', 'A2', 'E2'])
      lines.push(`${label} |${'0---2---3---5---|'.repeat(Math.min(4, bars - bar))}`);
    lines.push('');
  }
  return lines.join('\n');
}

/** @param {Page} page @param {string} file @returns {Promise<number[]>} milliseconds */
async function times(page, file) {
  await page.locator('.explorer-folders-view .monaco-list-row').filter({ hasText: file }).dblclick();
  await page.waitForSelector(`.tab.active[data-resource-name="${file}"]`);
  await editorReady(page);
  const line = file.startsWith('long') ? 8753 : 11;
  await goTo(page, line, 6);
  await page.keyboard.press('3');
  await page.keyboard.press('ArrowLeft');
  await page.waitForTimeout(1500);
  await page.evaluate(() => {
    const seen = /** @type {{ pegboxTimes?: number[], pegboxOff?: () => void }} */ (globalThis);
    seen.pegboxOff?.();
    seen.pegboxTimes = [];
    let from = 0;
    const pressed = (/** @type {KeyboardEvent} */ event) => {
      if (/^[0-9]$/.test(event.key)) from = performance.now();
    };
    const observer = new globalThis.MutationObserver(() => {
      if (from > 0) seen.pegboxTimes?.push(performance.now() - from);
      from = 0;
    });
    window.addEventListener('keydown', pressed, true);
    observer.observe(document.querySelector('.editor-instance .view-lines') ?? document.body, {
      childList: true,
      subtree: true,
      characterData: true,
    });
    seen.pegboxOff = () => {
      window.removeEventListener('keydown', pressed, true);
      observer.disconnect();
    };
  });
  for (let i = 0; i < KEYS; i++) {
    await page.keyboard.press(String(4 + (i % 5)));
    await page.waitForTimeout(60);
    await page.keyboard.press('ArrowLeft');
    await page.waitForTimeout(40);
  }
  return page.evaluate(() => /** @type {{ pegboxTimes?: number[] }} */ (globalThis).pegboxTimes ?? []);
}

const at = (/** @type {number[]} */ all, /** @type {number} */ share) =>
  [...all].sort((a, b) => a - b)[Math.min(all.length - 1, Math.floor(all.length * share))] ?? NaN;

/** @param {Page} page @param {[string, string]} files short and long */
async function run(page, files) {
  /** @type {number[][]} */
  const all = [[], []];
  for (let round = 0; round < ROUNDS; round++)
    for (const [i, file] of files.entries()) all[i]?.push(...(await times(page, file)));
  const [short = [], long = []] = all;
  for (const [name, list] of /** @type {const} */ ([
    ['10 bars', short],
    ['10,000 bars', long],
  ]))
    console.log(
      `key to text, ${name}: median ${at(list, 0.5).toFixed(1)} ms, p95 ${at(list, 0.95).toFixed(1)} ms (${list.length} keys)`,
    );
  console.log(
    `10,000 / 10 bars: median ${(at(long, 0.5) / at(short, 0.5)).toFixed(2)}, p95 ${(at(long, 0.95) / at(short, 0.95)).toFixed(2)} (goal: at most 1.2)`,
  );
}

export const measureKeys = { text, run };
