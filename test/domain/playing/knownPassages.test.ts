import assert from 'node:assert/strict';
import { PLAIN_COSTS } from '../../../src/playing/costs';
import { costOfPlacement, placePassage, type Answer, type PassageNote } from '../../../src/playing/passage';
import { guitar, melody, note, OPENS, targetOf, type Board } from './boards';

/** C major in the first position of standard tuning, check-values.md T2 (nineteenth-century methods, from memory). */
const SCALE = [48, 50, 52, 53, 55, 57, 59, 60];

function places(answer: Answer): string {
  return answer.placements.map((place) => `${place.string}:${place.fret}`).join(' ');
}

describe('a scale in the first position', () => {
  const rows: readonly (readonly [source: string, opens: readonly number[], expected: string])[] = [
    ['T2 in standard, its own tuning', OPENS.standard, '5:3 4:0 4:2 4:3 3:0 3:2 2:0 2:1'],
    ['T3 in DADGAD, worked out by script', OPENS.dadgad, '5:3 4:0 4:2 4:3 3:0 2:0 2:2 2:3'],
    ['T4 in open G, worked out by script', OPENS.openG, '5:5 4:0 4:2 4:3 3:0 3:2 2:0 2:1'],
  ];
  for (const [source, opens, expected] of rows) {
    it(`${source} (check-values.md): ${expected}`, () => {
      const answer = placePassage(melody(SCALE), targetOf(guitar(opens)));
      assert.equal(places(answer), expected);
      assert.deepEqual(answer.unplaced, []);
    });
  }
});

describe('every cost term decides something, and a player can say why', () => {
  const standard = targetOf(guitar(OPENS.standard));

  it('height: without it a note alone goes anywhere on the neck, with it to the nut', () => {
    const alone = [note(0, 67, 0, { need: 'stopped', string: 1 })];
    assert.equal(placePassage(alone, standard).cost, costOfFret(3));
    assert.equal(placePassage(alone, standard, { ...PLAIN_COSTS, height: 0 }).cost, 0);
    // Open G: with height the last note goes to fret 1; without it the hand rests and takes fret 5 of the next string.
    const openG = targetOf(guitar(OPENS.openG));
    assert.match(places(placePassage(melody(SCALE), openG, { ...PLAIN_COSTS, height: 0 })), /3:5$/);
    assert.match(places(placePassage(melody(SCALE), openG)), /2:1$/);
  });

  it('travel: a lower place on the next string would call the hand away, so the note is taken where the hand is', () => {
    // G5 on string 1 fret 15; A4 between lies at fret 5 of string 1, or at 10 of string 2, under the hand.
    const high = [79, 69, 79].map((midi, at) => note(at, midi, at));
    assert.equal(places(placePassage(high, standard)), '1:15 2:10 1:15');
    assert.equal(places(placePassage(high, standard, { ...PLAIN_COSTS, travel: 0 })), '1:15 1:5 1:15');
  });

  it('stretch: frets 1 and 5 in one hand by the nut give way to the next string, where the hand need not open', () => {
    // Closed G3 Bb3 C4 E4 F#4: C4 at fret 1 lies 126 mm from the E at fret 5, at fret 5 of string 3 beside it.
    const closed = [55, 58, 60, 64, 66].map((midi, at) => note(at, midi, at, { need: 'stopped' }));
    assert.equal(places(placePassage(closed, standard)), '4:5 3:3 3:5 2:5 1:2');
    assert.equal(
      places(placePassage(closed, standard, { ...PLAIN_COSTS, stretch: 0 })),
      '4:5 3:3 2:1 2:5 1:2',
    );
    // A hand that opens to 130 mm without strain decides as if there were no term.
    assert.equal(
      places(placePassage(closed, standard, { ...PLAIN_COSTS, relaxed: 130 })),
      '4:5 3:3 2:1 2:5 1:2',
    );
  });
});

function costOfFret(fret: number): number {
  const x = Math.round(648 * (1 - 2 ** (-fret / 12)) * 1000);
  return Math.round(x * 0.5) / 1000;
}

