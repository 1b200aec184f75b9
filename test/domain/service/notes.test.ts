import assert from 'node:assert/strict';
import { service, settings } from './cursor';

const notes = (text: string): ReturnType<typeof service.notes> => service.notes(service.open(text, settings));

describe('every note in time order', () => {
  it('has the whole of what the text says', () => {
    assert.deepEqual(notes('key: D\n\ncount |1 & 2 & 3 & 4 & |\nD3    |4---0h2---------|\n'), [
      {
        part: null,
        bar: 1,
        line: 4,
        column: 8,
        string: 4,
        fret: 4,
        midi: 54,
        name: 'F#3',
        onset: 0,
        duration: 1,
        onsetFraction: [0, 1],
        durationFraction: [1, 1],
        techniques: [],
      },
      {
        part: null,
        bar: 1,
        line: 4,
        column: 12,
        string: 4,
        fret: 0,
        midi: 50,
        name: 'D3',
        onset: 1,
        duration: 0.5,
        onsetFraction: [1, 1],
        durationFraction: [1, 2],
        techniques: [],
      },
      {
        part: null,
        bar: 1,
        line: 4,
        column: 14,
        string: 4,
        fret: 2,
        midi: 52,
        name: 'E3',
        onset: 1.5,
        duration: 2.5,
        onsetFraction: [3, 2],
        durationFraction: [5, 2],
        techniques: [{ sign: 'h' }],
      },
    ]);
  });

  it('parts one after the other, each from its own start; a pickup is bar 0', () => {
    const text = `part: A

count |4 |1 2 3 4 |
E2    |0-|0-------|

part: B

E4 |0-------|0-------|

part: A

E2 |3-------|
`;
    assert.deepEqual(
      notes(text).map(({ part, bar, onset, duration }) => [part, bar, onset, duration]),
      [
        ['A', 0, 0, 1],
        ['A', 1, 1, 4],
        ['A', 2, 5, 4],
        ['B', 1, 0, 4],
        ['B', 2, 4, 4],
      ],
    );
  });

  it('repeats are not unrolled', () => {
    assert.equal(notes('E2 |:0-0-:|x4\n').length, 2);
  });

  it('a course gives two entries, both with where a bend goes', () => {
    const text = `instrument: 12-string guitar

1 |-------|
2 |-------|
3 |7b9----|
4 |-------|
5 |-------|
6 |-------|
`;
    assert.deepEqual(
      notes(text).map(({ midi, name, string, techniques }) => [midi, name, string, techniques]),
      [
        [62, 'D4', 3, [{ sign: 'b', to: 64 }]],
        [74, 'D5', 3, [{ sign: 'b', to: 76 }]],
      ],
    );
  });

  it('cents are decimals, a muted stroke and what cannot sound have no number', () => {
    const text = `tuning: E2 A2 D3 G#3-14c B3 E4

E4 |------------|
B3 |--x---------|
G3 |2-----<4>---|
D3 |----45------|
A2 |------------|
E2 |------------|
`;
    assert.deepEqual(
      notes(text).map(({ fret, midi, name }) => [fret, midi, name]),
      [
        [2, 57.86, 'A#3'],
        [null, null, ''],
        [45, null, ''],
        [0, 83.7231, 'C6'],
      ],
    );
  });
});
