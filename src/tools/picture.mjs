// Takes a picture of the running extension in a real VS Code (the Node host) and saves it as PNG.
//
//   node src/tools/picture.mjs --file NAME [options]
//
//   --file NAME      what to open: a file of the demo folder, or any path (a copy is opened, the file stays as it is)
//   --line N         where the cursor goes, from 1; default 1
//   --column N       default 1
//   --view TITLE     then waits for a page of the extension, such as "Neck"
//   --click SELECTOR then clicks in that page: "text=Write", "#place-3-2"; may come more than once
//   --choose S=V     then chooses in a list of that page: "select >> nth=0=degrees"; may come more than once
//   --hover          shows the hover there, and prints its text
//   --command TITLE  then runs a command by its title in the palette; may come more than once
//   --keys KEYS      then presses keys, one after the other: "Control+Shift+O", "Escape Down Down Enter";
//                    a key of more than one letter that is none is typed as text: "convert"
//   --out FILE       default media/picture.png
//   --width N        of the window, in pixels; default 1280
//   --height N       default 800
//   --scale N        pixels of the picture to one of the window; default 1
//   --theme NAME     light, dark (default), hc, hc-light
//   --bare           leaves out side bar, activity bar and status bar
//   --settings JSON  user settings: '{"editor.fontSize":16}'
//   --wait MS        before the picture; default 1500
//
// Order: open, go to the place, commands, view with its lists and clicks, keys, hover, picture. Needs a build (npm run build).
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { exitOnSignals } from './exitOnSignals.mjs';
import { command, editorReady, goTo, hover, viewFrame } from './hosts/drive.mjs';
import { linkExtension } from './hosts/linkExtension.mjs';
import { pageAddress, startNodeHost } from './hosts/nodeHost.mjs';
import { openPage } from './hosts/page.mjs';
import { inRoot } from './paths.mjs';

const themes = {
  light: 'Default Light Modern',
  dark: 'Default Dark Modern',
  hc: 'Default High Contrast',
  'hc-light': 'Default High Contrast Light',
};

const { values } = parseArgs({
  options: {
    file: { type: 'string' },
    line: { type: 'string', default: '1' },
    column: { type: 'string', default: '1' },
    hover: { type: 'boolean', default: false },
    command: { type: 'string', multiple: true, default: [] },
    view: { type: 'string' },
    click: { type: 'string', multiple: true, default: [] },
    choose: { type: 'string', multiple: true, default: [] },
    keys: { type: 'string', default: '' },
    out: { type: 'string', default: inRoot('media/picture.png') },
    width: { type: 'string', default: '1280' },
    height: { type: 'string', default: '800' },
    scale: { type: 'string', default: '1' },
    theme: { type: 'string', default: 'dark' },
    bare: { type: 'boolean', default: false },
    settings: { type: 'string', default: '{}' },
    wait: { type: 'string', default: '1500' },
  },
});

/** Settings that take away what surrounds the text. */
const bareSettings = {
  'workbench.activityBar.location': 'hidden',
  'workbench.statusBar.visible': false,
  'window.commandCenter': false,
  'workbench.layoutControl.enabled': false,
  'editor.minimap.enabled': false,
};

/**
 * A copy of the demo folder, with the file to open in it.
 * @param {string} into
 * @returns {string} the file to open
 */
function copyFiles(into) {
  mkdirSync(into);
  if (existsSync(inRoot('media/demo'))) cpSync(inRoot('media/demo'), into, { recursive: true });
  if (!values.file) throw new Error('Say what to open: --file NAME');
  const inDemo = path.join(into, values.file);
  if (existsSync(inDemo)) return inDemo;
  const elsewhere = path.resolve(values.file);
  if (!existsSync(elsewhere)) throw new Error(`There is no file ${values.file}, here or in media/demo.`);
  const copy = path.join(into, path.basename(elsewhere));
  cpSync(elsewhere, copy);
  return copy;
}

/** @param {import('playwright-core').Page} page */
async function takePicture(page) {
  await editorReady(page);
  if (values.bare) await page.keyboard.press('Control+b');
  await goTo(page, Number(values.line), Number(values.column));
  await page.waitForTimeout(1500); // the extension starts, colours and diagnostics arrive
  for (const title of values.command) {
    await command(page, title);
    await page.waitForTimeout(500);
  }
  if (values.view) {
    const view = await viewFrame(page, values.view);
    for (const choice of values.choose) {
      const at = choice.lastIndexOf('=');
      await view.locator(choice.slice(0, at)).selectOption(choice.slice(at + 1));
    }
    for (const selector of values.click) await view.locator(selector).first().click();
  }
  for (const key of values.keys.split(' ').filter(Boolean)) {
    await page.keyboard.press(key).catch(() => page.keyboard.type(key, { delay: 20 }));
    await page.waitForTimeout(300);
  }
  await page.mouse.move(0, 0); // first: the mouse closes a hover that the keyboard opened
  if (values.hover) console.log(await hover(page));
  await page.waitForTimeout(Number(values.wait));
  mkdirSync(path.dirname(path.resolve(values.out)), { recursive: true });
  await page.screenshot({ path: values.out });
  console.log(`Saved ${values.out}`);
}

exitOnSignals();
const passing = mkdtempSync(path.join(tmpdir(), 'pegbox-picture-'));
try {
  const theme = Object.entries(themes).find(([name]) => name === values.theme)?.[1];
  if (!theme) throw new Error(`--theme takes ${Object.keys(themes).join(', ')}, not ${values.theme}.`);
  const folder = path.join(passing, 'demo');
  const file = copyFiles(folder);
  const settings = {
    'workbench.colorTheme': theme,
    ...(values.bare && bareSettings),
    ...JSON.parse(values.settings),
  };
  const host = await startNodeHost({ dataDir: path.join(passing, 'profile'), settings, forTests: true });
  try {
    const { page, close } = await openPage({
      width: Number(values.width),
      height: Number(values.height),
      scale: Number(values.scale),
      colorScheme: values.theme.endsWith('light') ? 'light' : 'dark',
    });
    try {
      await page.goto(pageAddress(host, { folder, file, extensions: [linkExtension(passing)] }));
      await takePicture(page);
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
