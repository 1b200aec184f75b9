import assert from 'node:assert/strict';
import { gripsFor } from '../../../../src/playing/hand/grips';
import { handOptions, playPassage, type HandAnswer } from '../../../../src/playing/hand/handSearch';
import { guitar, melody, OPENS, targetOf } from '../boards';
import { keyOf } from './humanShapes';

const standard = targetOf(guitar(OPENS.standard));
/** Eighth notes at 120 to the minute: the tempo leaves a quarter of a second for a move. */
const EIGHTHS = { secondsPerQuarter: 0.25 };

function places({ placements }: HandAnswer): string {
  return placements.map(({ string, fret }) => `${string}:${fret}`).join(' ');
}

function fingers(answer: HandAnswer): string {
  return answer.placements.map(({ id }) => answer.fingers.get(id)).join(' ');
}

function first(midis: readonly number[], opens: readonly number[], more: object = {}): HandAnswer {
  const [answer] = playPassage(melody(midis), targetOf(guitar(opens)), handOptions({ ...EIGHTHS, ...more }));
  assert.ok(answer);
  assert.deepEqual(answer.unplaced, []);
  return answer;
}

describe('scales as methods print them', () => {
  // check-values.md T2: nineteenth-century methods, from memory; T3 worked out by script.
  const cMajor = [48, 50, 52, 53, 55, 57, 59, 60];

  it('T2: C major in the first position of standard, fingers and position too', () => {
    const answer = first(cMajor, OPENS.standard);
    assert.equal(places(answer), '5:3 4:0 4:2 4:3 3:0 3:2 2:0 2:1');
    assert.equal(fingers(answer), '3 0 2 3 0 2 0 1');
    assert.deepEqual(new Set(answer.positions.values()), new Set([1]));
  });

  it('T3: the same notes in DADGAD', () => {
    assert.equal(places(first(cMajor, OPENS.dadgad)), '5:3 4:0 4:2 4:3 3:0 2:0 2:2 2:3');
  });

  const MAJOR = [0, 2, 4, 5, 7, 9, 11];
  const scale = (root: number, octaves: number): number[] => [
    ...Array.from({ length: octaves }, (_, o) => MAJOR.map((step) => root + 12 * o + step)).flat(),
    root + 12 * octaves,
  ];

  // First-position scales with open strings as methods print them: from memory.
  const rows: readonly (readonly [string, number, number, string])[] = [
    ['G', 43, 2, '6:3 5:0 5:2 5:3 4:0 4:2 4:4 3:0 3:2 2:0 2:1 2:3 1:0 1:2 1:3'],
    ['F', 41, 2, '6:1 6:3 5:0 5:1 5:3 4:0 4:2 4:3 3:0 3:2 3:3 2:1 2:3 1:0 1:1'],
    ['E', 40, 2, '6:0 6:2 6:4 5:0 5:2 5:4 4:1 4:2 4:4 3:1 3:2 2:0 2:2 2:4 1:0'],
    ['A', 45, 2, '5:0 5:2 5:4 4:0 4:2 4:4 3:1 3:2 2:0 2:2 2:3 1:0 1:2 1:4 1:5'],
    ['D', 50, 1, '4:0 4:2 4:4 3:0 3:2 2:0 2:2 2:3'],
  ];
  for (const [name, root, octaves, expected] of rows) {
    it(`${name} major with open strings, ${octaves === 1 ? 'one octave' : 'two octaves'} (from memory)`, () => {
      assert.equal(places(first(scale(root, octaves), OPENS.standard)), expected);
    });
  }

  it('the movable major scale over two octaves, closed, roots at frets 2 to 11 of string 6 (from memory)', () => {
    for (let fret = 2; fret <= 11; fret++) {
      const answer = first(scale(40 + fret, 2), OPENS.standard, { openStrings: false });
      const strings = answer.placements.map(({ string }) => string).join('');
      assert.equal(strings, '665554443332211', `root at fret ${fret}`);
      assert.equal(fingers(answer), '2 4 1 2 4 1 3 4 1 3 4 2 4 1 2', `root at fret ${fret}`);
      assert.deepEqual(new Set(answer.positions.values()), new Set([fret - 1]));
    }
  });
});

describe('shapes of worked examples come first in their own tunings (check-values.md T7 to T10)', () => {
  const openD = [38, 45, 50, 54, 57, 62];
  const rows: readonly (readonly [string, readonly number[], string])[] = [
    [
      'T7 standard',
      OPENS.standard,
      'x32010 x02220 320003 022100 xx0232 x02210 022000 xx0231 133211 x21202 320001 020100 x32310',
    ],
    ['T8 open G', OPENS.openG, '202012 202002 x22212 000003 020210'],
    ['T9 DADGAD', OPENS.dadgad, '000200 520020 222000 x02000 x02202'],
    ['T10 open D', openD, 'x20120 222122 x02102'],
  ];
  for (const [name, opens, shapes] of rows) {
    it(`${name}: ${shapes}`, () => {
      const target = targetOf(guitar(opens));
      for (const shape of shapes.split(' ')) {
        const frets = [...shape].map((sign) => (sign === 'x' ? -1 : Number(sign)));
        const midis = frets.flatMap((fret, index) => (fret < 0 ? [] : [(opens[index] ?? NaN) + fret]));
        const [best] = gripsFor(midis, target, handOptions());
        const ours = new Array<number>(opens.length).fill(-1);
        for (const { string, fret } of best?.placements ?? []) ours[opens.length - string] = fret;
        assert.equal(keyOf(ours), keyOf(frets));
      }
    });
  }
});

describe('what a grip says', () => {
  it('F as a barre: fingers as beginners are taught them (common practice, no source)', () => {
    const [grip] = gripsFor([41, 48, 53, 57, 60, 65], standard, handOptions());
    assert.deepEqual(
      grip?.placements.map(({ finger }) => finger),
      [1, 3, 4, 2, 1, 1],
    );
    assert.deepEqual(grip.barres, [{ finger: 1, fret: 1, from: 6, to: 1 }]);
  });
});
