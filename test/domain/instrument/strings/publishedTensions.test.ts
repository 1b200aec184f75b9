import assert from 'node:assert/strict';
import type { Construction } from '../../../../src/instrument/strings/constructions';
import { leastStrength, steelStress } from '../../../../src/instrument/strings/steelWire';
import { NEWTONS_PER_POUND, soundingLength, tensionOf } from '../../../../src/instrument/strings/tension';
import { sizesOf, unitWeight } from '../../../../src/instrument/strings/unitWeight';
import { frequencyOf } from '../../../../src/music/frequency';

const NICKEL = 'nickel-plated wound';
const BRONZE = 'phosphor bronze wound';
const inches = (size: number): number => (size / 1000) * 25.4;

/** Pounds of force at 25.5 in, A4 = 440 Hz. */
function pounds(construction: Construction, size: number, midi: number): number {
  const weight = unitWeight(construction, inches(size));
  assert.ok(weight !== undefined, `${construction} ${size}`);
  return tensionOf(weight, 25.5 * 25.4, frequencyOf(midi)) / NEWTONS_PER_POUND;
}

const near = (value: number, expected: number, off: number, what: string): void =>
  assert.ok(Math.abs(value - expected) <= off + 1e-9, `${what}: ${value}, not ${expected}`);

/** Published unit weights, lb/in × 10⁻⁵: strings-and-frets.md §2.4. */
const PUBLISHED: readonly (readonly [Construction, readonly (readonly [number, number])[]])[] = [
  [
    'plain steel',
    [
      [8, 1.418],
      [9, 1.794],
      [10, 2.215],
      [11, 2.68],
      [12, 3.19],
      [13, 3.744],
      [14, 4.342],
      [16, 5.671],
      [17, 6.402],
      [18, 7.177],
      [20, 8.861],
      [24, 12.76],
    ],
  ],
  [
    NICKEL,
    [
      [24, 10.857],
      [26, 12.671],
      [32, 19.347],
      [36, 23.964],
      [42, 32.279], // a public transcription gives 33.789, which two others and the tensions refute
      [46, 38.216],
      [52, 48.109],
      [56, 57.598],
    ],
  ],
  [
    BRONZE,
    [
      [24, 11.682],
      [32, 21.018],
      [42, 36.722],
      [53, 56.962],
      [56, 63.477],
    ],
  ],
  ['plain nylon', [[28, 2.216]]],
];

describe('published unit weights', () => {
  for (const [construction, rows] of PUBLISHED)
    for (const [size, expected] of rows)
      it(`${construction} ${size}: ${expected}e-5 lb/in`, () => {
        const weight = unitWeight(construction, inches(size));
        assert.ok(weight !== undefined);
        // 1 lb/in = 17.857967 kg/m; rows have four or five figures.
        near(weight / 17.857967 / 1e-5 / expected, 1, 6e-4, construction);
      });

  /** The ranges of effective densities, kg/m³, published for each construction: the same section. */
  const DENSITIES: readonly (readonly [Construction, number, number])[] = [
    [NICKEL, 6270, 6780],
    [BRONZE, 6970, 7340],
    ['bass round wound', 5500, 7050],
    ['silvered copper on nylon', 3960, 6700],
  ];
  for (const [construction, least, most] of DENSITIES)
    it(`${construction} keeps its published densities between the sizes, and ends with them`, () => {
      const [first, last] = sizesOf(construction);
      for (let size = first; size <= last; size += 0.25) {
        const weight = unitWeight(construction, inches(size)) ?? NaN;
        const density = weight / ((Math.PI / 4) * (inches(size) / 1000) ** 2);
        assert.ok(density >= least - 5 && density <= most + 5, `${size}: ${density}`);
      }
      assert.equal(unitWeight(construction, inches(first - 0.1)), undefined);
      assert.equal(unitWeight(construction, inches(last + 0.1)), undefined);
    });
});

