import type * as GrammarLine from './grammarLine';
import type { ParsedLine } from './parsedLine';
import { scanLine } from './scanLine';

/*
 * Lines are remembered by their text, in two generations so that memory stays bounded: what was asked for since the
 * last turn survives the next one. Undo, paste and repeated bars are met again at no cost.
 */
const GENERATION = 50_000;
let young = new Map<string, ParsedLine>();
let old = new Map<string, ParsedLine>();

/**
 * Reads one line of a document. Never fails, and depends on nothing but the text.
 * @example parseLine('capo: 2') // { kind: 'field', field: 'capo', value: '2', … }
 */
export function parseLine(text: string): ParsedLine {
  let line = young.get(text);
  if (line) return line;
  line = old.get(text) ?? scanLine(text) ?? readByGrammar(text);
  if (young.size >= GENERATION) {
    old = young;
    young = new Map();
  }
  young.set(text, line);
  return line;
}

let grammarLine: typeof GrammarLine | undefined;

/**
 * The grammar and its engine are loaded by the first line that needs them, which most documents have none of: that
 * takes as long as opening a song. (`import()` would answer too late, a plain import would load them at once.)
 */
function readByGrammar(text: string): ParsedLine {
  // eslint-disable-next-line @typescript-eslint/no-require-imports
  grammarLine ??= require('./grammarLine') as typeof GrammarLine;
  return grammarLine.readLineByGrammar(text);
}
