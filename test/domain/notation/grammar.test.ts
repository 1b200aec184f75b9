import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { grammar as readGrammar, makeRecipe } from 'ohm-js';
import { GUITAR } from '../../../src/instrument/instruments';
import { FIELD_NAMES, type FieldName } from '../../../src/notation/fieldNames';
import { FIELD_READERS } from '../../../src/notation/fieldReaders';
import { PEGBOX_RECIPE } from '../../../src/notation/generated/pegboxRecipe';
import { readLineByGrammar } from '../../../src/notation/grammarLine';
import { usualTuning } from '../../../src/notation/headerViews';
import { randomFrom, type Random } from '../support/random';
import { FIELD_VALUES } from './fieldValues.table';
import { RULE_EXAMPLES } from './grammar.examples';

const NOTATION = resolve(__dirname, '../../../src/notation');
const SOURCE = readFileSync(resolve(NOTATION, 'pegbox.ohm'), 'utf8');
const pegbox = makeRecipe(PEGBOX_RECIPE);
const RULES = Object.keys(readGrammar(SOURCE).rules).filter((rule) => Object.hasOwn(pegbox.rules, rule));

const TOTAL = ['line', 'proseLine', 'remark'];

function matches(text: string, rule: string): boolean {
  return pegbox.match(text, rule).succeeded();
}

describe('the grammar', () => {
  it('ships as the recipe made from it', async () => {
    const file = pathToFileURL(resolve(__dirname, '../../../src/tools/grammar.mjs')).href;
    const tool = (await import(file)) as { recipeModule(): Promise<string> };
    const written = readFileSync(resolve(NOTATION, 'generated/pegboxRecipe.ts'), 'utf8');
    assert.equal(written, await tool.recipeModule(), 'run node src/tools/grammar.mjs');
  });

  it('has examples of every rule, and counter-examples of every one that does not take any text', () => {
    // Cases of a rule (`label_course`) are looked at with the rule.
    const named = RULES.filter((rule) => !/_[a-zA-Z]+$/.test(rule));
    assert.deepEqual(Object.keys(RULE_EXAMPLES).sort(), named.sort());
    for (const [rule, { is, isNot }] of Object.entries(RULE_EXAMPLES)) {
      assert.ok(is.length > 0, rule);
      assert.equal(isNot.length === 0, TOTAL.includes(rule), rule);
    }
  });

  for (const [rule, { is, isNot }] of Object.entries(RULE_EXAMPLES)) {
    it(`${rule} takes what it is and nothing else`, () => {
      for (const text of is) assert.ok(matches(text, rule), `${rule} should take ${JSON.stringify(text)}`);
      for (const text of isNot)
        assert.ok(!matches(text, rule), `${rule} should refuse ${JSON.stringify(text)}`);
    });
  }

  it('uses every case of its rules in some example', () => {
    const cases = new Set(RULES.filter((rule) => /_[a-zA-Z]+$/.test(rule)));
    const operation = pegbox.createSemantics().addOperation<boolean>('visit()', {
      _nonterminal(...children) {
        cases.delete(this.ctorName);
        for (const child of children) (child as unknown as { visit(): boolean }).visit();
        return true;
      },
      _iter(...children) {
        for (const child of children) (child as unknown as { visit(): boolean }).visit();
        return true;
      },
      _terminal: () => true,
    });
    for (const [rule, { is }] of Object.entries(RULE_EXAMPLES)) {
      for (const text of is) (operation(pegbox.match(text, rule)) as unknown as { visit(): boolean }).visit();
    }
    assert.deepEqual([...cases], []);
  });

  it('reads a line of every kind', () => {
    const kinds = ['', '# softly', '[Verse]', 'E|0---|', 'count |1 |', 'capo: 2', 'Sing.'];
    assert.deepEqual(
      kinds.map((text) => readLineByGrammar(text).kind),
      ['blank', 'comment', 'section', 'string', 'row', 'field', 'prose'],
    );
  });
});

describe('values of fields', () => {
  const scope = { instrument: GUITAR, tuning: usualTuning(GUITAR), frets: GUITAR.frets, userTunings: {} };

  function isRead(field: FieldName, value: string): boolean {
    return FIELD_READERS[field](value, scope).ok;
  }

  /** `scale length` → `scaleLengthValue` */
  function ruleOf(field: FieldName): string {
    return `${field.replace(/ (\w)/g, (_, letter: string) => letter.toUpperCase())}Value`;
  }

  it('have a rule for each field', () => {
    for (const field of FIELD_NAMES) assert.ok(Object.hasOwn(pegbox.rules, ruleOf(field)), ruleOf(field));
  });

  for (const field of FIELD_NAMES) {
    const values = FIELD_VALUES[field];
    if (!values) continue;
    it(`${field}: what its reader takes the grammar takes, what is malformed both refuse`, () => {
      for (const value of values.read) {
        assert.ok(isRead(field, value), `the reader should take ${value}`);
        assert.ok(matches(value.trim(), ruleOf(field)), `the grammar should take ${value}`);
      }
      for (const value of values.malformed) {
        // An empty field is told before any reader sees it; for a capo a reader would take it for none.
        if (value !== '') assert.ok(!isRead(field, value), `the reader should refuse ${value}`);
        assert.ok(!matches(value, ruleOf(field)), `the grammar should refuse ${value}`);
      }
    });
  }

  it('that a reader takes, however they are altered, the grammar takes', () => {
    const random = randomFrom(20_261_125);
    let taken = 0;
    const differ: string[] = [];
    for (let i = 0; i < 20_000; i++) {
      const field = random.pick(FIELD_NAMES);
      const [first, ...others] = FIELD_VALUES[field]?.read ?? [];
      if (first === undefined) continue;
      const value = altered(random.pick([first, ...others]), random, first);
      if (value === '' || !isRead(field, value)) continue;
      taken += 1;
      if (!matches(value, ruleOf(field))) differ.push(`${field}: ${value}`);
    }
    assert.deepEqual(differ, []);
    assert.ok(taken > 2000, `only ${taken} altered values were still read`);
  });
});

/** A value with one or two characters put in, taken out or replaced. */
function altered(value: string, random: Random, other: string): string {
  const alphabet = `0123456789 .,;-/#bmEADGwx()=${other}`;
  let text = value;
  for (let times = 1 + random.below(2); times > 0; times--) {
    const at = random.below(text.length + 1);
    const put = random.below(3) === 0 ? '' : alphabet.charAt(random.below(alphabet.length));
    text = text.slice(0, at) + put + text.slice(at + random.below(2));
  }
  return text.trim();
}
