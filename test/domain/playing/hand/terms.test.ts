import assert from 'node:assert/strict';
import { HAND_CONSTANTS, withValues, type HandConstantName } from '../../../../src/playing/hand/constants';
import { gripsFor } from '../../../../src/playing/hand/grips';
import { handOptions, playPassage, type HandOptions } from '../../../../src/playing/hand/handSearch';
import { guitar, note, OPENS, targetOf } from '../boards';
import { HUMANS, pitchesOf } from './humanShapes';

// For every cost term a case whose answer changes when the term is zero, with a player's reason. Shapes and their
// fingers are human ones, from @tombatossals/chords-db 0.5.1 (MIT); passages are our own.

type Row = readonly [
  constant: HandConstantName,
  label: string,
  shape: string,
  without: string,
  reason: string,
];

const GRIPS: readonly Row[] = [
  [
    'stretch',
    'guitar C sus2 #1',
    'x 3 0 0 1 3 / -30014',
    'x 3 0 0 1 3 / -20013',
    'two frets up by the nut is far for finger 2',
  ],
  [
    'relaxed',
    'guitar C sus4 #1',
    'x 3 3 0 1 1 / -34011',
    'x 3 3 0 1 1 / -23011',
    'fingers rest a little apart, so that much is no stretch',
  ],
  [
    'beyond',
    'ukulele A major #4',
    '9 9 9 12 / 1114',
    '9 9 9 12 / 1113',
    'three frets up is where finger 4 lies',
  ],
  [
    'skipped',
    'guitar C major #1',
    'x 3 2 0 1 0 / -32010',
    'x 3 2 0 1 0 / -42010',
    'finger 3 lies at the third fret, finger 4 would be drawn in',
  ],
  [
    'order',
    'guitar C 7b5 #3',
    '8 x 8 9 7 0 / 2-3410',
    '8 x 8 9 7 0 / 3-2410',
    'at one fret fingers follow the strings, not crossed',
  ],
  [
    'finger',
    'ukulele A 7 #4',
    '9 9 9 10 / 1112',
    '9 9 9 10 / 1234',
    'two fingers are set down sooner than four',
  ],
  [
    'finger3',
    'guitar C m11 #2',
    'x 3 3 3 4 3 / -11121',
    'x 3 3 3 4 3 / -11132',
    'finger 3 is slower than an index that bars anyway',
  ],
  ['finger4', 'ukulele A 69 #3', '9 11 9 9 / 1311', '9 11 9 9 / 1412', 'the little finger is the weakest'],
  [
    'noIndex',
    'guitar E m11 #1',
    '0 0 0 0 0 2 / 000001',
    '0 0 0 0 0 2 / 000002',
    'one note is taken with the index',
  ],
  [
    'barre1',
    'guitar C dim7 #1',
    'x x 1 2 1 2 / --1324',
    'x x 1 2 1 2 / --1213',
    'where a finger is free for each note, none has to bar',
  ],
  [
    'barre2',
    'guitar C major #2',
    '3 3 5 5 5 3 / 112341',
    '3 3 5 5 5 3 / 112231',
    'the middle finger does not bar',
  ],
  [
    'barre3',
    'guitar C major #2',
    '3 3 5 5 5 3 / 112341',
    '3 3 5 5 5 3 / 113341',
    'three fingers press surer than finger 3 flat',
  ],
  [
    'barre4',
    'guitar C major #2',
    '3 3 5 5 5 3 / 112341',
    '3 3 5 5 5 3 / 114442',
    'the little finger flat has no force',
  ],
  [
    'barreString',
    'guitar Eb major #1',
    'x x 1 3 4 3 / --1243',
    'x 6 8 8 8 x / -1333-',
    'each string more under a flat finger asks for force',
  ],
  [
    'barreOver',
    'guitar C major #2',
    '3 3 5 5 5 3 / 112341',
    '3 3 5 5 5 3 / 113331',
    'a flat finger must bend back to let the next string sound lower',
  ],
  [
    'barreMuted',
    'guitar A minor #2',
    'x 0 2 5 5 5 / -01444',
    '5 7 x 5 5 5 / 13-111',
    'a string under a barre will not keep silent',
  ],
  [
    'muted',
    'guitar C maj7 #4',
    'x x 10 12 12 12 / --1333',
    'x 15 x 12 12 12 / -4-111',
    'a strum goes across every string between',
  ],
  [
    'apart',
    'guitar C 11 #3',
    '8 7 0 0 6 6 / 320011',
    '8 7 0 0 6 6 / 430012',
    'fingers 1 and 2 do not lie four strings apart',
  ],
  [
    'position',
    'guitar C major #3',
    'x x 5 5 5 8 / --1114',
    '15 15 14 17 x x / 2314--',
    'low on the neck is where people look for chords',
  ],
  [
    'openHigh',
    'guitar C major #3',
    'x x 5 5 5 8 / --1114',
    'x x 10 0 13 0 / --1040',
    'open strings jar under a hand up the neck',
  ],
];

