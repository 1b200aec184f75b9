import { makeRecipe, type Grammar, type Node, type Semantics } from 'ohm-js';
import { PEGBOX_RECIPE } from './generated/pegboxRecipe';
import {
  makeFieldLine,
  makeProseLine,
  makeRowLine,
  makeSectionLine,
  makeStringLine,
  type RawToken,
} from './lineParts';
import type { ParsedLine, TokenKind } from './parsedLine';

/*
 * The grammar's own reading of a line: the definition. `scanLine.ts` takes common lines faster and must agree with
 * this one to the letter (test/domain/notation/scanner.test.ts).
 */

let compiled: { grammar: Grammar; semantics: Semantics } | undefined;

/** The grammar, made from its compiled recipe on first use. */
function pegbox(): { grammar: Grammar; semantics: Semantics } {
  if (!compiled) {
    const grammar = makeRecipe(PEGBOX_RECIPE);
    compiled = { grammar, semantics: createSemantics(grammar) };
  }
  return compiled;
}

/** Reads one line by the grammar. Never fails: whatever is no other line is prose. */
export function readLineByGrammar(text: string): ParsedLine {
  const { grammar, semantics } = pegbox();
  const match = grammar.match(text, 'line');
  // The grammar's `line` is total (a test matches a million mutated lines); prose is the answer all the same.
  return match.succeeded() ? lineOf(semantics, match) : makeProseLine(text);
}

/** The one typed door to Ohm's untyped operations. */
function lineOf(semantics: Semantics, match: ReturnType<Grammar['match']>): ParsedLine {
  return (semantics(match) as { line(): ParsedLine }).line();
}

const TOKEN_KINDS: Readonly<Record<string, TokenKind>> = {
  barSign: 'bar',
  dashes: 'dash',
  stop: 'stop',
  number: 'number',
  mute: 'mute',
  open: 'open',
  close: 'close',
  harmonic: 'harmonic',
  join: 'join',
  trill: 'trill',
  slide: 'slide',
  bend: 'bend',
  preBend: 'pre-bend',
  vibrato: 'vibrato',
  junk: 'junk',
};

function createSemantics(grammar: Grammar): Semantics {
  const startOf = (node: Node): number => node.source.startIdx;
  const endOf = (node: Node): number => node.source.endIdx;
  return grammar.createSemantics().addOperation<ParsedLine>('line()', {
    line(_bom, line) {
      return (line as unknown as { line(): ParsedLine }).line();
    },
    blankLine(gaps, _end) {
      return { kind: 'blank', text: inputOf(gaps) };
    },
    commentLine(gaps, _sign, _rest, _end) {
      return { kind: 'comment', text: inputOf(gaps) };
    },
    sectionLine(gaps, _open, name, _close, _tail, _end) {
      return makeSectionLine(inputOf(gaps), startOf(name), endOf(name));
    },
    stringLine(gaps, label, _gaps, run, _remark) {
      const span = { start: startOf(label), end: endOf(label) };
      return makeStringLine(inputOf(gaps), span, startOf(run), tokensIn(run), endOf(run));
    },
    rowLine(gaps, word, _gaps, bar, _rest, _end) {
      return makeRowLine(inputOf(gaps), startOf(word), endOf(word), startOf(bar));
    },
    fieldLine(gaps, name, _gaps, colon, _tail, _end) {
      return makeFieldLine(inputOf(gaps), startOf(name), endOf(name), startOf(colon));
    },
    proseLine(text, _end) {
      return makeProseLine(inputOf(text));
    },
  });
}

/** The whole line that a node was matched in. */
function inputOf(node: Node): string {
  return node.source.sourceString;
}

/** The pieces of a run, in order; neighbouring unknown characters are one piece. */
function tokensIn(run: Node): RawToken[] {
  const tokens: RawToken[] = [];
  const visit = (node: Node): void => {
    const kind = TOKEN_KINDS[node.ctorName];
    if (!kind) {
      // Look-aheads and optional parts repeat or omit text: only real children are visited.
      for (const child of node.children) visit(child);
      return;
    }
    const { startIdx: start, endIdx: end } = node.source;
    const last = tokens.at(-1);
    if (last && last.start >= start) return;
    if (kind === 'junk' && last?.kind === 'junk' && last.end === start) {
      tokens[tokens.length - 1] = { kind, start: last.start, end };
    } else {
      tokens.push({ kind, start, end });
    }
  };
  visit(run);
  return tokens;
}
