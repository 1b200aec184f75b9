import assert from 'node:assert/strict';
import fc from 'fast-check';
import { Interval, Note, Scale } from 'tonal';
import { createFingerboard } from '../../../../src/instrument/sounding';
import type { NeckAnswer, NeckPlace, NeckRequest } from '../../../../src/service/neck/neckAnswer';
import { openAt, service, settings } from '../cursor';

type Neck = Required<NeckAnswer>;

function neckOf(marked: string, request: NeckRequest = {}): Neck {
  const { document, place } = openAt(marked);
  const answer = service.neck(document, place, request, settings);
  if ('error' in answer) throw new Error(answer.error);
  assert.ok(answer.board);
  return { ...answer, board: answer.board };
}

function refused(marked: string, request: NeckRequest): string {
  const { document, place } = openAt(marked);
  const answer = service.neck(document, place, request, settings);
  assert.ok('error' in answer, JSON.stringify(answer));
  return answer.error;
}

/** A place by string and fret as written. */
function placeOn({ board }: Neck, string: number, fret: number): NeckPlace {
  const place = board.strings
    .find(({ number }) => number === string)
    ?.places.find((one) => one.fret === fret);
  assert.ok(place, `string ${string} fret ${fret}`);
  return place;
}

const fretsOf = ({ board }: Neck, string: number): readonly number[] =>
  board.strings.find(({ number }) => number === string)?.places.map(({ fret }) => fret) ?? [];

const marked = ({ board }: Neck, string: number): string =>
  board.strings
    .find(({ number }) => number === string)
    ?.places.filter((place) => place.marked)
    .map(({ fret }) => fret)
    .join(' ') ?? '';

