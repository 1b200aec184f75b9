// The domain tests, bundled as the extension is and run on all cores. Usage: node src/tools/domainRun.mjs [FILE…] [mocha
// options]. A file is named from test/domain on, without `.test.ts`: `playing/laws`, or a folder: `playing`.
//
// Through a loader of TypeScript each name that comes from another file is asked for by a getter and each function
// within a function is named anew when it is made, which costs up to half of the time. Bundled, the tests run the code
// that ships.
import { readFileSync, rmSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import * as esbuild from 'esbuild';
import { exitOnSignals } from './exitOnSignals.mjs';
import { inRoot, root } from './paths.mjs';
import { run } from './run.mjs';

const OUT = 'dist/domain';
/** JSON, and packages whose names Node does not find. */
const BUNDLED = /\.json$|^vscode-(textmate|oniguruma)$/;

exitOnSignals();
const own = process.argv.slice(2);
const firstOption = own.findIndex((argument) => argument.startsWith('-'));
const names = firstOption < 0 ? own : own.slice(0, firstOption);
const options = firstOption < 0 ? [] : own.slice(firstOption);

rmSync(inRoot(OUT), { recursive: true, force: true });
await esbuild.build({
  absWorkingDir: root,
  entryPoints: ['test/domain/**/*.test.ts', 'test/sameCases.ts'],
  outbase: 'test',
  outdir: OUT,
  outExtension: { '.js': '.mjs' },
  bundle: true,
  splitting: true, // what tests share is one module for all of them, as it is without bundles
  format: 'esm',
  platform: 'node',
  target: 'node20',
  sourcemap: true,
  sourcesContent: false,
  loader: { '.ohm': 'text', '.md': 'text' },
  logLevel: 'warning',
  plugins: [ownFolders(), packagesApart()],
});
const mocha = [
  inRoot('node_modules/mocha/bin/mocha.js'),
  ...['--no-config', '--no-package', '--ui', 'bdd', '--timeout', '120000', '--forbid-only', '--exit'],
  ...['--require', inRoot(OUT, 'sameCases.mjs'), '--reporter', inRoot('src/tools/mochaReporter.cjs')],
  ...['--parallel', '--jobs', String(availableParallelism())],
];
const files = (names.length > 0 ? names : ['**']).map((name) =>
  path.posix.join(OUT, 'domain', name === '**' ? '**/*.test.mjs' : `${name}{.test.mjs,/**/*.test.mjs}`),
);
const { code } = await run(process.execPath, ['--enable-source-maps', ...mocha, ...options, ...files], {
  show: true,
});
process.exitCode = code;

/** Tests read files beside themselves and in packages, from where the source is. @returns {esbuild.Plugin} */
function ownFolders() {
  return {
    name: 'own-folders',
    setup(building) {
      building.onLoad({ filter: /[\\/]test[\\/].*\.ts$/ }, ({ path: file }) => {
        const text = readFileSync(file, 'utf8');
        const first = [
          text.includes('__dirname') && `const __dirname = ${JSON.stringify(path.dirname(file))};`,
          text.includes('require.resolve') &&
            `import { createRequire } from 'node:module'; const require = createRequire(${JSON.stringify(file)});`,
        ];
        // In the first line, so that the others keep their numbers.
        return { contents: `${first.filter(Boolean).join(' ')} ${text}`, loader: 'ts' };
      });
    },
  };
}

/** Packages are loaded by Node as they are, but for their JSON. @returns {esbuild.Plugin} */
function packagesApart() {
  return {
    name: 'packages-apart',
    setup(building) {
      building.onResolve({ filter: /^[^./]/ }, ({ path: name, kind }) =>
        kind === 'entry-point' || BUNDLED.test(name) ? undefined : { path: name, external: true },
      );
    },
  };
}
