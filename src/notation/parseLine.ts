import type * as GrammarLine from './grammarLine';
import type { ParsedLine } from './parsedLine';
import { Recent } from './recent';
import { scanLine } from './scanLine';

/*
 * Lines are remembered by their text: undo, paste and repeated bars are met again at no cost. A document holds its own
 * lines; this is for what was typed lately, some 4 KB a line.
 */
const lines = new Recent<string, ParsedLine>(2_000);

/**
 * Reads one line of a document. Never fails, and depends on nothing but the text.
 * @example parseLine('capo: 2') // { kind: 'field', field: 'capo', value: '2', … }
 */
export function parseLine(text: string): ParsedLine {
  let line = lines.get(text);
  if (line === undefined) lines.set(text, (line = scanLine(text) ?? readByGrammar(text)));
  return line;
}

// What the bundler makes of it works in Node and in a browser tab alike; no type of Node's is needed.
declare const require: (module: './grammarLine') => typeof GrammarLine;
let grammarLine: typeof GrammarLine | undefined;

/**
 * The grammar and its engine are loaded by the first line that needs them, which most documents have none of: that
 * takes as long as opening a song. (`import()` would answer too late, a plain import would load them at once.)
 */
function readByGrammar(text: string): ParsedLine {
  grammarLine ??= require('./grammarLine');
  return grammarLine.readLineByGrammar(text);
}
