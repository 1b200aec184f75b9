import type { ParsedLine, RowLine, StringLine, TokenKind } from '../notation/parsedLine';
import type { RowName } from '../notation/rowNames';
import type { System, TabDocument } from '../notation/tabDocument';
import type { Range, SemanticToken, SemanticTokenModifier, SemanticTokenType } from './records';

/** Tokens by what they mean, in the order of the text, none overlapping; of the lines of `range` or of all. */
export function semanticTokens(document: TabDocument, range?: Range): readonly SemanticToken[] {
  const last = document.lineCount - 1;
  const from = Math.max(0, range?.start.line ?? 0);
  const to = Math.min(last, range?.end.line ?? last);
  const tokens: SemanticToken[] = [];
  for (let line = from; line <= to; line++) {
    for (const piece of piecesOf(document, line)) tokens.push({ line, ...piece });
  }
  return tokens;
}

type Piece = Omit<SemanticToken, 'line'>;

const plain: readonly SemanticTokenModifier[] = [];

function piecesOf(document: TabDocument, index: number): readonly Piece[] {
  const line = document.line(index);
  switch (line.kind) {
    case 'field':
      return [
        piece(line.nameStart, line.nameEnd, 'tabField'),
        piece(line.valueStart, line.valueStart + line.value.length, 'tabValue'),
      ].filter(isSomething);
    case 'section':
      return sectionPieces(line);
    case 'string':
    case 'row':
      return systemPieces(document.systemAt(index), index, line);
    default:
      return [];
  }
}

function piece(
  start: number,
  end: number,
  type: SemanticTokenType,
  modifiers: readonly SemanticTokenModifier[] = plain,
): Piece {
  return { start, length: end - start, type, modifiers };
}

function isSomething({ length }: Piece): boolean {
  return length > 0;
}

/** The heading with its brackets; what follows is a remark. */
function sectionPieces(line: Extract<ParsedLine, { kind: 'section' }>): readonly Piece[] {
  const start = line.text.length - line.text.trimStart().length;
  const close = line.text.indexOf(']', line.nameStart) + 1;
  const rest = line.text.slice(close);
  const remark = close + rest.length - rest.trimStart().length;
  return [piece(start, close, 'tabSection'), piece(remark, line.text.trimEnd().length, 'tabRemark')].filter(
    isSomething,
  );
}

const TOKEN_TYPES: Readonly<Record<TokenKind, SemanticTokenType | undefined>> = {
  bar: 'tabBar',
  dash: undefined,
  stop: 'tabMuted',
  number: 'tabFret',
  mute: 'tabMuted',
  open: 'tabFret',
  close: 'tabFret',
  harmonic: 'tabHarmonic',
  join: 'tabTechnique',
  trill: 'tabTechnique',
  slide: 'tabTechnique',
  bend: 'tabTechnique',
  'pre-bend': 'tabTechnique',
  vibrato: 'tabTechnique',
  junk: undefined,
};

const MARK_TYPES: Readonly<Record<RowName, SemanticTokenType | undefined>> = {
  count: 'tabCount',
  chords: 'tabChord',
  words: undefined,
  picking: 'tabTechnique',
  fingers: 'tabTechnique',
  'palm mute': 'tabTechnique',
  ending: 'tabBar',
  text: undefined,
};

/** Problems whose number does not lie where it could sound. */
const OUT_OF_RANGE: ReadonlySet<string> = new Set(['fret-past-neck', 'fret-below-capo', 'fret-below-string']);

function systemPieces(
  system: System | undefined,
  index: number,
  line: StringLine | RowLine,
): readonly Piece[] {
  // A word before a bar line that is in no system is a table in prose.
  if (!system) return [];
  return line.kind === 'string' ? stringPieces(system, index - system.firstLine, line) : rowPieces(line);
}

function stringPieces(system: System, at: number, line: StringLine): readonly Piece[] {
  const { notes, problems } = system.reading;
  const ghosts = notes.filter((note) => note.line === at && note.ghost);
  const strays = problems.filter((problem) => problem.line === at && OUT_OF_RANGE.has(problem.kind));
  const pieces: Piece[] = [piece(line.label.start, line.label.end, 'tabLabel')];
  for (const token of line.tokens) {
    const type = TOKEN_TYPES[token.kind];
    if (!type) continue;
    const meets = (span: { readonly start: number; readonly end: number }): boolean =>
      span.start < token.end && token.start < span.end;
    const modifiers: SemanticTokenModifier[] = [];
    if (type !== 'tabBar' && ghosts.some(meets)) modifiers.push('ghost');
    if (token.kind === 'number' && strays.some(meets)) modifiers.push('outOfRange');
    pieces.push(piece(token.start, token.end, type, modifiers));
  }
  if (line.remark) pieces.push(piece(line.remark.start, line.remark.end, 'tabRemark'));
  return pieces.filter(isSomething);
}

function rowPieces(line: RowLine): readonly Piece[] {
  const type = MARK_TYPES[line.row];
  return [
    piece(line.wordStart, line.wordEnd, 'tabRow'),
    ...line.bars.map((bar) => piece(bar.start, bar.start + bar.text.length, 'tabBar')),
    ...(type ? line.marks.map((mark) => piece(mark.start, mark.end, type)) : []),
  ]
    .filter(isSomething)
    .sort((a, b) => a.start - b.start);
}
