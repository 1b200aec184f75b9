// Bundles the extension, the server and the command line into dist/. Usage: node src/tools/build.mjs
//   --partial   leaves out bundles whose entry file is not written yet, instead of failing
//   --tests     also bundles the editor tests, for both hosts
import { chmodSync, existsSync, readdirSync } from 'node:fs';
import * as esbuild from 'esbuild';
import { editorTests } from './editorTests.mjs';
import { inRoot, root } from './paths.mjs';
import { run } from './run.mjs';

/**
 * @param {{ partial?: boolean, tests?: boolean }} [options]
 * @throws {Error} that names the entry that is missing, or esbuild's own
 */
export async function build({ partial = false, tests = false } = {}) {
  await writeGrammar();
  /** @type {esbuild.BuildOptions} */
  const both = {
    absWorkingDir: root,
    bundle: true,
    target: 'es2022',
    minifySyntax: true, // names stay, for stack traces
    minifyWhitespace: true,
    sourcemap: true,
    logLevel: 'warning',
    external: ['vscode'],
    loader: { '.ohm': 'text', '.md': 'text' },
  };
  /** @type {esbuild.BuildOptions} */
  const node = { ...both, platform: 'node', format: 'cjs', target: 'node20' };
  /** @type {esbuild.BuildOptions} */
  const web = { ...both, platform: 'browser', define: { global: 'globalThis' } };
  /** @type {esbuild.BuildOptions} */
  const page = { jsx: 'automatic', jsxImportSource: 'preact', sourcemap: false, legalComments: 'none' };
  const program = { banner: { js: '#!/usr/bin/env node' } };
  // The server answers `initialize` before V8 has read the service, which is three quarters of the code.
  /** @type {esbuild.BuildOptions} */
  const serviceApart = {
    plugins: [besideTheServer('./core', './service.js')],
    supported: { 'dynamic-import': false }, // `require` instead, which does not parse the file twice
  };

  /** @type {[from: string, to: string, options: esbuild.BuildOptions][]} */
  const bundles = [
    ['src/extension/node.ts', 'dist/node/extension.js', node],
    ['src/extension/web.ts', 'dist/web/extension.js', { ...web, format: 'cjs' }],
    ['src/server/webMain.ts', 'dist/web/server.js', { ...web, format: 'iife' }],
    ['src/server/nodeMain.ts', 'dist/server.js', { ...node, ...program, ...serviceApart }],
    ['src/server/core.ts', 'dist/service.js', node],
    ['src/cli/main.ts', 'dist/cli.js', { ...node, ...program }],
  ];
  for (const name of viewNames())
    bundles.push([
      `src/views/${name}/main.tsx`,
      `dist/views/${name}.js`,
      { ...web, format: 'iife', ...page },
    ]);
  if (tests)
    bundles.push(
      [
        'test/editor/nodeRun.ts',
        'dist/test-node/index.js',
        { ...node, ...editorTests, external: ['vscode', 'mocha'] },
      ],
      ['test/editor/webRun.ts', 'dist/test-web/index.js', { ...web, ...editorTests, format: 'cjs' }],
    );

  const missing = bundles.map(([from]) => from).filter((from) => !existsSync(inRoot(from)));
  if (missing.length > 0 && !partial)
    throw new Error(`Cannot build: ${[...new Set(missing)].join(', ')} is not there.`);
  await Promise.all(
    bundles
      .filter(([from]) => !missing.includes(from))
      .map(([from, outfile, options]) => esbuild.build({ ...options, entryPoints: [from], outfile })),
  );
  for (const file of ['dist/server.js', 'dist/cli.js'])
    if (existsSync(inRoot(file))) chmodSync(inRoot(file), 0o755);
}

/** Each folder of src/views with a page of its own; its style sheet is what `main.tsx` imports. */
function viewNames() {
  return readdirSync(inRoot('src/views')).filter((name) => existsSync(inRoot('src/views', name, 'main.tsx')));
}

/**
 * Leaves a module that is imported dynamically to a bundle of its own.
 * @param {string} module as it is imported
 * @param {string} file the bundle, seen from the one that imports it
 * @returns {esbuild.Plugin}
 */
function besideTheServer(module, file) {
  return {
    name: 'beside the server',
    setup({ onResolve }) {
      onResolve({ filter: /./ }, ({ path, kind }) =>
        path === module && kind === 'dynamic-import' ? { path: file, external: true } : undefined,
      );
    },
  };
}

/** Turns the grammar into its compiled form, where the tool for it is there. */
async function writeGrammar() {
  const tool = inRoot('src/tools/grammar.mjs');
  if (!existsSync(tool)) return;
  const { code, output } = await run(process.execPath, [tool]);
  if (code !== 0) throw new Error(`The grammar does not compile:\n${output.trim()}`);
}

if (process.argv[1] === import.meta.filename) {
  const has = (/** @type {string} */ name) => process.argv.includes(`--${name}`);
  try {
    await build({ partial: has('partial'), tests: has('tests') });
  } catch (error) {
    const told = error instanceof Error && 'errors' in error; // esbuild has printed its own
    if (!told) console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
