// The layers are kept by lint; this shows that a wrong import is refused and a right one is not.
import assert from 'node:assert/strict';
import { ESLint } from 'eslint';

/** What is tried: a text in the place of a file that exists (the linter resolves imports from there). */
const cases: [file: string, text: string, refused: boolean][] = [
  ['src/music/fraction.ts', `import type { Tuning } from '../instrument/tuning';`, true],
  ['src/music/fraction.ts', `export { type Tuning } from '../instrument/tuning';`, true],
  ['src/music/fraction.ts', `import type { Result } from './result';`, false],
  ['src/instrument/tuning.ts', `import type { Result } from '../music/result';`, false],
  ['src/instrument/tuning.ts', `import type { TabDocument } from '../notation/tabDocument';`, true],
  ['src/notation/tabDocument.ts', `export type T = import('../service/records').Settings;`, true],
  ['src/notation/tabDocument.ts', `import type { Tuning } from '../instrument/tuning';`, false],
  ['src/service/records.ts', `import type { Documents } from '../server/documents';`, true],
  ['src/service/records.ts', `import { readFileSync } from 'node:fs';`, true],
  ['src/service/records.ts', `import { readFileSync } from 'fs';`, true],
  ['src/service/records.ts', `import * as vscode from 'vscode';`, true],
  ['src/service/records.ts', `import type { Hover } from 'vscode-languageserver';`, true],
  ['src/service/records.ts', `import type { Hover } from 'vscode-languageserver/node';`, true],
  ['src/service/records.ts', `import type { TabDocument } from '../notation/tabDocument';`, false],
  ['src/service/records.ts', `import { detect } from 'tonal';`, true],
  ['src/service/records.ts', `import { makeTool } from '../tools/paths.mjs';`, true],
  ['src/music/tonalAdapter.ts', `import { Chord } from 'tonal';`, false],
  ['src/music/tonalAdapter.ts', `import { readFileSync } from 'node:fs';`, true],
  ['src/server/documents.ts', `import * as vscode from 'vscode';`, true],
  ['src/server/documents.ts', `import type { Hover } from 'vscode-languageserver';`, false],
  ['src/server/documents.ts', `import { readFileSync } from 'node:fs';`, true],
  ['src/server/nodeMain.ts', `import { readFileSync } from 'node:fs';`, false],
  ['src/playing/layerProbe.ts', `import type { TabDocument } from '../notation/tabDocument';`, true],
  ['src/extension/layerProbe.ts', `import type { Documents } from '../server/documents';`, true],
  ['src/extension/layerProbe.ts', `import type { Named } from '../server/requests';`, false],
  ['src/extension/layerProbe.ts', `import type { Message } from '../views/messages/message';`, false],
  ['src/extension/layerProbe.ts', `import { linkToExtension } from '../views/shared/extensionLink';`, true],
  ['src/views/shared/layerProbe.ts', `import type { Settings } from '../../service/records';`, false],
  ['src/views/shared/layerProbe.ts', `import { DEFAULT_SETTINGS } from '../../service/settings';`, true],
  ['src/views/shared/layerProbe.ts', `import type { ViewLink } from '../../extension/views/viewLink';`, true],
  ['src/views/shared/layerProbe.ts', `import type { Named } from '../../server/requests';`, true],
  ['src/cli/layerProbe.ts', `import type { Settings } from '../service/records';`, false],
];

const layerRules = [
  'import-x/no-restricted-paths',
  '@typescript-eslint/no-restricted-imports',
  '@typescript-eslint/consistent-type-imports',
];

describe('layers', () => {
  const linter = new ESLint({
    ruleFilter: ({ ruleId }) => layerRules.includes(ruleId), // rules that need types cannot judge a made-up file
    overrideConfig: { files: ['**/*.ts'], languageOptions: { parserOptions: { projectService: false } } },
  });

  for (const [filePath, text, refused] of cases)
    it(`${refused ? 'refuses' : 'allows'} ${text} in ${filePath}`, async () => {
      const [result] = await linter.lintText(text, { filePath });
      assert.ok(result);
      assert.equal(result.fatalErrorCount, 0, result.messages[0]?.message);
      assert.equal(result.messages.length > 0, refused, JSON.stringify(result.messages));
    });
});
