import assert from 'node:assert/strict';
import { handOptions, playPassage, type HandOptions } from '../../../../src/playing/hand/handSearch';
import { heldEnds } from '../../../../src/playing/hand/heldEnds';
import type { PassageNote } from '../../../../src/playing/passage';
import { chord, guitar, melody, note, OPENS, targetOf } from '../boards';

const standard = targetOf(guitar(OPENS.standard));

function play(notes: readonly PassageNote[], more: Partial<HandOptions> = {}, target = standard) {
  const [answer] = playPassage(notes, target, handOptions(more));
  assert.ok(answer);
  return answer;
}

function places({ placements }: ReturnType<typeof play>): string {
  return placements.map(({ string, fret }) => `${string}:${fret}`).join(' ');
}

describe('what a player wishes', () => {
  it('given strings, closed, a highest fret: kept, or told in a sentence', () => {
    assert.equal(places(play(melody([64, 67]), { strings: [2] })), '2:5 2:8');
    assert.equal(places(play(melody([64]), { openStrings: false })), '2:5');
    const none = play(melody([40, 86]), { openStrings: false, caps: { highestFret: 12 } });
    assert.deepEqual(
      none.unplaced.map(({ detail }) => detail),
      [
        'Only an open string sounds it, and open strings are not wanted.',
        'It lies above fret 12 on every string that is allowed.',
      ],
    );
    assert.match(play(melody([40]), { strings: [1] }).unplaced[0]?.detail ?? '', /strings asked for \(1\)/);
  });

  it('few fingers: what they cannot hold is left out, bass and top kept', () => {
    // G 320003 takes three fingers; with two, an inner doubled note goes first, never the bass or the top.
    const g = chord([43, 47, 50, 55, 59, 67]);
    const answer = play(g, { caps: { fingers: 2 } });
    assert.equal(answer.unplaced.length, 1);
    const [out] = answer.unplaced;
    assert.ok(out && out.id > 0 && out.id < 5);
    assert.equal(out.reason, 'out of reach');
    assert.match(out.detail, /^Two fingers cannot hold it/);
  });

  it('lower on the neck, more open strings: each wish is met better than without it', () => {
    const tune = melody([64, 69, 72, 71, 69, 64, 67, 76, 74, 72]);
    const frets = (answer: ReturnType<typeof play>): number =>
      answer.placements.reduce((sum, { fret }) => sum + fret, 0);
    assert.ok(frets(play(tune, { weights: { lowOnNeck: 1 } })) <= frets(play(tune)));
    const open = play(tune, { weights: { moreOpen: 5 } }).measures.openStrings;
    assert.ok(open > play(tune, { openStrings: false }).measures.openStrings);
    assert.ok(open >= play(tune).measures.openStrings);
    // E4, and it alone, is an open string of standard: every one of them is.
    assert.equal(open, 2);
  });
});

describe('what a fingering is told by', () => {
  it('measures: highest fret, stretch, travel, open strings, notes let go, the hardest moment', () => {
    // Frets 1 and 4 on strings 6 and 1 together, then fret 12: x(4) − x(1) = 97.3 mm, x(12) − x(1) = 287.6 mm at 648 mm.
    const notes = [note(1, 41, 0, { end: 2 }), note(2, 68, 0), note(3, 83, 1, { need: 'stopped' })];
    const { measures } = play(notes, { strings: [6, 1], secondsPerQuarter: 0.25 });
    assert.equal(measures.highestFret, 19);
    assert.ok(Math.abs((measures.widestStretch?.millimetres ?? 0) - 97.3) < 0.05);
    assert.equal(measures.longestTravel?.id, 3);
    assert.equal(measures.cutNotes, 1);
    assert.equal(measures.openStrings, 0);
    assert.equal(measures.hardest?.id, 3);
    assert.match(measures.hardest.why, /^a shift of \d+ mm in 0.25 s$/);
  });

  it('a natural harmonic needs no finger, a muted stroke keeps its string, a slide bar is one fret', () => {
    const harmonic = play([note(1, 52, 0, { need: 'natural-harmonic' })]);
    assert.deepEqual(harmonic.placements, [{ id: 1, string: 6, fret: 0, touched: 12 }]);
    assert.equal(harmonic.fingers.get(1), 0);
    assert.equal(places(play([note(1, undefined, 0, { string: 4 })])), '4:0');
    const openD = [38, 45, 50, 54, 57, 62];
    const slide = targetOf(guitar(openD), { slide: true });
    assert.equal(places(play(chord(openD.map((midi) => midi + 7)), {}, slide)), '6:7 5:7 4:7 3:7 2:7 1:7');
  });

  it('a bass that should ring is held by one finger while the tune goes on above it', () => {
    const notes = [
      note(0, 48, 0, { end: 2 }),
      note(1, 64, 0, { end: 0.5 }),
      note(2, 67, 0.5, { end: 1 }),
      note(3, 65, 1, { end: 1.5 }),
    ];
    assert.equal(play(notes).measures.cutNotes, 0);
    const bass = play(notes).placements.find(({ id }) => id === 0);
    // No other note of the tune is on its string meanwhile.
    assert.ok(play(notes).placements.every(({ id, string }) => id === 0 || string !== bass?.string));
  });
});

describe('what tab means to be held', () => {
  it('a scale is let go note by note; a bass under a tune is held to the next bass; a strum is not', () => {
    const rings = (midi: number, onset: number, id: number): PassageNote =>
      note(id, midi, onset, { end: 100 });
    const ends = (notes: readonly PassageNote[]): number[] => heldEnds(notes).map(({ end }) => end);
    assert.deepEqual(ends([rings(48, 0, 0), rings(50, 1, 1), rings(52, 2, 2)]), [1, 2, 100]);
    // C under E G F, then G under D: the bass is held for three notes of the tune.
    const voices = [
      rings(48, 0, 0),
      rings(64, 0, 1),
      rings(67, 1, 2),
      rings(65, 2, 3),
      rings(43, 3, 4),
      rings(62, 3, 5),
    ];
    assert.deepEqual(ends(voices), [3, 1, 2, 3, 100, 100]);
    const strum = [48, 52, 55, 60].map((midi, id) => rings(midi, 0, id));
    assert.deepEqual(ends([...strum, rings(64, 1, 4)]), [1, 1, 1, 1, 100]);
  });

  it('T2 stays as methods print it although every note of the tab rings on', () => {
    const scale = [48, 50, 52, 53, 55, 57, 59, 60].map((midi, id) => note(id, midi, id / 2, { end: 4 }));
    assert.equal(places(play(heldEnds(scale))), '5:3 4:0 4:2 4:3 3:0 3:2 2:0 2:1');
  });
});
