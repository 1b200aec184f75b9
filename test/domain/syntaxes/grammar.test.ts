import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import type { IGrammar } from 'vscode-textmate';
import { FIELD_ALIASES, FIELD_NAMES } from '../../../src/notation/fieldNames';
import { ROW_ALIASES, ROW_NAMES } from '../../../src/notation/rowNames';
import { colours, loadGrammar, tokenize } from './tokens';

const LABEL = 'entity.name.type.label';
const BAR = 'keyword.operator.bar';
const REPEAT = 'keyword.control.repeat';
const DASH = 'punctuation.separator.dash';
const FRET = 'constant.numeric.fret';
const SIGN = 'keyword.other.technique';
const FIELD = 'entity.name.tag.field';
const COLON = 'punctuation.separator.key-value';
const VALUE = 'string.unquoted.value';
const ROW = 'entity.name.tag.row';
const REMARK = 'comment.line.remark';

describe('TextMate grammar', () => {
  let grammar: IGrammar;
  before(async () => {
    grammar = await loadGrammar('source.pegbox');
  });

  /** What the line's first word is, by the grammar's outermost scope. */
  function kind(line: string): string {
    const scopes = (tokenize(grammar, [line])[0] ?? []).flatMap((token) => token.scopes);
    return scopes[0]?.replace(/\.pegbox$/, '') ?? 'prose';
  }

  it('is what the tables of names give', () => {
    execFileSync(process.execPath, ['src/tools/textmate.mjs', '--check'], {
      cwd: path.resolve(__dirname, '../../..'),
    });
  });

  describe('knows every name of the tables', () => {
    for (const name of [...FIELD_NAMES, ...Object.keys(FIELD_ALIASES)]) {
      it(`field ${name}`, () => {
        for (const word of [name, name.toUpperCase(), `  ${name} `]) {
          const [first, second] = colours(grammar, `${word}: abc`);
          assert.equal(first, `${word.trim()} ${FIELD}`);
          assert.equal(second, `: ${COLON}`);
        }
        assert.deepEqual(colours(grammar, `${name}x: abc`), []);
      });
    }
    for (const name of [...ROW_NAMES.filter((row) => row !== 'text'), ...Object.keys(ROW_ALIASES)]) {
      it(`row ${name}`, () => {
        for (const word of [name, name.toUpperCase()]) {
          assert.equal(colours(grammar, `${word} |1`)[0], `${word} ${ROW}`);
          assert.equal(kind(`${word} |1`), `meta.row.${(ROW_ALIASES[name] ?? name).replace(' ', '-')}`);
        }
      });
    }
  });

  // Rows 1–30 of the sixty readings in the design's cases.md.
  describe('lines of the notation', () => {
    const string = 'meta.string-line';
    const field = 'meta.field';
    const kinds: readonly (readonly [text: string, kind: string])[] = [
      ['e|--0--2--|', string],
      ['b |--3--|', string],
      ['bb3|----|', string],
      ['E2/E3|0---|', string],
      ['14|0---|', string],
      ['15|0---|', 'prose'],
      ['D |0|', string],
      ['E|', string],
      ['E||--0--||', string],
      ['E|--5q--|', string],
      ['1|2|3', 'prose'],
      ['1 | something', 'prose'],
      ['A | D | E | A |', 'prose'],
      ['G|C|G|D|', 'prose'],
      ['|---|---|---|', 'prose'],
      ['-----------', 'prose'],
      ['|--0--2--|', 'prose'],
      ['E:--0--2--|', 'prose'],
      ['E│--0--2--│', string],
      ['E|––0––2––|', string],
      ['E|--0--| see bar 3 | 4', string],
      ['cuont |1 & 2 & |', 'meta.row.text'],
      ['PM |----  |', 'meta.row.palm-mute'],
      ['Capo: 2', field],
      ['Time: 4/4', field],
      ['scale: D major', 'prose'],
      ['scale length: 648 mm', field],
      ['tunning: DADGAD', 'prose'],
      ['Band: The Gate', 'prose'],
      ['So: play it again', 'prose'],
      ['[Chorus] x2', 'markup.heading'],
      ['[see the page](there)', 'prose'],
      ['\uFEFFtitle: Gate', field],
      ['x02210', 'prose'],
      // Further lines that must stay plain.
      ['', 'prose'],
      ['Let every open string ring into the next bar.', 'prose'],
      ['| String | Note | Fret |', 'prose'],
      ['|--------|------|------|', 'prose'],
      ['String | Note | Fret', 'prose'],
      ['Am | Dm | Em | Am |', 'prose'],
      ['Bb | Eb | F |', 'prose'],
      ['title:', 'prose'],
      ['title:Gate', 'prose'],
      ['my title: Gate', 'prose'],
      ['A word, then more | and a bar', 'prose'],
      ['  # half-way', 'comment.line.number-sign'],
      ['ring  |~~~~    |~~~ |', 'meta.row.text'],
    ];
    for (const [text, expected] of kinds) {
      it(JSON.stringify(text), () => assert.equal(kind(text), expected));
    }
  });

  describe('the parts of a line', () => {
    const cases: readonly (readonly [text: string, ...colours: string[]])[] = [
      ['D4    |0--12|', `D4 ${LABEL}`, `| ${BAR}`, `0 ${FRET}`, `-- ${DASH}`, `12 ${FRET}`, `| ${BAR}`],
      [
        'e|5h7p5|',
        `e ${LABEL}`,
        `| ${BAR}`,
        `5 ${FRET}`,
        `h ${SIGN}`,
        `7 ${FRET}`,
        `p ${SIGN}`,
        `5 ${FRET}`,
        `| ${BAR}`,
      ],
      ['b|-5tr7|', `b ${LABEL}`, `| ${BAR}`, `- ${DASH}`, `5 ${FRET}`, `tr ${SIGN}`, `7 ${FRET}`, `| ${BAR}`],
      [
        'G|t12p5-',
        `G ${LABEL}`,
        `| ${BAR}`,
        `t ${SIGN}`,
        `12 ${FRET}`,
        `p ${SIGN}`,
        `5 ${FRET}`,
        `- ${DASH}`,
      ],
      [
        'G|-5//7\\',
        `G ${LABEL}`,
        `| ${BAR}`,
        `- ${DASH}`,
        `5 ${FRET}`,
        `// ${SIGN}`,
        `7 ${FRET}`,
        `\\ ${SIGN}`,
      ],
      [
        'G|-7b1/2r7~~',
        `G ${LABEL}`,
        `| ${BAR}`,
        `- ${DASH}`,
        `7 ${FRET}`,
        `b ${SIGN}`,
        '1/2 constant.numeric.bend',
        `r ${SIGN}`,
        `7 ${FRET}`,
        `~~ ${SIGN}`,
      ],
      [
        'G|-7pb9',
        `G ${LABEL}`,
        `| ${BAR}`,
        `- ${DASH}`,
        `7 ${FRET}`,
        `pb ${SIGN}`,
        '9 constant.numeric.bend',
      ],
      [
        'G|-7b7.5',
        `G ${LABEL}`,
        `| ${BAR}`,
        `- ${DASH}`,
        `7 ${FRET}`,
        `b ${SIGN}`,
        '7.5 constant.numeric.bend',
      ],
      [
        'G|-5<17>',
        `G ${LABEL}`,
        `| ${BAR}`,
        `- ${DASH}`,
        `5 ${FRET}`,
        '< punctuation.definition.harmonic.begin',
        '17 constant.numeric.harmonic',
        '> punctuation.definition.harmonic.end',
      ],
      [
        'G|(5).x-',
        `G ${LABEL}`,
        `| ${BAR}`,
        '( punctuation.section.ghost.begin',
        `5 ${FRET}`,
        ') punctuation.section.ghost.end',
        '. keyword.other.stop',
        'x constant.language.muted',
        `- ${DASH}`,
      ],
      ['G|-5q-', `G ${LABEL}`, `| ${BAR}`, `- ${DASH}`, `5 ${FRET}`, 'q invalid.illegal.sign', `- ${DASH}`],
      [
        'E|:-0-:|x3',
        `E ${LABEL}`,
        `|: ${REPEAT}`,
        `- ${DASH}`,
        `0 ${FRET}`,
        `- ${DASH}`,
        `:| ${REPEAT}`,
        `x3 ${REPEAT}`,
      ],
      [
        'E||---:|:---||',
        `E ${LABEL}`,
        `|| ${BAR}`,
        `--- ${DASH}`,
        `:|: ${REPEAT}`,
        `--- ${DASH}`,
        `|| ${BAR}`,
      ],
      ['E|---| see 3 | 4', `E ${LABEL}`, `| ${BAR}`, `--- ${DASH}`, `| ${BAR}`, `see 3 | 4 ${REMARK}`],
      ['12|---', `12 ${LABEL}`, `| ${BAR}`, `--- ${DASH}`],
      ['D2/D3 |---', `D2/D3 ${LABEL}`, `| ${BAR}`, `--- ${DASH}`],
      ['tuning: DADGAD', `tuning ${FIELD}`, `: ${COLON}`, `DADGAD ${VALUE}`],
      ['tuning: E2 B2', `tuning ${FIELD}`, `: ${COLON}`, `E2 B2 ${VALUE}`],
      ['capo: 2', `capo ${FIELD}`, `: ${COLON}`, '2 constant.numeric.value'],
      ['title: Gate 2', `title ${FIELD}`, `: ${COLON}`, `Gate 2 ${VALUE}`],
      [
        '[Verse 1]',
        '[ punctuation.definition.heading.begin',
        'Verse 1 entity.name.section',
        '] punctuation.definition.heading.end',
      ],
      [
        'count |1 & 2ea|',
        `count ${ROW}`,
        `| ${BAR}`,
        '1 constant.numeric.beat',
        '& constant.language.syllable',
        '2 constant.numeric.beat',
        'e constant.language.syllable',
        'a constant.language.syllable',
        `| ${BAR}`,
      ],
      [
        'chords |Dsus4  N.C.|',
        `chords ${ROW}`,
        `| ${BAR}`,
        'Dsus4 entity.name.function.chord',
        'N.C. constant.language.no-chord',
        `| ${BAR}`,
      ],
      ['chords |N.C', `chords ${ROW}`, `| ${BAR}`, 'N.C constant.language.no-chord'],
      [
        'words |lan- tern|',
        `words ${ROW}`,
        `| ${BAR}`,
        'lan- string.unquoted.words',
        'tern string.unquoted.words',
        `| ${BAR}`,
      ],
      [
        'picking |pm i',
        `picking ${ROW}`,
        `| ${BAR}`,
        'pm variable.parameter.picking',
        'i variable.parameter.picking',
      ],
      [
        'fingers |1 T',
        `fingers ${ROW}`,
        `| ${BAR}`,
        '1 constant.numeric.finger',
        'T constant.numeric.finger',
      ],
      ['palm mute |PM--', `palm mute ${ROW}`, `| ${BAR}`, 'PM-- keyword.other.palm-mute'],
      ['ending |1.', `ending ${ROW}`, `| ${BAR}`, '1. constant.numeric.ending'],
      ['ring |~~~ on', `ring ${ROW}`, `| ${BAR}`],
    ];
    for (const [text, ...expected] of cases) {
      it(JSON.stringify(text), () => assert.deepEqual(colours(grammar, text), expected));
    }
  });

  it('has only scopes that a line ends', () => {
    const lines = ['E|--0--', 'plain', 'count |1 &', 'plain', 'title: A', 'plain', 'ring |a', 'plain'];
    tokenize(grammar, lines).forEach((tokens, index) => {
      if (index % 2) assert.deepEqual(tokens, [{ text: 'plain', scopes: [] }]);
    });
  });
});