function bestGrip(label: string, options: HandOptions): string {
  for (const humans of HUMANS) {
    const shape = humans.shapes.find((one) => `${humans.name} ${one.label}` === label);
    if (!shape) continue;
    const strings = humans.board.opens.length;
    const [grip] = gripsFor(pitchesOf(shape, humans.board), humans.target, options);
    const frets = new Array<string>(strings).fill('x');
    const fingers = new Array<string>(strings).fill('-');
    for (const place of grip?.placements ?? []) {
      frets[strings - place.string] = String(place.fret);
      fingers[strings - place.string] = String(place.finger);
    }
    return `${frets.join(' ')} / ${fingers.join('')}`;
  }
  throw new Error(`chords-db has no ${label}.`);
}

describe('every term of a grip decides something, and a player can say why', () => {
  for (const [constant, label, shape, without, reason] of GRIPS) {
    it(`${constant}: ${label} is ${shape} as people finger it, because ${reason}`, () => {
      assert.equal(bestGrip(label, handOptions()), shape);
      assert.equal(bestGrip(label, handOptions({ constants: withValues({ [constant]: 0 }) })), without);
    });
  }
});

/** MIDI numbers with onset, and end where it is not half a quarter later. */
type Notes = readonly (readonly [midi: number, onset: number, end?: number])[];
type Passage = readonly [
  constant: HandConstantName,
  notes: Notes,
  places: string,
  without: string,
  reason: string,
  more?: Partial<HandOptions>,
];

const closed = { openStrings: false };
const inEighths = (...midis: number[]): Notes => midis.map((midi, at) => [midi, at / 2]);
const C_CHORD: Notes = [48, 52, 55, 60, 64].map((midi) => [midi, 0.5] as const);

const PASSAGES: readonly Passage[] = [
  [
    'chordShare',
    [[71, 0], ...C_CHORD],
    '1:7 5:3 4:2 3:0 2:1 1:0',
    '1:7 6:8 5:7 4:5 3:5 1:0',
    'a chord goes to its easy shape although the hand stood higher',
  ],
  [
    'lineShare',
    [
      [71, 0],
      [67, 0.5],
      [45, 0, 1],
    ],
    '5:0 1:7 1:3',
    '6:5 1:7 2:8',
    'over a bass that is held the hand does not open wider than it must',
  ],
  ['linePosition', inEighths(62, 65), '2:3 1:1', '3:7 2:6', 'when all else is equal a line lies low', closed],
  ['lineFinger3', inEighths(71, 74), '1:7 1:10', '2:12 1:10', 'finger 3 is slower than the index', closed],
  ['lineFinger4', inEighths(57, 60), '3:2 2:1', '3:2 3:5', 'the little finger is the weakest'],
  [
    'lineOpenHigh',
    inEighths(55, 60),
    '3:0 2:1',
    '3:0 3:5',
    'an open string stands out when the hand is up the neck',
  ],
  [
    'travel',
    inEighths(69, 65, 71, 76),
    '3:14 4:15 3:16 2:17',
    '1:5 2:6 1:7 1:12',
    'a line stays under the hand',
    closed,
  ],
  ['shift', inEighths(67, 62, 59), '2:8 3:7 4:9', '1:3 2:3 3:4', 'a shift breaks the line', closed],
  [
    'freeShift',
    inEighths(60, 65, 64, 69),
    '3:5 2:6 1:0 1:5',
    '2:1 1:1 1:0 1:5',
    'even under an open string a hand rather stays',
  ],
  ['setDown', inEighths(53, 55), '4:3 3:0', '4:3 4:5', 'an open string needs no finger'],
  [
    'moved',
    inEighths(71, 67),
    '1:7 2:8',
    '2:12 3:12',
    'another finger is ready, the same one would have to jump',
  ],
  ['crossing', inEighths(50, 48), '5:5 5:3', '4:0 5:3', 'one string is easier to stay on than to leave'],
  [
    'reach',
    inEighths(71, 67),
    '1:7 2:8',
    '1:7 1:3',
    'notes that lie in one position need no reaching',
    closed,
  ],
  [
    'cut',
    [
      [64, 0],
      [69, 0.5],
      [47, 0, 1],
    ],
    '6:7 3:9 2:10',
    '5:2 1:0 1:5',
    'a bass that should ring is held under the tune',
  ],
];

