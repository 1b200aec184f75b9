import assert from 'node:assert/strict';
import type { CompletionItem } from '../../../src/service/records';
import { openAt, service, settings } from './cursor';

function offered(marked: string, own = settings): readonly CompletionItem[] {
  const { document, place } = openAt(marked, own);
  return service.completion(document, place, own);
}

/** The text after taking an offer. */
function taken(marked: string, label: string): string {
  const { document, place } = openAt(marked);
  const item = service.completion(document, place, settings).find((offer) => offer.label === label);
  if (!item) throw new Error(`${label} is not offered.`);
  document.edit([item.edit]);
  return document.text();
}

const labels = (items: readonly CompletionItem[]): readonly string[] => items.map(({ label }) => label);

const SYSTEM = `E4 |0-----|
B3 |------|
G3 |------|
D3 |------|
A2 |------|
E2 |------|`;

describe('completion', () => {
  it('fields where a line begins, each with what it is for', () => {
    assert.equal(taken('ti<|>', 'tuning'), 'tuning: ');
    assert.equal(taken('Ca<|>', 'capo'), 'capo: ');
    assert.equal(taken('scale le<|>', 'scale length'), 'scale length: ');
    assert.equal(taken('ca<|>ppo: 2', 'capo'), 'capo: 2');
    const capo = offered('c<|>').find(({ label }) => label === 'capo');
    assert.deepEqual(
      [capo?.kind, capo?.detail],
      ['field', 'Where the capo stands; under a full capo frets count from it.'],
    );
  });

  it('nothing inside a sentence, a string line or a comment', () => {
    for (const text of ['Let every string<|> ring', 'E4 |0-<|>-|', '# ti<|>', 'title: Wax<|>'])
      assert.deepEqual(offered(text), []);
  });

  it('tunings with their notes, nearest to the one in force first', () => {
    const items = offered('tuning: <|>');
    assert.deepEqual(
      items.slice(0, 3).map(({ label, detail }) => `${label}: ${detail}`),
      ['standard: E2 A2 D3 G3 B3 E4', 'lute: E2 A2 D3 F#3 B3 E4', 'drop D: D2 A2 D3 G3 B3 E4'],
    );
    assert.deepEqual(
      [...items].sort((a, b) => (a.sortText < b.sortText ? -1 : 1)),
      items,
    );
    assert.deepEqual(labels(offered('tuning: DADGAD\n\nE4 |0|\n\ntuning: <|>')).slice(0, 2), [
      'DADGAD',
      'open D',
    ]);
    assert.deepEqual(labels(offered('tuning: DA<|>')).slice(0, 1), ['standard']);
  });

  it("the user's own tunings come first of equals, and hide the trade's of the same name", () => {
    const own = { ...settings, tunings: { 'bee line': 'D2 A2 D3 G3 B3 E4', 'open d': 'C2 G2 C3 E3 G3 C4' } };
    const items = offered('tuning: <|>', own);
    const names = labels(items);
    assert.equal(names.indexOf('bee line') + 1, names.indexOf('drop D'));
    assert.equal(names.includes('open D'), false);
    assert.equal(items.find(({ label }) => label === 'open d')?.detail, 'C2 G2 C3 E3 G3 C4');
  });

  it('a value takes the place of the one that is there', () => {
    assert.equal(taken('tuning: D<|>AD', 'DADGAD'), 'tuning: DADGAD');
    assert.equal(taken('tuning:<|>', 'drop D'), 'tuning: drop D');
    assert.equal(taken('tuning:   <|>open', 'open G'), 'tuning:   open G');
    assert.equal(taken('instrument: b<|>', 'banjo'), 'instrument: banjo');
    assert.equal(taken('key: <|>', 'D mixolydian'), 'key: D mixolydian');
    assert.equal(taken('time: <|>', '6/8'), 'time: 6/8');
    assert.equal(taken('fretting: <|>', 'slide'), 'fretting: slide');
    assert.equal(taken('feel: <|>', 'swing'), 'feel: swing');
    assert.equal(taken('capo: <|>', '2 on 5 4 3'), 'capo: 2 on 5 4 3');
    assert.equal(taken('part: low\n\nE2 |0|\n\npart: <|>', 'low'), 'part: low\n\nE2 |0|\n\npart: low');
  });

  it('every offered value is understood', () => {
    for (const field of [
      'instrument',
      'tuning',
      'capo',
      'frets',
      'scale length',
      'gauges',
      'reference pitch',
      'key',
      'meter',
      'tempo',
      'feel',
      'fretting',
    ]) {
      const items = offered(`${field}: <|>`);
      assert.ok(items.length > 0, field);
      for (const { label } of items) {
        const { fieldGroups } = service.open(`${field}: ${label}\n\n${SYSTEM}\n`, settings);
        assert.deepEqual(
          fieldGroups.flatMap(({ problems }) => problems.map(({ message }) => message)),
          [],
          `${field}: ${label}`,
        );
      }
    }
  });

  it('rows beside a system, their bar line under its bar lines', () => {
    const wide = SYSTEM.replace(/ \|/g, '     |');
    assert.equal(taken(`cho<|>\n${wide}`, 'chords'), `chords |\n${wide}`);
    assert.equal(taken(`${wide}\n<|>`, 'palm mute'), `${wide}\nPM     |`);
    assert.deepEqual(labels(offered(`chords |E\n${SYSTEM}\n<|>`)).slice(0, 3), ['count', 'words', 'picking']);
  });

  it('a count comes written out, and says the times that are read now', () => {
    const system = 'E4      |0---2---3---5---|';
    const counted = taken(`co<|>\n${system}`, 'count');
    assert.equal(counted, `count   |1   2   3   4   |\n${system}`);
    const onsets = (text: string): readonly number[] =>
      service.notes(service.open(text, settings)).map(({ onset }) => onset);
    assert.deepEqual(onsets(counted), onsets(system));
  });

  it('the word of a row keeps its columns', () => {
    assert.equal(taken('cuo<|>nt  |1\nE4     |0-', 'count'), 'count  |1\nE4     |0-');
  });

  it('a whole system for the tuning in force on a blank line', () => {
    assert.equal(
      taken('instrument: ukulele\nmeter: 3/4\n\n<|>', 'empty system'),
      `instrument: ukulele
meter: 3/4

A4 |------------|------------|------------|------------|
E4 |------------|------------|------------|------------|
C4 |------------|------------|------------|------------|
G4 |------------|------------|------------|------------|`,
    );
  });

  it('headings used already, each once', () => {
    assert.equal(taken('[Verse]\n\n[Chorus]\n\n[<|>', '[Verse]'), '[Verse]\n\n[Chorus]\n\n[Verse]');
    assert.deepEqual(labels(offered('[Verse]\n\n[Verse]\n\n[V<|>]')), ['[Verse]']);
  });
});