describe('what a string can do', () => {
  it('hammer-on and slide stay on one string, also with a bass note between', () => {
    const notes: PassageNote[] = [
      note(1, 57, 0, { string: 3 }),
      note(2, 45, 0.5, { string: 5 }),
      note(3, 59, 1, { string: 3, joinedTo: 1 }),
    ];
    const answer = placePassage(notes, targetOf(guitar(OPENS.standard)));
    assert.equal(places(answer), '3:2 5:0 3:4');
    // A note between them that has no other string than theirs cannot take it.
    const crowded = [...notes.slice(0, 1), note(2, 40, 0.5, { string: 6 }), ...notes.slice(2)];
    const oneString: Board = { opens: [40], frets: 22, scaleLength: 648 };
    const left = placePassage(crowded, targetOf(oneString));
    assert.equal(left.unplaced.length, 1);
    // Either the bass or the hammer-on has to go; the hammer-on costs more of the hand.
    assert.equal(left.unplaced[0]?.id, 3);
    assert.equal(left.unplaced[0].reason, 'technique cannot be kept');
  });

  it('a chain of hammer-on, pull-off and slide keeps one string throughout', () => {
    const chain = [57, 59, 57, 60].map((midi, at) => note(at, midi, at, at > 0 ? { joinedTo: at - 1 } : {}));
    const answer = placePassage(chain, targetOf(guitar(OPENS.dadgad)));
    assert.deepEqual(new Set(answer.placements.map((place) => place.string)).size, 1);
    assert.equal(places(answer), '2:0 2:2 2:0 2:3');
  });

  it('a second note joined to one is joined to the first follower, never lost in silence', () => {
    const notes = [note(1, 57, 0), note(2, 59, 1, { joinedTo: 1 }), note(3, 60, 2, { joinedTo: 1 })];
    const answer = placePassage(notes, targetOf(guitar(OPENS.standard)));
    assert.equal(new Set(answer.placements.map((place) => place.string)).size, 1);
    assert.equal(answer.placements.length, 3);
  });

  it('a bend needs a stopped string and room for its target', () => {
    const target = targetOf(guitar(OPENS.standard));
    const bend = note(1, 59, 0, { need: 'stopped', reaches: [61] });
    assert.equal(places(placePassage([bend], target)), '3:4');
    const low = placePassage([note(1, 40, 0, { need: 'stopped', reaches: [42] })], target);
    assert.equal(low.unplaced[0]?.reason, 'technique cannot be kept');
    const high = placePassage([note(1, 86, 0, { need: 'stopped', reaches: [88] })], target);
    assert.equal(high.unplaced[0]?.reason, 'technique cannot be kept');
  });

  it('a muted stroke keeps its string, or takes a free one where that string is missing', () => {
    const five: Board = { opens: OPENS.openG.slice(1), frets: 22, scaleLength: 648 };
    const stroke = placePassage([note(1, undefined, 0, { string: 4 })], targetOf(five));
    assert.equal(places(stroke), '4:0');
    const beside = placePassage([note(1, undefined, 0, { string: 6 }), note(2, 43, 0)], targetOf(five));
    const [low, free] = beside.placements;
    assert.deepEqual(low, { id: 2, string: 5, fret: 0 });
    assert.notEqual(free?.string, 5);
  });

  it('under a slide bar all stopped notes of a moment lie at one fret, open strings free', () => {
    // Open D (D A D F# A D): A major is the straight bar at 7 (check-values.md T6).
    const openD = [38, 45, 50, 54, 57, 62];
    const bar = openD.map((midi, at) => note(at, midi + 7, 0, { string: 6 - at }));
    const answer = placePassage(bar, targetOf(guitar(openD), { slide: true }));
    assert.equal(places(answer), '6:7 5:7 4:7 3:7 2:7 1:7');
    const split = placePassage(
      [note(1, 39, 0), note(2, 47, 0, { need: 'stopped' })],
      targetOf({ ...guitar(openD), frets: 3 }, { slide: true }),
    );
    assert.equal(split.unplaced[0]?.reason, 'out of reach');
  });
});

describe('capos and short strings', () => {
  it('under a full capo frets count from it and nothing lies below it', () => {
    // T12: capo 4, string 6 fret 3 is MIDI 47 (check-values.md).
    const target = targetOf(guitar(OPENS.standard, { fret: 4, strings: undefined }));
    assert.equal(places(placePassage([note(1, 47, 0)], target)), '6:3');
    assert.equal(placePassage([note(1, 43, 0)], target).unplaced[0]?.reason, 'below the lowest string');
  });

  it('the banjo’s fifth string is written from the nut: A4 is fret 7 there (T13)', () => {
    const banjo: Board = { opens: OPENS.banjo, frets: 22, scaleLength: 670, firstFrets: [5, 0, 0, 0, 0] };
    const answer = placePassage(
      [note(1, 69, 0, { string: 5 }), note(2, 69, 0, { string: 1 })],
      targetOf(banjo),
    );
    assert.equal(places(answer), '5:7 1:7');
  });
});

