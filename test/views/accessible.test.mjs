// Every page in every theme: axe-core finds nothing wrong at WCAG 2.1 AA (https://www.w3.org/TR/WCAG21/).
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { viewFrame } from '../../src/tools/hosts/drive.mjs';
import { closeEditor, editorPage, takeTheme, themes } from './editor.mjs';
import { views } from './views.mjs';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa'];

/** @param {import('playwright-core').Frame} view */
async function whatIsWrong(view) {
  await view.evaluate(axe);
  return view.evaluate(async (values) => {
    const { axe: run } = /** @type {{ axe: typeof import('axe-core') }} */ (
      /** @type {unknown} */ (globalThis)
    );
    const { violations, passes } = await run.run(document, { runOnly: { type: 'tag', values } });
    const told = violations.flatMap(({ id, help, nodes }) =>
      nodes.map(({ html, failureSummary }) => `${id}: ${help}\n  ${html}\n  ${failureSummary}`),
    );
    return { told, passed: passes.length };
  }, tags);
}

after(closeEditor);

for (const { title, open, states = [] } of views)
  describe(`The page ${title}`, () => {
    for (const kind of /** @type {(keyof typeof themes)[]} */ (Object.keys(themes)))
      it(`is accessible in ${themes[kind]}`, async () => {
        const page = await editorPage();
        let view = await viewFrame(page, title, 1).catch(() => undefined);
        if (!view) await open(page);
        view ??= await viewFrame(page, title);
        await takeTheme(page, view, kind);
        for (const state of [undefined, ...states]) {
          if (state) await view.locator(state).first().click();
          const { told, passed } = await whatIsWrong(view);
          assert.deepEqual(told, []);
          assert.ok(passed > 5, 'axe looked at next to nothing');
        }
      });
  });