/** strings-and-frets.md §2.5: published unit weights at 25.5 in in standard tuning, pounds, strings 1 to 6. */
const SETS: readonly {
  readonly name: string;
  readonly wound: Construction;
  readonly sizes: readonly number[];
  readonly plain: number;
  readonly pounds: readonly number[];
  readonly total: number;
}[] = [
  {
    name: '.009–.042',
    wound: NICKEL,
    sizes: [9, 11, 16, 24, 32, 42],
    plain: 3,
    pounds: [13.1, 11.0, 14.7, 15.8, 15.8, 14.8],
    total: 85.1,
  },
  {
    name: '.010–.046',
    wound: NICKEL,
    sizes: [10, 13, 17, 26, 36, 46],
    plain: 3,
    pounds: [16.2, 15.4, 16.6, 18.4, 19.5, 17.5],
    total: 103.5,
  },
  {
    name: '.011–.049',
    wound: NICKEL,
    sizes: [11, 14, 18, 28, 38, 49],
    plain: 3,
    pounds: [19.6, 17.8, 18.6, 21.3, 21.6, 19.7],
    total: 118.5,
  },
  {
    name: 'phosphor bronze .012–.053',
    wound: BRONZE,
    sizes: [12, 16, 24, 32, 42, 53],
    plain: 2,
    pounds: [23.3, 23.3, 30.2, 30.5, 29.9, 26.0],
    total: 163.3,
  },
  {
    name: 'phosphor bronze .013–.056',
    wound: BRONZE,
    sizes: [13, 17, 26, 35, 45, 56],
    plain: 2,
    pounds: [27.4, 26.3, 35.3, 36.8, 34.0, 29.0],
    total: 188.8,
  },
];
const STANDARD = [64, 59, 55, 50, 45, 40];

describe('published tensions', () => {
  for (const { name, wound, sizes, plain, pounds: expected, total } of SETS)
    it(`of a set of ${name}, string by string and together, within 0.1 lb`, () => {
      const found = sizes.map((size, i) => pounds(i < plain ? 'plain steel' : wound, size, STANDARD[i] ?? 0));
      found.forEach((value, i) => near(value, expected[i] ?? 0, 0.1, `string ${i + 1}`));
      // The published totals add up tensions that are rounded to 0.1 lb.
      const rounded = found.reduce((sum, value) => sum + Math.round(value * 10) / 10, 0);
      near(rounded, total, 0.1, 'total');
    });

  it('of the wound strings of a normal nylon set', () => {
    const kind = 'silvered copper on nylon';
    near(pounds(kind, 29, 50), 15.6, 0.1, 'D3');
    near(pounds(kind, 35, 45), 15.0, 0.1, 'A2');
    near(pounds(kind, 43, 40), 14.0, 0.1, 'E2');
  });

  // §2.5 gives 15.3, 11.6 and 12.1 lb for its trebles; §2.4 gives nylon by nominal sizes, which makers take loosely.
  it('of nylon trebles within 6 %, as the answer says', () => {
    near(pounds('plain nylon', 28, 64) / 15.3, 1, 0.065, 'E4');
    near(pounds('plain nylon', 32, 59) / 11.6, 1, 0.065, 'B3');
    near(pounds('plain nylon', 40, 55) / 12.1, 1, 0.065, 'G3');
  });

  // A magazine's table of December 2000 (strings-and-frets.md §2.5), open G at 25.5 in, phosphor bronze.
  it('of an independent table for open G within 0.1 lb', () => {
    near(pounds('plain steel', 14, 62), 25.2, 0.1, 'D4');
    near(pounds('plain steel', 16, 59), 23.3, 0.1, 'B3');
    near(pounds(BRONZE, 25, 55), 32.8, 0.1, 'G3');
    near(pounds(BRONZE, 34, 50), 34.7, 0.1, 'D3');
    near(pounds(BRONZE, 47, 43), 29.3, 0.1, 'G2');
  });

  // check-values.md T16
  it('of .046w at 25.5 in: E2 17.5, D2 13.9, C2 11.0 lb', () => {
    near(pounds(NICKEL, 46, 40), 17.5, 0.05, 'E2');
    near(pounds(NICKEL, 46, 38), 13.9, 0.05, 'D2');
    near(pounds(NICKEL, 46, 36), 11.0, 0.05, 'C2');
  });

  // strings-and-frets.md P8: a half step is a factor of 2^(1/6).
  it('go with the square of pitch and length', () => {
    near(pounds(NICKEL, 46, 38) / pounds(NICKEL, 46, 40), 0.794, 5e-4, 'two half steps down');
    near(pounds(NICKEL, 46, 43) / pounds(NICKEL, 46, 40), 1.414, 5e-4, 'three up');
    near(tensionOf(0.001, 500, 100) * 4, tensionOf(0.001, 1000, 100), 1e-9, 'twice the length');
    near(soundingLength(648, 12), 324, 1e-9, 'from fret 12');
  });
});