describe('harmonics', () => {
  const target = targetOf(guitar(OPENS.standard));

  it('a natural harmonic is found at the lowest node that sounds it (T11 in standard tuning)', () => {
    // Twelfth fret of string 6 is E3, fifth fret of string 5 A4, fourth of string 3 a pure third over G5.
    const rows: readonly (readonly [number, string])[] = [
      [52, '6:12'],
      [45 + 24, '5:5'],
      [55 + 12 * Math.log2(5), '3:4'],
      [59 + 12 * Math.log2(3), '2:7'],
    ];
    for (const [midi, expected] of rows) {
      const [place] = placePassage([note(1, midi, 0, { need: 'natural-harmonic' })], target).placements;
      assert.equal(`${place?.string}:${place?.touched}`, expected);
      assert.equal(place?.fret, 0);
    }
  });

  it('a fifth partial is 14 cents low: no fret and no other partial stands in for it', () => {
    const even = placePassage([note(1, 83, 0, { need: 'natural-harmonic' })], target);
    // B5 itself is the fourth partial of string 2 (B3), two octaves up at the fifth fret.
    const [place] = even.placements;
    assert.deepEqual(place, { id: 1, string: 2, fret: 0, touched: 5 });
    const none = placePassage([note(1, 82, 0, { need: 'natural-harmonic' })], target);
    assert.equal(none.unplaced[0]?.reason, 'no such harmonic');
    const fretted = placePassage([note(1, 55 + 12 * Math.log2(5), 0)], target);
    assert.equal(fretted.placements.length, 0);
  });

  it('an artificial harmonic is stopped and touched on one string', () => {
    // E4 stopped at fret 5 of string 2, touched twelve frets above: E5.
    const [place] = placePassage([note(1, 76, 0, { need: 'artificial-harmonic' })], target).placements;
    assert.ok(place?.touched !== undefined && place.fret > 0);
    const open = OPENS.standard[6 - place.string] ?? NaN;
    const partials = new Map([
      [12, 2],
      [7, 3],
      [19, 3],
      [5, 4],
      [24, 4],
    ]);
    const partial = partials.get(place.touched - place.fret);
    assert.ok(partial !== undefined, `touched ${place.touched} over ${place.fret}`);
    assert.ok(Math.abs(open + place.fret + 12 * Math.log2(partial) - 76) < 0.02);
  });
});

describe('notes without a place', () => {
  const standard = targetOf(guitar(OPENS.standard));

  it('say whether they are below, past the neck, crowded or out of reach', () => {
    const rows: readonly (readonly [string, PassageNote[], string, string])[] = [
      [
        'below',
        [note(1, 38, 0)],
        'below the lowest string',
        'It lies 2 half steps below the lowest open string.',
      ],
      [
        'past',
        [note(1, 90, 0)],
        'past the last fret',
        'It lies 4 half steps past the last fret of string 1, the nearest.',
      ],
      [
        'crowded',
        [note(1, 40, 0), note(2, 43, 0)],
        'two notes need one string',
        'It can sound on string 6 only, and the notes kept beside it leave no string.',
      ],
      [
        'stretch',
        [note(1, 41, 0), note(2, 86, 0)],
        'out of reach',
        'Together with the other notes of the moment it takes a stretch of more than 130 mm.',
      ],
    ];
    for (const [what, notes, reason, detail] of rows) {
      const answer = placePassage(notes, standard);
      assert.equal(answer.unplaced.length, 1, what);
      assert.equal(answer.unplaced[0]?.reason, reason, what);
      assert.equal(answer.unplaced[0].detail, detail, what);
    }
  });

  it('leave an inner doubled note out before an inner single one, and both before bass and top', () => {
    // Four strings a fifth apart cannot take five notes: C G E C' G' loses the C or G inside, never C below or G above.
    const four = targetOf({ opens: [36, 43, 50, 57], frets: 22, scaleLength: 648 }, { reach: 400 });
    const answer = placePassage(
      [36, 43, 52, 60, 67].map((midi, at) => note(at, midi, 0)),
      four,
    );
    assert.equal(answer.unplaced.length, 1);
    assert.ok([1, 3].includes(answer.unplaced[0]?.id ?? -1));
  });

  it('a follower whose first note has no place goes with it', () => {
    const answer = placePassage([note(1, 38, 0), note(2, 40, 1, { joinedTo: 1 })], standard);
    assert.deepEqual(
      answer.unplaced.map((one) => one.reason),
      ['below the lowest string', 'technique cannot be kept'],
    );
    // The same when the first note has a place of its own that another note keeps: two pairs, one string for both.
    const crowded = placePassage(
      [note(1, 40, 0), note(2, 41, 0), note(3, 42, 1, { joinedTo: 1 }), note(4, 43, 1, { joinedTo: 2 })],
      standard,
    );
    assert.equal(crowded.unplaced.length, 2);
    const told = crowded.unplaced.map(({ id, reason, detail }) => [id, reason, detail]);
    assert.deepEqual(told[1], [4, 'technique cannot be kept', 'The note that it is joined to has no place.']);
  });

  it('an empty passage and a tuning without strings have answers', () => {
    assert.deepEqual(placePassage([], standard).placements, []);
    const none = placePassage([note(1, 60, 0)], targetOf(guitar([])));
    assert.equal(none.unplaced.length, 1);
  });
});

describe('the player’s own placement', () => {
  it('has its cost under the same table, or none when it breaks a rule', () => {
    const target = targetOf(guitar(OPENS.standard));
    const notes = melody(SCALE);
    const best = placePassage(notes, target);
    assert.equal(costOfPlacement(notes, best.placements, target), best.cost);
    const first = { id: 0, string: 6, fret: 8 };
    const other = costOfPlacement(notes, [first, ...best.placements.slice(1)], target);
    assert.ok(other !== undefined && other > best.cost);
    assert.equal(costOfPlacement(notes, best.placements.slice(1), target), undefined);
  });
});