describe('every term of a line and of a move decides something, and a player can say why', () => {
  const standard = targetOf(guitar(OPENS.standard));
  const play = (notes: Notes, more: Partial<HandOptions>): string => {
    const passage = notes.map(([midi, onset, end], id) => note(id, midi, onset, { end: end ?? onset + 0.5 }));
    const [answer] = playPassage(passage, standard, handOptions(more));
    return answer?.placements.map(({ string, fret }) => `${string}:${fret}`).join(' ') ?? '';
  };

  for (const [constant, notes, places, without, reason, more = {}] of PASSAGES) {
    it(`${constant}: ${places}, because ${reason}; without it ${without}`, () => {
      assert.equal(play(notes, more), places);
      assert.equal(play(notes, { ...more, constants: withValues({ [constant]: 0 }) }), without);
    });
  }

  it('shortest: notes rolled faster than a hand moves stay on strings of their own, whatever the speed', () => {
    const roll = inEighths(50, 55, 61, 67, 74, 79);
    const fast = { ...closed, secondsPerQuarter: 0.004 };
    assert.equal(play(roll, fast), '6:10 5:10 4:11 3:12 1:10 1:15');
    const without = { ...fast, constants: withValues({ shortest: 0 }) };
    assert.equal(play(roll, without), '6:10 6:15 4:11 3:12 1:10 1:15');
  });

  it('no cost term is left out of these two lists', () => {
    const tested = new Set<string>([...GRIPS, ...PASSAGES].map(([constant]) => constant).concat('shortest'));
    const costs = Object.keys(HAND_CONSTANTS).filter((name) => !name.startsWith('limit'));
    assert.deepEqual(
      costs.filter((name) => !tested.has(name)),
      [],
    );
  });
});

describe('every limit decides something', () => {
  const standard = targetOf(guitar(OPENS.standard));
  // Two notes that only the outer strings can take, so many frets apart, by the least finger pair that may hold them.
  const rows: readonly (readonly [HandConstantName, string, string])[] = [
    ['limit12', '1 2', '67 mm between frets 1 and 3'],
    ['limit13', '1 3', '97 mm between frets 1 and 4'],
    ['limit14', '1 4', '126 mm between frets 1 and 5'],
    ['limit23', '2 3', '63 mm between frets 2 and 4'],
    ['limit24', '2 4', '92 mm between frets 2 and 5'],
    ['limit34', '3 4', '60 mm between frets 3 and 5'],
  ];
  for (const [limit, pair, what] of rows) {
    it(`${limit}: fingers ${pair} may hold ${what}, not with the limit a half`, () => {
      const [low = 0, high = 0] = (/frets (\d+) and (\d+)/.exec(what) ?? []).slice(1).map(Number);
      const half = withValues({ [limit]: HAND_CONSTANTS[limit].value / 2 });
      const midis = [40 + low, 64 + high];
      const pairs = (options: HandOptions): boolean => fingerPairs(midis, pair, options);
      assert.ok(pairs(handOptions()));
      assert.ok(!pairs(handOptions({ constants: half })));
    });
  }

  /** Whether two notes on the outer strings are held with two given fingers when these are the cheapest of all. */
  function fingerPairs(midis: readonly number[], pair: string, options: HandOptions): boolean {
    const names = ['limit12', 'limit13', 'limit14', 'limit23', 'limit24', 'limit34'] as const;
    // All other pairs are forbidden, so that this one alone is asked.
    const only = names.filter((name) => name !== `limit${pair.replace(' ', '')}`);
    const constants = withValues(Object.fromEntries(only.map((name) => [name, -1])), options.constants);
    const [grip] = gripsFor(midis, standard, { ...options, constants });
    return grip?.placements.map(({ finger }) => finger).join(' ') === pair;
  }
});
