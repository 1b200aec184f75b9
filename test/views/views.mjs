// Every page of the extension that is opened in all themes and checked for accessibility. To add one: a row here.
import { command, goTo } from '../../src/tools/hosts/drive.mjs';
import { openFile } from './editor.mjs';

/**
 * @typedef {object} View
 * @property {string} title of its page
 * @property {(page: import('playwright-core').Page) => Promise<void>} open from a workbench in any state
 * @property {string[]} [states] further states, each reached by clicking the selector in the page
 */

/** @type {View[]} */
export const views = [
  {
    title: 'Neck',
    async open(page) {
      await openFile(page, 'lantern.pegbox');
      await goTo(page, 5, 11);
      await command(page, 'Pegbox: Show Neck');
    },
    states: ['button:has-text("As a table")', 'button:has-text("As a table")'],
  },
  {
    title: 'Tuning Sheet',
    async open(page) {
      await page.keyboard.press('Control+1');
      await openFile(page, 'retuned.pegbox');
      await goTo(page, 17, 1);
      await command(page, 'Pegbox: Show Tuning Sheet');
    },
    states: ['text=Checks by ear', 'text=Checks by ear'],
  },
  {
    title: 'Shapes',
    async open(page) {
      await page.keyboard.press('Control+1');
      await openFile(page, 'named.pegbox');
      await goTo(page, 5, 19);
      await command(page, 'Pegbox: Find Shapes');
    },
    states: ['text=What became of my shape', 'text=This song', '#tab-shapes'],
  },
];
