// Writes syntaxes/pegbox.tmLanguage.json from the tables the parser reads too, so that colours and parser know the
// same names. `node src/tools/textmate.mjs` writes it, `--check` says whether the file is current.
import 'tsx/cjs';
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import * as prettier from 'prettier';

const require = createRequire(import.meta.url);
const { FIELD_NAMES, FIELD_ALIASES } = require('../notation/fieldNames.ts');
const { ROW_NAMES, ROW_ALIASES } = require('../notation/rowNames.ts');

const target = fileURLToPath(new URL('../../syntaxes/pegbox.tmLanguage.json', import.meta.url));

// Characters of a string line; look-alikes colour as what they are read as.
const BAR = '[|│┃¦]';
const DASH = '[-–—─−]';
const DASHES = '\\-–—─−';
const BARS = '|│┃¦';
const SPACE = '[ \\t\\x{A0}]';
const NOTE = '[A-Ga-g][#b♯♭]?[0-9]?';
const LABEL = `(?:${NOTE}(?:/${NOTE})?|1[0-4]|[1-9])`;
const START = `^\\x{FEFF}?${SPACE}*`;

/**
 * The words for one name, its aliases with it; a blank in a name may be several.
 * @param {string} name
 * @param {Record<string, string>} aliases
 */
function words(name, aliases) {
  return [name, ...Object.keys(aliases).filter((alias) => aliases[alias] === name)]
    .map((word) => word.replaceAll(' ', `${SPACE}+`))
    .join('|');
}

/** Fields whose value is free text; in all others numbers are told apart. */
const TEXT_FIELDS = ['title', 'by', 'remark', 'part'];

/**
 * @param {string[]} names
 * @param {object[]} inner
 */
function fieldRule(names, inner) {
  return {
    name: 'meta.field.pegbox',
    match: `${START}((?i:${names.map((name) => words(name, FIELD_ALIASES)).join('|')}))${SPACE}*(:)${SPACE}+(.*?\\S)\\s*$`,
    captures: {
      1: { name: 'entity.name.tag.field.pegbox' },
      2: { name: 'punctuation.separator.key-value.pegbox' },
      3: { name: 'string.unquoted.value.pegbox', patterns: inner },
    },
  };
}

/**
 * What stands in each row. A row that the table gains and this one does not is an error, not a colourless row.
 * @type {Record<string, { name: string, match: string }[]>}
 */
const ROW_CONTENTS = {
  count: [
    { name: 'constant.numeric.beat.pegbox', match: '[0-9]+' },
    { name: 'constant.language.syllable.pegbox', match: '&|\\+|trip|let|[eatl]' },
  ],
  chords: [
    { name: 'constant.language.no-chord.pegbox', match: 'N\\.?C\\.?(?![^\\s|])' },
    { name: 'entity.name.function.chord.pegbox', match: `[^\\s${BARS}]+` },
  ],
  words: [{ name: 'string.unquoted.words.pegbox', match: `[^\\s${BARS}]+` }],
  picking: [{ name: 'variable.parameter.picking.pegbox', match: '(?i)[pimactdux]+' }],
  fingers: [{ name: 'constant.numeric.finger.pegbox', match: '[0-4Tt]+' }],
  'palm mute': [{ name: 'keyword.other.palm-mute.pegbox', match: `[^\\s${BARS}]+` }],
  ending: [{ name: 'constant.numeric.ending.pegbox', match: '[0-9]+[.,]?' }],
};

/** @param {string} row */
function rowRule(row) {
  const contents = ROW_CONTENTS[row];
  if (!contents)
    throw new Error(
      `No colours are given for the row "${row}": add it to ROW_CONTENTS in src/tools/textmate.mjs.`,
    );
  return {
    name: `meta.row.${row.replaceAll(' ', '-')}.pegbox`,
    begin: `${START}((?i:${words(row, ROW_ALIASES)}))${SPACE}*(?=${BAR})`,
    beginCaptures: { 1: { name: 'entity.name.tag.row.pegbox' } },
    end: '$',
    patterns: [{ include: '#bar' }, ...contents],
  };
}

const TIMES = { name: 'keyword.control.repeat.pegbox', match: '(?<!\\w)(?:x[0-9]+|[0-9]+x)(?!\\w)' };