describe('pegbox fences in Markdown', () => {
  let markdown: IGrammar;
  before(async () => {
    markdown = await loadGrammar('text.html.markdown');
  });

  for (const [open, close] of [
    ['```pegbox', '```'],
    ['~~~~ Pegbox', '~~~~'],
    ['  ```pegbox first', '  ```'],
  ] as const) {
    it(`colours ${JSON.stringify(open)}`, () => {
      const tokens = tokenize(markdown, ['capo: 1', open, 'capo: 2', 'E|--0--|', 'plain', close, 'capo: 3']);
      assert.deepEqual(tokens[0], [{ text: 'capo: 1', scopes: [] }]);
      assert.deepEqual(tokens[2]?.[0], {
        text: 'capo',
        scopes: [
          'markup.fenced_code.block.markdown',
          'meta.embedded.block.pegbox',
          'meta.field.pegbox',
          'entity.name.tag.field.pegbox',
        ],
      });
      assert.equal(tokens[3]?.[0]?.scopes.at(-1), 'entity.name.type.label.pegbox');
      assert.equal(tokens[4]?.[0]?.scopes.at(-1), 'meta.embedded.block.pegbox');
      assert.deepEqual(tokens[6], [{ text: 'capo: 3', scopes: [] }]);
    });
  }

  it('leaves other fences alone', () => {
    const tokens = tokenize(markdown, ['```text', 'capo: 2', '```']);
    assert.deepEqual(tokens[1], [{ text: 'capo: 2', scopes: [] }]);
  });
});