describe('the neck of a tuning', () => {
  // Frets of equal temperament on a scale of 25.5 in (table of lutherie handbooks; x = L(1 − 2^(−n/12))).
  const WIRES: readonly (readonly [number, number])[] = [
    [1, 1.4312],
    [5, 6.3966],
    [7, 8.4808],
    [12, 12.75],
    [24, 19.125],
  ];
  it('has its wires where handbooks have them', () => {
    const { board } = neckOf('frets: 24\n<|>');
    assert.equal(board.wires.length, 25);
    for (const [fret, inches] of WIRES) assert.ok(Math.abs((board.wires[fret] ?? 0) * 25.5 - inches) < 1e-4);
  });

  it('names each place as it is called', () => {
    const neck = neckOf('tuning: DADGAD\nkey: D\n<|>');
    assert.equal(placeOn(neck, 3, 2).name, 'string 3 fret 2, A');
    assert.equal(placeOn(neck, 6, 0).name, 'string 6 open, D');
    assert.deepEqual(placeOn(neck, 1, 5).degree, { short: '4', words: 'fourth' });
    assert.deepEqual(placeOn(neck, 1, 5).interval, { short: 'P4', words: 'perfect fourth' });
    assert.equal(placeOn(neck, 1, 12).root, true);
    assert.equal(placeOn(neck, 1, 12).pitch, 'D5');
  });

  it('spells by the key: D# in E, Eb in Bb', () => {
    assert.equal(placeOn(neckOf('key: E\n<|>'), 5, 6).note, 'D#');
    assert.equal(placeOn(neckOf('key: Bb\n<|>'), 5, 6).note, 'Eb');
    // A scale of choice spells its own notes, whatever the key.
    assert.equal(placeOn(neckOf('key: E\n<|>', { scale: 'Eb' }), 5, 6).note, 'Eb');
  });

  it('begins at a full capo, where frets count from, and names notes as they sound', () => {
    const neck = neckOf('capo: 3\nkey: G\n<|>');
    assert.equal(neck.board.first, 3);
    assert.deepEqual(neck.board.numbers.slice(0, 3), [0, 1, 2]);
    // Capo at fret 3 turns G shapes into B flat (guitarscholar.co.uk, capo chart).
    assert.equal(neck.board.tones.name, 'G major as played, sounding Bb major');
    assert.equal(placeOn(neck, 6, 3).note, 'Bb');
    assert.equal(placeOn(neck, 6, 3).cell, 6);
    assert.equal(placeOn(neck, 6, 3).degree?.short, '1');
    assert.equal(neckOf('capo: 3\n<|>', { chord: 'G' }).board.tones.notes.join(' '), 'Bb D F');
    assert.equal(
      neckOf('capo: 2\n<|>', { scale: 'A minor pentatonic' }).board.tones.notes.join(' '),
      'B D E F# A',
    );
  });

  it('leaves out what a partial capo covers, and has the open string at the capo', () => {
    const neck = neckOf('tuning: DADGAD\ncapo: 2 on 5 4 3\n<|>');
    assert.equal(neck.board.first, 0);
    assert.deepEqual(fretsOf(neck, 3).slice(0, 3), [0, 3, 4]);
    assert.equal(placeOn(neck, 3, 0).cell, 2);
    assert.equal(placeOn(neck, 3, 0).pitch, 'A3');
    assert.deepEqual(fretsOf(neck, 6).slice(0, 3), [0, 1, 2]);
    assert.deepEqual(neck.board.capo, {
      fret: 2,
      from: 5,
      to: 3,
      words: 'Capo at fret 2 on strings 5, 4 and 3',
    });
  });

  it('has no place below the start of a short string', () => {
    const neck = neckOf('instrument: five-string banjo\ntuning: open G\n<|>');
    assert.deepEqual(fretsOf(neck, 5).slice(0, 3), [0, 6, 7]);
    assert.equal(placeOn(neck, 5, 0).cell, 5);
    assert.equal(placeOn(neck, 5, 7).pitch, 'A4');
  });

  it('names both notes of a course', () => {
    const neck = neckOf('instrument: 12-string guitar\n<|>');
    assert.equal(placeOn(neck, 6, 3).pitch, 'G2 and G3');
    assert.equal(neck.board.strings[5]?.course, true);
  });

  it('tells the frets of a scale as sets of strings, to copy', () => {
    const { board } = neckOf('tuning: open G\n<|>', { scale: 'G', frets: 5 });
    assert.equal(board.tones.sets, '0 2 4 5 on the D and G strings; 0 1 3 5 on the B string');
  });

  it('shows as many frets as are asked for, and all without', () => {
    assert.equal(neckOf('<|>', { frets: 5 }).board.last, 5);
    assert.equal(neckOf('frets: 19\n<|>').board.last, 19);
    assert.equal(neckOf('frets: 19\n<|>', { frets: 30 }).board.last, 19);
    assert.equal(neckOf('capo: 2\nfrets: 19\n<|>', { frets: 5 }).board.last, 7);
  });

  it('leaves the board out where it is known, and sends it when a field has changed', () => {
    const { document, place } = openAt('key: D\n<|>');
    const first = service.neck(document, place, {}, settings);
    assert.ok(!('error' in first) && first.board);
    const known = first.board.id;
    assert.deepEqual(Object.keys(service.neck(document, place, { known }, settings)), ['moment']);
    for (const change of ['key: G', 'key: D\ncapo: 1', 'key: D\ntuning: drop D']) {
      const other = openAt(`${change}\n<|>`);
      const answer = service.neck(other.document, other.place, { known }, settings);
      assert.ok('board' in answer && answer.board, change);
    }
  });

  it('says in one sentence what cannot be read', () => {
    assert.match(refused('<|>', { chord: 'Hm' }), /^H is B here/);
    assert.match(refused('<|>', { chord: ' ' }), /^Write the name of a chord/);
    assert.match(refused('<|>', { scale: 'D foo' }), /“foo” is no scale here/);
    assert.match(
      refused('<|>', { scale: 'dorian' }),
      /^Write the first note of the scale too, such as D dorian/,
    );
    assert.match(refused('<|>', { scale: 'D', chord: 'D' }), /ask for one of them/);
    assert.match(refused('<|>', { frets: 0 }), /whole number from 1 to 36/);
  });

  it('marks, for any scale and tuning, what the tables of tonal have, and nothing else', () => {
    const names = ['major', 'dorian', 'minor pentatonic', 'harmonic minor', 'whole tone'] as const;
    const tonics = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
    const strings = fc.array(fc.integer({ min: 28, max: 72 }), { minLength: 4, maxLength: 8 });
    fc.assert(
      fc.property(strings, fc.constantFrom(...tonics), fc.constantFrom(...names), (midis, tonic, name) => {
        const tuning = midis.map((midi) => Note.fromMidi(midi)).join(' ');
        const neck = neckOf(`tuning: ${tuning}\n<|>`, { scale: `${tonic} ${name}`, frets: 12 });
        const wanted = new Set(Scale.get(`${tonic} ${name}`).notes.map((note) => Note.chroma(note)));
        midis.forEach((open, at) => {
          const string = neck.board.strings[midis.length - 1 - at];
          assert.equal(string?.places.length, 13);
          for (const { fret, marked: isMarked, pitch, interval } of string.places) {
            assert.equal(Note.midi(pitch), open + fret);
            assert.equal(isMarked, wanted.has((open + fret) % 12));
            const above = (((open + fret - Note.chroma(tonic)) % 12) + 12) % 12;
            const other = interval.short === 'TT' ? 6 : Interval.semitones(interval.short);
            assert.equal(other, above);
          }
        });
      }),
    );
  });
});

