import assert from 'node:assert/strict';
import { groupFiles, type Grouping } from '../../../../src/service/library/grouping';
import { service, settings } from '../cursor';

const entryOf = (text: string) => service.libraryEntry(service.open(text, settings));

/** Files by the words of their fields and one note. */
const FILES = [
  ['b.pegbox', 'title: Two\ntuning: DADGAD\ncapo: 2\n\nD4 |0---|\n'],
  ['a.pegbox', 'title: One\ntuning: DADGAD\nkey: D\n\nD4 |5---|\n'],
  ['c.pegbox', 'part: low\ntuning: drop D\n\nD2 |0---|\n\npart: high\ntuning: standard\n\nE4 |0---|\n'],
  ['d.pegbox', 'title: Ten\ntuning: standard\ncapo: 10\n\n# nothing yet\n'],
].map(([name = '', text = '']) => ({ name, entry: entryOf(text) }));

describe('the library', () => {
  it('tells what a file holds, each value once', () => {
    const entry = entryOf(
      'title: Low\ntuning: drop D\ncapo: 2\nkey: E minor\n\npart: one\n\nD2 |0---|x---|\n\npart: two\n\nE4 |3---|----|\n',
    );
    assert.deepEqual(entry, {
      title: 'Low',
      parts: ['one', 'two'],
      tunings: ['drop D'],
      notes: ['D2 A2 D3 G3 B3 E4'],
      capos: ['2'],
      keys: ['E minor'],
      range: { low: 'E2', high: 'A4', lowMidi: 40, highMidi: 69 },
      bars: 4,
    });
  });

  it('tells a file without tab by its fields, and an empty one', () => {
    assert.deepEqual(entryOf('title: Later\ntuning: DADGAD\n').tunings, ['DADGAD']);
    assert.deepEqual([entryOf('').range, entryOf('').title, entryOf('').tunings], [null, '', ['standard']]);
  });

  it('puts files under what they have in common, in the order of people', () => {
    const groups = (by: Grouping) =>
      groupFiles(FILES, by).map(
        ({ name, files }) => `${name}: ${files.map((file) => file.name[0]).join('')}`,
      );
    assert.deepEqual(groups('tuning'), ['DADGAD: ab', 'drop D: c', 'standard: cd']);
    assert.deepEqual(groups('capo'), ['no capo: ca', 'capo 2: b', 'capo 10: d']);
    assert.deepEqual(groups('key'), ['D major: a', 'no key written: cdb']);
    assert.deepEqual(groups('range'), [
      'lowest note D2: c',
      'lowest note E4: b',
      'lowest note G4: a',
      'no notes: d',
    ]);
  });
});
