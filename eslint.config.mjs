// @ts-check
import js from '@eslint/js';
import { createNodeResolver, importX } from 'eslint-plugin-import-x';
import { builtinModules } from 'node:module';
import { defineConfig, globalIgnores } from 'eslint/config';
import tseslint from 'typescript-eslint';

/** The layers, each of which may import from the ones before it. */
const core = ['music', 'instrument', 'notation', 'playing', 'checks', 'service', 'formats'];
const shells = ['server', 'views', 'extension', 'cli'];
const layers = [...core, ...shells];

/** Imports that their order alone would allow. @type {[string, string, string, string[]?][]} */
const alsoApart = [
  ['playing', 'notation', 'a hand knows no text'],
  [
    'extension',
    'server',
    'they meet over the protocol only, whose own requests stand in requests.ts',
    ['./requests.ts'],
  ],
  ['views', 'server', 'a view speaks with the extension only'],
  ['extension', 'views', 'they meet over messages only, which stand in views/messages', ['./messages']],
  ['cli', 'server', 'the command line stands on the service'],
  ['cli', 'extension', 'the command line stands on the service'],
  ['cli', 'views', 'the command line stands on the service'],
];

const zones = [
  ...layers.slice(0, -1).map((layer, i) => ({
    target: `./src/${layer}`,
    from: layers.slice(i + 1).map((later) => `./src/${later}`),
    message: `src/${layer} may import only from the layers before it.`,
  })),
  ...alsoApart.map(([target, from, why, except = []]) => ({
    target: `./src/${target}`,
    from: [`./src/${from}`],
    except,
    message: `src/${target} may not import from src/${from}: ${why}.`,
  })),
  { target: './src', from: ['./test'], message: 'The program may not import its tests.' },
  {
    target: layers.map((layer) => `./src/${layer}`),
    from: ['./src/tools'],
    message: 'The program may not import its tools.',
  },
];

const inBrowsersToo = 'This must run in a browser too.';
const builtins = builtinModules.map((name) => ({ name, message: inBrowsersToo }));
const node = { group: ['node:*'], message: inBrowsersToo };
const editor = { group: ['vscode'], message: 'Only src/extension knows VS Code.' };
const protocol = {
  group: ['vscode-languageserver*', 'vscode-languageclient*', 'vscode-jsonrpc*'],
  message: 'The core knows no protocol.',
};
const computed = {
  group: core.map((layer) => `**/${layer}/**`),
  allowTypeImports: true,
  message: 'A view shows what the service says: it imports its types only.',
};
const naming = { group: ['tonal', '@tonaljs/*'], message: 'Only src/music/tonalAdapter.ts imports tonal.' };

/** @param {string[]} files @param {{ group: string[], message: string, allowTypeImports?: boolean }[]} patterns @param {string[]} [ignores] */
const refuse = (files, patterns, ignores = []) => ({
  files,
  ignores,
  rules: {
    '@typescript-eslint/no-restricted-imports': /** @type {const} */ ([
      'error',
      { paths: patterns.includes(node) ? builtins : [], patterns },
    ]),
  },
});

export default defineConfig(
  globalIgnores(['dist/', 'work/', '.hosts/', '.vscode-test/', 'src/notation/generated/']),
  js.configs.recommended,
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error', // import('…') in a type would pass by the layers
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      '@typescript-eslint/no-invalid-void-type': [
        'error',
        { allowAsThisParameter: true, allowInGenericTypeArguments: true },
      ],
      '@typescript-eslint/no-confusing-void-expression': 'off', // `return done()` reads well
      '@typescript-eslint/no-misused-spread': 'off', // taking a text apart by code points is meant
      '@typescript-eslint/require-await': 'off', // what implements a promise need not wait
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
    },
  },
  {
    files: ['**/*.ts', '**/*.tsx'],
    plugins: { 'import-x': importX },
    settings: {
      'import-x/resolver-next': [createNodeResolver({ extensions: ['.ts', '.tsx', '.d.ts', '.mjs', '.js'] })],
    },
    rules: { 'import-x/no-restricted-paths': ['error', { zones }] },
  },
  refuse(
    core.map((layer) => `src/${layer}/**`),
    [node, editor, protocol, naming],
    ['src/music/tonalAdapter.ts'],
  ),
  refuse(['src/music/tonalAdapter.ts'], [node, editor, protocol]),
  refuse(['src/server/**'], [node, editor, naming], ['src/server/nodeMain.ts']),
  refuse(['src/server/nodeMain.ts'], [editor, naming]),
  refuse(['src/extension/**'], [node, naming], ['src/extension/node.ts']),
  refuse(['src/extension/node.ts'], [naming]),
  refuse(['src/views/**'], [node, editor, protocol, naming, computed]),
  refuse(['src/cli/**'], [editor, protocol, naming]),
  {
    files: ['test/**/*.ts'],
    rules: {
      '@typescript-eslint/no-unused-expressions': 'off', // assertions may read as properties
    },
  },
  {
    files: ['**/*.mjs', '**/*.cjs'],
    languageOptions: {
      globals: Object.fromEntries(
        [
          'console',
          'process',
          'require',
          'module',
          'URL',
          'URLSearchParams',
          'setTimeout',
          'clearTimeout',
          'MutationObserver',
          'document',
          'performance',
          'window',
          'navigator',
          'describe',
          'it',
          'before',
          'after',
        ].map((name) => [name, 'readonly']),
      ),
    },
  },
);
