// What `npm test` runs, each step in a process of its own.
import { inRoot } from './paths.mjs';

/**
 * @typedef {object} Step
 * @property {string} name for `--only`
 * @property {string} does what it shows, in words
 * @property {'check' | 'tests'} kind a check counts as one; tests say their own counts
 * @property {string[]} args for Node
 * @property {string} [needs] a step that must pass first, if it runs too
 */

const bin = (/** @type {string} */ file) => inRoot('node_modules', file);
const tsc = bin('typescript/bin/tsc');

/** @param {string} files */
const mocha = (files) => [
  bin('mocha/bin/mocha.js'),
  ...[
    '--no-config',
    '--no-package',
    '--require',
    'tsx/cjs',
    '--require',
    inRoot('test/sameCases.ts'),
    '--ui',
    'bdd',
    '--timeout',
    '60000',
    '--forbid-only',
    '--exit',
  ],
  ...['--reporter', inRoot('src/tools/mochaReporter.cjs'), files],
];

const editor = (/** @type {string} */ kind) => [inRoot('src/tools/editorRun.mjs'), kind];

/** What needs no build. @type {Step[]} */
export const sourceSteps = [
  { name: 'types', does: 'all types agree', kind: 'check', args: [tsc, '--noEmit'] },
  {
    name: 'core',
    does: 'the core compiles without Node, browser and editor',
    kind: 'check',
    args: [tsc, '--noEmit', '--project', 'src/tools/tsconfig.core.json'],
  },
  {
    name: 'pages',
    does: 'types of the views agree',
    kind: 'check',
    args: [tsc, '--noEmit', '--project', 'src/views/tsconfig.json'],
  },
  {
    name: 'tools',
    does: 'types of the tools agree',
    kind: 'check',
    args: [tsc, '--noEmit', '--project', 'src/tools/tsconfig.json'],
  },
  {
    name: 'lint',
    does: 'no lint warning',
    kind: 'check',
    args: [bin('eslint/bin/eslint.js'), '.', '--max-warnings=0'],
  },
  {
    name: 'format',
    does: 'every file is formatted',
    kind: 'check',
    args: [bin('prettier/bin/prettier.cjs'), '--check', '--log-level=warn', '.'],
  },
  { name: 'domain', does: 'domain tests', kind: 'tests', args: [inRoot('src/tools/domainRun.mjs')] },
];

/** What runs the built program. @type {Step[]} */
export const builtSteps = [
  {
    name: 'build',
    does: 'the bundles are made',
    kind: 'check',
    args: [inRoot('src/tools/build.mjs'), '--tests'],
  },
  {
    name: 'server',
    does: 'the language server over standard input and output',
    kind: 'tests',
    args: mocha('test/server/**/*.test.ts'),
    needs: 'build',
  },
  {
    name: 'cli',
    does: 'the command line',
    kind: 'tests',
    args: mocha('test/cli/**/*.test.ts'),
    needs: 'build',
  },
  {
    name: 'web',
    does: 'the editor, extension in a web worker',
    kind: 'tests',
    args: editor('web'),
    needs: 'build',
  },
  {
    name: 'node',
    does: 'the editor, extension in Node',
    kind: 'tests',
    args: editor('node'),
    needs: 'build',
  },
  {
    name: 'web-pages',
    does: 'the pages of the extension in a browser, extension in a web worker',
    kind: 'tests',
    args: [inRoot('src/tools/viewsRun.mjs'), 'web'],
    needs: 'build',
  },
  {
    name: 'node-pages',
    does: 'the pages of the extension in a browser, extension in Node',
    kind: 'tests',
    args: [inRoot('src/tools/viewsRun.mjs'), 'node'],
    needs: 'build',
  },
  {
    name: 'web-keys',
    does: 'random keys in the editor against a plain model, extension in a web worker',
    kind: 'tests',
    args: [inRoot('src/tools/keysRun.mjs'), 'web'],
    needs: 'build',
  },
  {
    name: 'node-keys',
    does: 'random keys in the editor against a plain model, extension in Node',
    kind: 'tests',
    args: [inRoot('src/tools/keysRun.mjs'), 'node'],
    needs: 'build',
  },
  {
    name: 'pack',
    does: 'the extension is packed',
    kind: 'check',
    args: [inRoot('src/tools/pack.mjs')],
    needs: 'build',
  },
  {
    name: 'packed',
    does: 'the editor, extension installed from its package',
    kind: 'tests',
    args: editor('packed'),
    needs: 'pack',
  },
];

/** Runs only when asked for: it downloads an editor from its maker's server. @type {Step[]} */
export const desktopSteps = [
  {
    name: 'desktop',
    does: 'the editor, a desktop VS Code',
    kind: 'tests',
    args: editor('desktop'),
    needs: 'build',
  },
];
