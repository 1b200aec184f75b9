// How the editor tests are bundled: every file of test/editor/suite goes into one module.
import { readdirSync } from 'node:fs';
import { inRoot } from './paths.mjs';

const folder = inRoot('test/editor/suite');

/** @type {import('esbuild').Plugin} */
const allTests = {
  name: 'all editor tests',
  setup(build) {
    build.onResolve({ filter: /^all-editor-tests$/ }, ({ path }) => ({
      path,
      namespace: 'all-editor-tests',
    }));
    build.onLoad({ filter: /.*/, namespace: 'all-editor-tests' }, () => ({
      contents: readdirSync(folder)
        .filter((name) => name.endsWith('.test.ts'))
        .sort()
        .map((name) => `import ${JSON.stringify(`./${name}`)};`)
        .join('\n'),
      resolveDir: folder,
    }));
  },
};

/** Options for esbuild. @satisfies {import('esbuild').BuildOptions} */
export const editorTests = { plugins: [allTests], sourcemap: /** @type {const} */ ('inline') };