describe('the neck under the cursor', () => {
  const TAB = 'tuning: DADGAD\n\n';

  it('tells what is struck, what rings and what is a harmonic', () => {
    const { moment } = neckOf(
      `${TAB}D4 |--0<|>---|\nA3 |0-2---|\nG3 |------|\nD3 |--<12>|\nA2 |------|\nD2 |0-----|\n`,
    );
    assert.deepEqual(moment.sounding, [
      { string: 6, fret: 0, how: 'rings' },
      { string: 4, fret: 12, how: 'harmonic' },
      { string: 2, fret: 2, how: 'struck' },
      { string: 1, fret: 0, how: 'struck' },
    ]);
    assert.match(moment.where, /^Bar 1, beat 2/);
  });

  it('tells every place of the note under the cursor, each of which sounds it', () => {
    const { moment } = neckOf(
      `${TAB}D4 |<|>0-----|\nA3 |------|\nG3 |------|\nD3 |------|\nA2 |------|\nD2 |------|\n`,
    );
    assert.equal(
      moment.note?.words,
      'D4 lies at string 1 open, string 2 fret 5, string 3 fret 7, string 4 fret 12 and string 5 fret 17',
    );
    const { document } = openAt(`${TAB}<|>`);
    const { tuning } = document.headerAt(0);
    const board = createFingerboard(tuning, undefined, 22);
    for (const { string, fret } of moment.note.places)
      assert.deepEqual(board.pitches(6 - string, fret), [62]);
  });

  it('says where a fret would be put, and what to do where it cannot be', () => {
    const system = (line: string): string => `${TAB}D4 ${line}\nA3 |---|---|\nG3 |---|---|\nD3 |---|---|\n`;
    assert.deepEqual(neckOf(system('|--<|>-|---|')).moment.writable, true);
    const atSign = neckOf(system('|---<|>|---|')).moment;
    assert.equal(atSign.writable, false);
    assert.match(atSign.writeWords, /beside the bar sign/);
    const outside = neckOf(`<|>${system('|---|---|')}`).moment;
    assert.equal(outside.writable, false);
    assert.match(outside.writeWords, /^Put the cursor on a column of a system/);
  });

  it('marks in DADGAD what a key signature of one sharp and its fifth say', () => {
    // G major over a D string: D E F# G A B C D, frets 0 2 4 5 7 9 10 12 (whole and half steps of the major scale).
    assert.equal(marked(neckOf('tuning: DADGAD\n<|>', { scale: 'G', frets: 12 }), 6), '0 2 4 5 7 9 10 12');
  });
});
