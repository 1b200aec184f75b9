import assert from 'node:assert/strict';
import { createLanguageService } from '../../../../src/service/languageService';
import type { RingingAnswer, RingingRequest } from '../../../../src/service/ringing/ringingAnswer';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { hoverLines } from '../cursor';

function ask(text: string, request: RingingRequest = {}): RingingAnswer {
  const service = createLanguageService();
  return service.ringing(service.open(text, DEFAULT_SETTINGS), request, DEFAULT_SETTINGS);
}

function chords(fields: string, names: string): string {
  const bars = names.split(' ').map((name) => name.padEnd(8));
  return `${fields}\n\nchords |${bars.join('|')}|\n`;
}

function told(text: string): string[] {
  return ask(text).chords.map(({ name, words }) => `${name}: ${words}`);
}

/*
 * Common practice, no source: in open G everything rings over G; over C, its straight barre at 5, the open B is the
 * major seventh; over D the open Gs are the fourth. In DADGAD over D without a third, and over G, nothing needs muting;
 * over A with its third the Ds do.
 */
describe('which strings may ring over the chords of a piece', () => {
  it('open G over G, C and D', () => {
    assert.deepEqual(told(chords('tuning: open G\nkey: G', 'G C D')), [
      'G: All strings may ring (fifth, root, fifth, root, third, fifth)',
      'C: Strings 5 and 3 may ring (fifth); strings 6, 4 and 1 in passing (second); mute string 2 (a half step under the root)',
      'D: Strings 6, 4 and 1 may ring (root); string 2 in passing (sixth); mute strings 5 and 3 (a half step above the third)',
    ]);
  });

  it('DADGAD over D5, G and A', () => {
    assert.deepEqual(told(chords('tuning: DADGAD\nkey: D', 'D5 G A')), [
      'D5: Strings 6, 5, 4, 2 and 1 may ring (root, fifth, root, fifth, root); string 3 in passing (fourth)',
      'G: Strings 6, 4, 3 and 1 may ring (fifth, fifth, root, fifth); strings 5 and 2 in passing (second)',
      'A: Strings 5 and 2 may ring (root); string 3 in passing (flat seventh); mute strings 6, 4 and 1 (a half step above the third)',
    ]);
  });

  it('for the key', () => {
    const [key, ...more] = ask(chords('key: Eb', 'Eb')).keys;
    assert.equal(more.length, 0);
    assert.equal(key?.name, 'Eb major');
    assert.equal(
      key.words,
      'String 3 may ring (third); string 4 in passing (seventh); mute strings 6, 5, 2 and 1 (outside the key)',
    );
  });

  it('each chord once, with the bars where it stands', () => {
    const { chords: list, title } = ask(chords('key: C', 'C G C C C Am G'));
    assert.deepEqual(
      list.map(({ name, bars, where }) => [name, bars, where]),
      [
        ['C', [1, 3, 4, 5], 'bars 1 and 3–5'],
        ['G', [2, 7], 'bars 2 and 7'],
        ['Am', [6], 'bar 6'],
      ],
    );
    assert.equal(title, 'the whole file');
  });

  it('under a full capo chords are told as played, beside what sounds; the verdicts stay', () => {
    const plain = ask(chords('key: G', 'G C'));
    const capo = ask(chords('key: G\ncapo: 3', 'G C'));
    assert.deepEqual(
      capo.chords.map(({ sounds }) => sounds),
      ['Bb', 'Eb'],
    );
    assert.equal(capo.keys[0]?.sounds, 'Bb major');
    assert.deepEqual(
      capo.chords.map(({ words }) => words),
      plain.chords.map(({ words }) => words),
    );
    assert.equal(capo.chords[0]?.strings[0]?.note, 'G2');
    assert.equal(plain.chords[0]?.sounds, null);
  });

  it('under a partial capo the covered strings sound at it', () => {
    const [chord] = ask(chords('capo: 2 on 5 4 3\nkey: E', 'E')).chords;
    // E B E A B E (playing conventions: 022200 opens E B E A B E).
    assert.deepEqual(
      chord?.strings.map(({ note }) => note),
      ['E2', 'B2', 'E3', 'A3', 'B3', 'E4'],
    );
    assert.equal(
      chord.words,
      'Strings 6, 5, 4, 2 and 1 may ring (root, fifth, root, fifth, root); mute string 3 (a half step above the third)',
    );
  });

  it('tells what is not there and what cannot be read', () => {
    assert.match(ask('').remarks[0] ?? '', /no system here yet/);
    assert.match(ask('key: D\n\nE4 |0---|\n').remarks.join(' '), /No chords are written/);
    const { remarks, keys } = ask(chords('', 'C Xq N.C.'));
    assert.equal(keys.length, 0);
    assert.match(remarks.join(' '), /No key is written/);
    assert.match(remarks.join(' '), /Passed over, as it is no chord name that can be read: Xq\./);
  });

  it('for one part, or for a range', () => {
    const text = `part: low\n\n${chords('key: G', 'G C')}\npart: high\n\n${chords('tuning: DADGAD', 'D')}`;
    const high = ask(text, { place: { line: text.split('\n').length - 2, character: 0 } });
    assert.equal(high.title, 'the part high');
    assert.deepEqual(
      high.chords.map(({ name, tuning, where }) => [name, tuning, where]),
      [['D', 'DADGAD', 'bar 1']],
    );
    // Rows without strings are taken whole.
    const at = { line: text.split('\n').findIndex((one) => one.startsWith('chords')), character: 12 };
    assert.deepEqual(
      ask(text, { range: { start: at, end: at } }).chords.map(({ name }) => name),
      ['G', 'C'],
    );
    assert.deepEqual(
      ask(text).chords.map(({ where }) => where),
      ['low, bar 1', 'low, bar 2', 'high, bar 1'],
    );
  });

  it('the hover of a chord has the same sentence', () => {
    const text = chords('tuning: open G\nkey: G', 'G C D');
    const sentence = ask(text).chords[1]?.words;
    assert.ok(sentence);
    assert.ok(hoverLines(text.replace('|C', '|<|>C')).includes(sentence));
  });
});
