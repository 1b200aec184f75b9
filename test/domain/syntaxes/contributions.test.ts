import assert from 'node:assert/strict';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { loadGrammar, tokenize } from './tokens';

const ROOT = path.resolve(__dirname, '../../..');

function json(file: string): unknown {
  return JSON.parse(readFileSync(path.join(ROOT, file), 'utf8'));
}

interface Manifest {
  readonly icon: string;
  readonly contributes: {
    readonly languages: readonly { readonly id: string; readonly configuration: string }[];
    readonly grammars: readonly { readonly path: string; readonly scopeName: string }[];
    readonly configurationDefaults: Readonly<Record<string, unknown>>;
  };
}

describe('what the manifest contributes for the language', () => {
  const manifest = json('package.json') as Manifest;

  it('points at files that are there, with the scopes they have', () => {
    assert.equal(manifest.contributes.grammars.length, 3);
    for (const grammar of manifest.contributes.grammars) {
      assert.equal((json(grammar.path) as { scopeName: string }).scopeName, grammar.scopeName);
    }
    assert.ok(existsSync(path.join(ROOT, manifest.contributes.languages[0]?.configuration ?? 'missing')));
  });

  it('changes settings for its languages and its own help page only', () => {
    const {
      '[pegbox]': language,
      '[pegbox-names]': names,
      ...others
    } = manifest.contributes.configurationDefaults;
    assert.ok(language && names);
    assert.deepEqual(others, {
      'workbench.editorAssociations': { 'pegbox-help:/**': 'vscode.markdown.preview.editor' },
    });
  });

  // PNG (ISO/IEC 15948): width and height are the big-endian numbers at bytes 16 and 20.
  it('has an icon of 256 by 256', () => {
    const png = readFileSync(path.join(ROOT, manifest.icon));
    assert.deepEqual([png.readUInt32BE(16), png.readUInt32BE(20)], [256, 256]);
  });
});

describe('words of the language', () => {
  const { pattern, flags } = (
    json('syntaxes/language-configuration.json') as { wordPattern: { pattern: string; flags: string } }
  ).wordPattern;
  const cases: readonly (readonly [text: string, words: readonly string[]])[] = [
    ['D4 |0--5h7--12~|', ['D4', '0', '5', 'h', '7', '12']],
    ['b|7b9r7-x-t12p5|', ['b', '7', 'b', '9', 'r', '7', 'x', 't', '12', 'p', '5']],
    ['tuning: E2 B2 G#3', ['tuning', 'E2', 'B2', 'G#3']],
    ['chords |Dsus4  D/F#|', ['chords', 'Dsus4', 'D', 'F#']],
    ["words |don't wán-der|", ['words', "don't", 'wán', 'der']],
  ];
  for (const [text, expected] of cases) {
    it(JSON.stringify(text), () => assert.deepEqual(text.match(new RegExp(pattern, `g${flags}`)), expected));
  }
});

describe('colours of the demo songs', () => {
  const folder = path.join(ROOT, 'media/demo');
  const songs = readdirSync(folder).filter((name) => name.endsWith('.pegbox'));

  it('there are four', () => assert.equal(songs.length, 4));

  for (const song of songs) {
    it(song, async () => {
      const grammar = await loadGrammar('source.pegbox');
      const lines = readFileSync(path.join(folder, song), 'utf8').split('\n');
      tokenize(grammar, lines).forEach((tokens, index) => {
        const line = lines[index] ?? '';
        const scopes = tokens.flatMap((token) => token.scopes);
        assert.ok(!scopes.some((scope) => scope.startsWith('invalid')), line);
        // A line is coloured exactly when it is more than prose: tab, a row, a field or a heading.
        assert.equal(scopes.length > 0, line.includes('|') || /^(\w+: |\[)/.test(line), line);
      });
    });
  }
});