/** strings-and-frets.md §2.3: size, MIDI number, newtons, MPa, share of the least strength, half steps to it and to 70 %. */
const MARGINS: readonly (readonly [number, number, number, number, number, number, number])[] = [
  [8, 64, 46.2, 1425, 0.52, 5.7, 2.6],
  [9, 64, 58.5, 1425, 0.53, 5.6, 2.5],
  [10, 64, 72.2, 1425, 0.53, 5.4, 2.3],
  [12, 64, 104, 1425, 0.55, 5.2, 2.1],
  [13, 64, 122, 1425, 0.55, 5.1, 2.0],
  [8, 67, 65.3, 2015, 0.73, 2.7, -0.4],
  [9, 67, 82.7, 2015, 0.74, 2.6, -0.5],
  [13, 59, 68.5, 800, 0.31, 10.1, 7.0],
  [16, 59, 104, 800, 0.32, 9.9, 6.8],
  [16, 55, 65.3, 504, 0.2, 13.9, 10.8],
  [17, 55, 73.8, 504, 0.2, 13.8, 10.7],
];

describe('plain steel against ASTM A228', () => {
  for (const [size, midi, newtons, megapascals, share, toBreaking, toSeventy] of MARGINS)
    it(`.0${size} at ${midi} on 648 mm`, () => {
      const hertz = frequencyOf(midi);
      const weight = unitWeight('plain steel', inches(size)) ?? NaN;
      near(tensionOf(weight, 648, hertz), newtons, newtons > 100 ? 0.5 : 0.05, 'newtons');
      const stress = steelStress(648, hertz);
      near(stress, megapascals, 0.5, 'MPa');
      const found = stress / (leastStrength(inches(size)) ?? NaN);
      near(found, share, 0.006, 'share');
      near(6 * Math.log2(1 / found), toBreaking, 0.06, 'half steps to breaking');
      near(6 * Math.log2(0.7 / found), toSeventy, 0.06, 'half steps to 70 %');
    });

  // strings-and-frets.md §2.2, the standard's least strengths in ksi; 1 ksi = 6.894757 MPa
  it('has the least strength of its size, between sizes in a straight line, and none beyond them', () => {
    near(leastStrength(inches(7)) ?? 0, 407 * 6.894757, 0.01, '.007');
    near(leastStrength(inches(17)) ?? 0, 359 * 6.894757, 0.01, '.017');
    near(leastStrength(inches(26)) ?? 0, 337 * 6.894757, 0.01, '.026');
    assert.equal(leastStrength(inches(6.9)), undefined);
    assert.equal(leastStrength(inches(27)), undefined);
  });

  // tunings.md row 31: 3,198 MPa, 1.16 × the least strength of .008
  it('cannot be B4 on 648 mm', () => {
    near(steelStress(648, frequencyOf(71)), 3198, 1.5, 'MPa');
    near(steelStress(648, frequencyOf(71)) / (leastStrength(inches(8)) ?? 0), 1.16, 0.005, 'share');
  });
});