const grammar = {
  name: 'Pegbox tab',
  scopeName: 'source.pegbox',
  // The order in which notation.md, "Lines", tries them.
  patterns: ['comment', 'section', 'string-line', 'rows', 'fields', 'text-row'].map((name) => ({
    include: `#${name}`,
  })),
  repository: {
    comment: {
      name: 'comment.line.number-sign.pegbox',
      match: `${START}(#).*$`,
      captures: { 1: { name: 'punctuation.definition.comment.pegbox' } },
    },
    section: {
      name: 'markup.heading.pegbox',
      match: `${START}(\\[)([^\\[\\]]*[^\\[\\]\\s][^\\[\\]]*)(\\])\\s*(\\(?(?:x[0-9]+|[0-9]+x)\\)?)?\\s*$`,
      captures: {
        1: { name: 'punctuation.definition.heading.begin.pegbox' },
        2: { name: 'entity.name.section.pegbox' },
        3: { name: 'punctuation.definition.heading.end.pegbox' },
        4: { patterns: [TIMES] },
      },
    },
    'string-line': {
      name: 'meta.string-line.pegbox',
      // A run is empty; or begins with a sign of a cell and holds a dash; or is nothing but signs and ends with a bar.
      begin:
        `${START}(${LABEL})${SPACE}*(?=${BAR}(?:\\s*$` +
        `|[${DASHES}${BARS}:.0-9x(<hptr/\\\\]\\S*${DASH}|${DASH}` +
        `|(?:[.0-9x(<hptr/\\\\:][-.0-9x()<>hptrb~/\\\\:${BARS}]*)?${BAR}(?=\\s|$)))`,
      beginCaptures: { 1: { name: 'entity.name.type.label.pegbox' } },
      end: '$',
      patterns: [
        { include: '#remark' },
        { include: '#bar' },
        { include: '#harmonic' },
        { include: '#bend' },
        { name: 'constant.numeric.fret.pegbox', match: '[0-9]+' },
        { name: 'constant.language.muted.pegbox', match: 'x' },
        { name: 'keyword.other.technique.pegbox', match: 'tr(?=[0-9])|[hptr]|/+|\\\\+|~+' },
        { name: 'keyword.other.stop.pegbox', match: '\\.' },
        { name: 'punctuation.section.ghost.begin.pegbox', match: '\\(' },
        { name: 'punctuation.section.ghost.end.pegbox', match: '\\)' },
        { name: 'punctuation.separator.dash.pegbox', match: `${DASH}+` },
        { name: 'invalid.illegal.sign.pegbox', match: '\\S' },
      ],
    },
    remark: {
      patterns: [
        {
          match: `\\s+(\\S.*)$`,
          captures: { 1: { name: 'comment.line.remark.pegbox', patterns: [TIMES] } },
        },
        {
          // What follows the last bar line with no dash in it.
          match: `(?<=[${BARS}:])((?!:?${BAR})[^\\s${DASHES}${BARS}]+)(?=\\s|$)`,
          captures: { 1: { name: 'comment.line.remark.pegbox', patterns: [TIMES] } },
        },
      ],
    },
    bar: {
      patterns: [
        { name: 'keyword.control.repeat.pegbox', match: `:${BAR}{1,2}:?|${BAR}{1,2}:` },
        { name: 'keyword.operator.bar.pegbox', match: `${BAR}{1,2}` },
      ],
    },
    harmonic: {
      name: 'meta.harmonic.pegbox',
      match: '(<)([0-9]+(?:\\.[0-9]+)?)(>)',
      captures: {
        1: { name: 'punctuation.definition.harmonic.begin.pegbox' },
        2: { name: 'constant.numeric.harmonic.pegbox' },
        3: { name: 'punctuation.definition.harmonic.end.pegbox' },
      },
    },
    bend: {
      match: '(?<=[0-9)>~])(p?b)((?:1/4|1/2|3/4|[0-9]+(?:\\.[0-9]+)?)?)',
      captures: {
        1: { name: 'keyword.other.technique.pegbox' },
        2: { name: 'constant.numeric.bend.pegbox' },
      },
    },
    rows: { patterns: ROW_NAMES.filter((row) => row !== 'text').map(rowRule) },
    fields: {
      patterns: [
        fieldRule(TEXT_FIELDS, []),
        fieldRule(
          FIELD_NAMES.filter((name) => !TEXT_FIELDS.includes(name)),
          [
            {
              name: 'constant.numeric.value.pegbox',
              match: '(?<![\\w#♯♭])[-+]?\\.?[0-9]+(?:[./][0-9]+)?w?(?![\\w#])',
            },
          ],
        ),
      ],
    },
    // Any other word before a bar line: its text stays plain. Labels that open no run, and lines that look like a
    // table of words, are prose.
    'text-row': {
      name: 'meta.row.text.pegbox',
      begin:
        `${START}(?!${LABEL}${SPACE}*${BAR})(?![^|]* \\|(?: [^| ][^|]* \\|)* [^| ][^|]*(?: \\|)?\\s*$)` +
        `([[:alpha:]][[:alpha:]'’-]+)${SPACE}*(?=${BAR})`,
      beginCaptures: { 1: { name: 'entity.name.tag.row.pegbox' } },
      end: '$',
      patterns: [{ include: '#bar' }],
    },
  },
};

const text = await prettier.format(JSON.stringify(grammar), {
  ...(await prettier.resolveConfig(target)),
  filepath: target,
});
if (process.argv.includes('--check')) {
  if (readFileSync(target, 'utf8') !== text) {
    console.error(
      'syntaxes/pegbox.tmLanguage.json is not what the tables give: run node src/tools/textmate.mjs.',
    );
    process.exitCode = 1;
  }
} else {
  writeFileSync(target, text);
}
