import assert from 'node:assert/strict';
import { openAt, service, settings } from './cursor';

describe('questions from the command line', () => {
  // Frequencies: T1, twelve-tone equal temperament at A4 = 440 Hz (ISO 16:1975).
  it('what a tuning value means', () => {
    assert.deepEqual(service.tuning('drop D', undefined, settings), {
      strings: [
        { number: 6, note: 'D2', midi: 38, frequency: 73.42, steps: -2 },
        { number: 5, note: 'A2', midi: 45, frequency: 110, steps: 0 },
        { number: 4, note: 'D3', midi: 50, frequency: 146.83, steps: 0 },
        { number: 3, note: 'G3', midi: 55, frequency: 196, steps: 0 },
        { number: 2, note: 'B3', midi: 59, frequency: 246.94, steps: 0 },
        { number: 1, note: 'E4', midi: 64, frequency: 329.63, steps: 0 },
      ],
      chord: 'G6/9/D',
      alternatives: ['A9sus4/D', 'D6/9sus4', 'Em7(add11)/D'],
    });
  });

  it('a string that the instrument has not has no steps', () => {
    const answer = service.tuning('B E A D G B E', 'guitar', settings);
    assert.ok(!('error' in answer));
    assert.deepEqual(
      answer.strings.map(({ steps }) => steps),
      [null, 0, 0, 0, 0, 0, 0],
    );
  });

  it('on another instrument, and with a tuning of the user', () => {
    const ukulele = service.tuning('low G', 'ukulele', settings);
    assert.ok(!('error' in ukulele));
    assert.deepEqual(
      ukulele.strings.map(({ note, steps }) => [note, steps]),
      [
        ['G3', -12],
        ['C4', 0],
        ['E4', 0],
        ['A4', 0],
      ],
    );
    const own = service.tuning('hive', undefined, { ...settings, tunings: { Hive: 'open D' } });
    assert.ok(!('error' in own));
    assert.equal(own.chord, 'D');
  });

  it('what cannot be read is one sentence', () => {
    const errors = [
      service.tuning('blorp', undefined, settings),
      service.tuning('standard', 'kazoo', settings),
      service.chord(['D'], undefined, undefined, settings),
      service.chord([], undefined, undefined, settings),
      service.chord(['D2'], 'Q', undefined, settings),
    ].map((answer) => ('error' in answer ? answer.error : 'no error'));
    assert.deepEqual(errors.slice(1), [
      'Pegbox knows no instrument “kazoo”. Use a name such as guitar, bass or banjo.',
      '“D” is no note with an octave: write a letter A–G, # or b where needed, and the octave, such as F#3.',
      'Write the sounding notes, low string first, such as D2 A2 D3.',
      'A key is a tonic A–G and a mode, such as D, E minor, Em or D mixolydian.',
    ]);
    assert.match(errors[0] ?? '', /^“blorp” is no tuning that Pegbox knows for guitar\./);
  });

  it('names for notes, by key and tuning', () => {
    assert.deepEqual(service.chord(['D2', 'A2', 'D3'], undefined, undefined, settings), {
      kind: 'power',
      names: [{ name: 'D5', tones: ['D', 'A'], omitted: [] }],
    });
    const names = (notes: string, key?: string, tuning?: string): string | undefined => {
      const answer = service.chord(notes.split(' '), key, tuning, settings);
      return 'error' in answer ? answer.error : answer.names[0]?.name;
    };
    assert.equal(names('G#2 B2 D#3'), 'G#m');
    assert.equal(names('G#2 B2 D#3', 'Eb minor'), 'Abm');
    assert.equal(names('C4 E4 G4 C4 E4', undefined, 'high strung'), 'C');
    const c7 = service.chord(['C3', 'E3', 'Bb3'], undefined, undefined, settings);
    assert.deepEqual('error' in c7 ? c7 : c7.names[0], {
      name: 'C7',
      tones: ['C', 'E', 'Bb'],
      omitted: ['5'],
    });
  });
});

describe('tunings to choose from', () => {
  it('nearest to the one in force first, with what to turn', () => {
    const { document, place } = openAt('tuning: drop D\n\nE4 |0|<|>\n');
    assert.deepEqual(service.tuningChoices(document, place, settings).slice(0, 4), [
      { value: 'drop D', notes: 'D2 A2 D3 G3 B3 E4', steps: 'as it is' },
      { value: 'standard', notes: 'E2 A2 D3 G3 B3 E4', steps: 'string 6 up 2' },
      { value: 'double drop D', notes: 'D2 A2 D3 G3 B3 D4', steps: 'string 1 down 2' },
      { value: 'G6', notes: 'D2 G2 D3 G3 B3 E4', steps: 'string 5 down 2' },
    ]);
  });

  it('strings that come or go are named', () => {
    const { document, place } = openAt('<|>E4 |0|\n');
    const choice = service
      .tuningChoices(document, place, settings)
      .find(({ value }) => value === 'five-string open G');
    assert.equal(choice?.steps, 'string 6 off, string 5 down 2, string 1 down 2');
  });
});
