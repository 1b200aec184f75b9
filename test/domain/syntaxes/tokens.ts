import { readFileSync } from 'node:fs';
import path from 'node:path';
import { createOnigScanner, createOnigString, loadWASM } from 'vscode-oniguruma';
import { INITIAL, parseRawGrammar, Registry, type IGrammar } from 'vscode-textmate';

const ROOT = path.resolve(__dirname, '../../..');

/** Markdown as far as the fence test needs it: VS Code's own grammar is not an npm package. */
const PLAIN_MARKDOWN = { scopeName: 'text.html.markdown', patterns: [], repository: {} };

const FILES: Readonly<Record<string, string>> = {
  'source.pegbox': 'syntaxes/pegbox.tmLanguage.json',
  'markdown.pegbox.codeblock': 'syntaxes/pegbox.markdown.json',
};

/** A stretch of a line with its scopes, outermost first, without the grammar's own scope. */
export interface ScopedText {
  readonly text: string;
  readonly scopes: readonly string[];
}

/** Loads a grammar into the same engine (vscode-textmate on Oniguruma) that VS Code colours with. */
export async function loadGrammar(scope: 'source.pegbox' | 'text.html.markdown'): Promise<IGrammar> {
  const wasm = readFileSync(path.join(ROOT, 'node_modules/vscode-oniguruma/release/onig.wasm'));
  const onigLib = loadWASM(wasm).then(() => ({ createOnigScanner, createOnigString }));
  const registry = new Registry({
    onigLib,
    loadGrammar: async (name) => {
      if (name === PLAIN_MARKDOWN.scopeName)
        return parseRawGrammar(JSON.stringify(PLAIN_MARKDOWN), 'markdown.json');
      const file = FILES[name];
      return file ? parseRawGrammar(readFileSync(path.join(ROOT, file), 'utf8'), file) : null;
    },
    getInjections: (name) => (name === 'text.html.markdown' ? ['markdown.pegbox.codeblock'] : undefined),
  });
  const grammar = await registry.loadGrammar(scope);
  if (!grammar) throw new Error(`No grammar for ${scope}.`);
  return grammar;
}

/** The tokens of every line, one list a line. */
export function tokenize(grammar: IGrammar, lines: readonly string[]): ScopedText[][] {
  let state = INITIAL;
  return lines.map((line) => {
    const result = grammar.tokenizeLine(line, state);
    state = result.ruleStack;
    return result.tokens.map((token) => ({
      text: line.slice(token.startIndex, token.endIndex),
      scopes: token.scopes.slice(1),
    }));
  });
}

/** The innermost scope of every coloured stretch, as `text scope` without `.pegbox`; what has no scope is left out. */
export function colours(grammar: IGrammar, line: string): string[] {
  return (tokenize(grammar, [line])[0] ?? []).flatMap(({ text, scopes }) => {
    const scope = scopes.at(-1);
    return scope && !scope.startsWith('meta.') ? [`${text} ${scope.replace(/\.pegbox$/, '')}`] : [];
  });
}
