import assert from 'node:assert/strict';
import type { ShapesAnswer } from '../../../../src/service/shapes/shapesAnswer';
import type { ServiceError } from '../../../../src/service/serviceApi';
import { service, settings } from '../cursor';

function asked(fields: string, chord: string, more: object = {}): ShapesAnswer | ServiceError {
  const document = service.open(`${fields}\n`, settings);
  const place = { line: document.lineCount - 1, character: 0 };
  return service.shapes(document, place, { chord, ...more }, settings);
}

function found(fields: string, chord: string, more: object = {}): ShapesAnswer {
  const answer = asked(fields, chord, more);
  if ('error' in answer) throw new Error(answer.error);
  return answer;
}

function refused(fields: string, chord: string, more: object = {}): string {
  const answer = asked(fields, chord, more);
  return 'error' in answer ? answer.error : 'no error';
}

describe('shapes: what is told of each', () => {
  it('frets, fingers, notes, name, words and a tab to copy', () => {
    const { shapes, ...whole } = found('', 'CM7');
    assert.deepEqual(whole, {
      chord: 'Cmaj7',
      soundsAs: null,
      tones: ['C', 'E', 'G', 'B'],
      tuning: 'standard (E2 A2 D3 G3 B3 E4)',
      capo: null,
      labels: ['E', 'A', 'D', 'G', 'B', 'E'],
      remarks: [],
    });
    assert.ok(shapes.length > 6 && shapes.length <= 12);
    const [first] = shapes;
    assert.ok(first);
    const { svg, alt, cost, otherNames, ...told } = first;
    assert.deepEqual(told, {
      frets: [null, 3, 2, 0, 0, 0],
      text: 'x 3 2 0 0 0',
      fingers: [null, 2, 1, 0, 0, 0],
      barres: [],
      bar: null,
      name: 'Cmaj7',
      notes: [null, 'C3', 'E3', 'G3', 'B3', 'E4'],
      tones: ['C', 'E', 'G', 'B'],
      kind: 'full',
      leftOut: '',
      openStrings: [3, 2, 1],
      innerMuted: [],
      position: 2,
      millimetres: told.millimetres,
      rootInBass: true,
      bass: 'C',
      short: 'full, strings 1, 2 and 3 open, position 2',
      words:
        'Index at fret 2 on string 4; middle at fret 3 on string 5. Open: strings 1, 2 and 3. Not played: string 6. Every tone of the chord sounds.',
      tab: [
        'chords |CM7',
        'E      |0---|',
        'B      |0---|',
        'G      |0---|',
        'D      |2---|',
        'A      |3---|',
        'E      |----|',
      ].join('\n'),
    });
    assert.ok(cost > 0 && otherNames.includes('Em/C'));
    assert.match(svg, /^<svg [^>]*><title>/);
    assert.match(alt, /Cmaj7: x 3 2 0 0 0/);
  });

  it('a tab that reads back to the notes of the shape, for every one of them', () => {
    for (const [fields, chord] of [
      ['tuning: DADGAD', 'Em7'],
      ['instrument: ukulele', 'G7'],
      ['instrument: banjo', 'C'],
      ['instrument: 12-string guitar', 'Am'],
      ['capo: 2 on 5 4 3', 'E'],
      ['capo: 3', 'G/B'],
      ['instrument: bass', 'Gm'],
    ] as const) {
      for (const { tab, notes, frets } of found(fields, chord).shapes) {
        const document = service.open(`${fields}\n\n${tab}\n`, settings);
        assert.equal(
          service.diagnostics(document, settings).filter(({ severity }) => severity === 'error').length,
          0,
        );
        const read = service.notes(document).filter(({ midi }) => midi !== null);
        const count = notes.filter((note) => note !== null).flatMap((note) => note.split('/')).length;
        assert.equal(read.length, count, tab);
        for (const { string, fret } of read) assert.equal(fret, frets[frets.length - string]);
        assert.ok(read.every(({ onset }) => onset === 0));
      }
    }
  });

  it('reduced shapes say what they leave out, and that all of them do', () => {
    const { shapes, remarks } = found('instrument: ukulele', 'Cmaj9');
    assert.ok(shapes.every(({ kind, leftOut }) => kind === 'reduced' && leftOut === 'the fifth, G'));
    assert.match(shapes[0]?.words ?? '', /Reduced: it leaves out the fifth, G\./);
    assert.deepEqual(remarks, [
      'No shape within reach has every tone of Cmaj9; each of these says what it leaves out.',
    ]);
  });

  it('a string that must be kept silent between others is told', () => {
    const one = found('', 'Gm6', { limit: 60 }).shapes.find(({ innerMuted }) => innerMuted.length === 1);
    assert.match(one?.words ?? '', /String \d must be kept silent between the others\./);
    assert.match(one?.tab ?? '', /\|x---\|/);
  });

  it('under a full capo names are as played, and what it sounds as is said', () => {
    const { soundsAs, remarks, shapes, capo } = found('capo: 3', 'G');
    assert.equal(soundsAs, 'Bb');
    assert.equal(capo, 'capo at fret 3');
    assert.equal(shapes[0]?.text, '3 2 0 0 0 3');
    assert.equal(shapes[0].name, 'G');
    assert.deepEqual(remarks, ['Named as played: with the capo at fret 3 the shapes of G sound as Bb.']);
  });

  it('with a slide the bar is told', () => {
    const [first] = found('tuning: open D\nfretting: slide', 'A').shapes;
    assert.deepEqual(first?.bar, { fret: 7, from: 6, to: 1 });
    assert.match(first.words, /^The bar lies at fret 7 over strings 1–6\./);
  });

  it('where there is none: what is missing, and what comes nearest', () => {
    const { shapes, remarks } = found('instrument: lap steel', 'Dm7b5');
    assert.deepEqual(shapes, []);
    assert.equal(remarks[0], 'No straight bar up to fret 15 gives Dm7b5.');
    assert.match(remarks[1] ?? '', /^Nearest: .*which has no /);
    const few = found('instrument: bass', 'C7b9#11');
    assert.match(few.remarks.join(' '), /needs 5 tones at once, and there are 4 strings\./);
  });

  it('the bass behind a slash is let go before a tone is', () => {
    const { remarks } = found('tuning: open D\nfretting: slide', 'D/C', { highestFret: 2 });
    assert.match(
      remarks[1] ?? '',
      /^Nearest: 0 0 0 0 0 0, without C as the lowest note; ask for the chord without \/C\.$/,
    );
  });
});

describe('shapes: what cannot be answered', () => {
  it('one sentence that says what to change', () => {
    assert.equal(refused('', 'H7'), 'H is B here: a chord name begins with a capital A–G. Did you mean B7?');
    assert.match(refused('', 'Cfoo'), /cannot be read, from character 2 on/);
    assert.match(refused('', ''), /No chord is given: write one/);
    assert.match(refused('', 'N.C.'), /asks for silence, so it has no shape/);
    assert.match(refused('', 'C', { limit: 0 }), /ask for 1 to 200/);
    assert.match(refused('', 'C', { highestFret: 99 }), /from 0 to 36/);
  });
});
