import assert from 'node:assert/strict';
import { handOptions } from '../../../../src/playing/hand/options';
import { findShapes } from '../../../../src/playing/shapes/findShapes';
import type { WantedChord } from '../../../../src/playing/shapes/wanted';
import type { Target } from '../../../../src/playing/target';
import { judge, type Judged } from '../../music/chord/formulas';
import { GUITAR, UKULELE, type Shape } from '../../music/chord/shapes';
import { OPENS, targetOf } from '../boards';

/*
 * Outside data: @tombatossals/chords-db 0.5.1 (MIT), the shapes whose labels are right. Every seventh is asked for, with
 * the tones that its label stands for, in standard tuning and in the re-entrant tuning of the ukulele.
 */
const EVERY = 7;

interface Collection {
  readonly name: string;
  readonly shapes: readonly Shape[];
  readonly target: Target;
  /** Per cent that must be found among all that the hand can hold, and within the twelve shown; measured 2026-11-28. */
  readonly floors: readonly [all: number, twelve: number];
}

const COLLECTIONS: readonly Collection[] = [
  {
    name: 'guitar',
    shapes: GUITAR,
    target: targetOf({ opens: OPENS.standard, frets: 22, scaleLength: 648 }),
    floors: [100, 50],
  },
  {
    name: 'ukulele',
    shapes: UKULELE,
    target: targetOf({ opens: OPENS.ukulele, frets: 15, scaleLength: 345 }),
    floors: [100, 83],
  },
];

/** A set above a root as sounding pitch classes. */
function turned(mask: number, root: number): number {
  return ((mask << root) | (mask >> (12 - root))) & 0xfff;
}

function wantedOf({ root, full, needed, slash }: Judged): WantedChord {
  const bass = slash === undefined ? 0 : 1 << slash;
  const required = turned(needed, root) | bass;
  const optional = turned(full & ~needed, root) & ~required;
  const fifth = turned(full & ~needed & (1 << 7), root) & ~required;
  return { root, required, optional, fifth, oneOf: 0, bass: slash };
}

/** Frets from the nut; `x` is not played. */
function textOf({ frets, baseFret }: Shape): string {
  return frets.map((fret) => (fret < 0 ? 'x' : fret === 0 ? 0 : fret + baseFret - 1)).join(' ');
}

describe('chords-db found again by the finder', () => {
  for (const { name, shapes, target, floors } of COLLECTIONS) {
    it(`${name}: among all, and within twelve`, function () {
      this.timeout(120_000);
      const asked = shapes
        .map(judge)
        .filter((one) => one?.rightness === 'sound')
        .flatMap((one, i) => (one && i % EVERY === 0 ? [one] : []));
      const texts = (one: Judged, limit: number): readonly string[] => {
        const { baseFret, frets } = one.shape;
        const highest = Math.max(...frets) + baseFret - 1;
        const highestFret = limit === Infinity ? highest : 15;
        const options = { hand: handOptions(), limit, highestFret };
        return findShapes(wantedOf(one), target, options).map((shape) =>
          shape.frets.map((fret) => fret ?? 'x').join(' '),
        );
      };
      const share = (limit: number, some: readonly Judged[]): number =>
        (100 * some.filter((one) => texts(one, limit).includes(textOf(one.shape))).length) / some.length;
      // All that the hand can hold are many, so fewer are asked for.
      const all = share(
        Infinity,
        asked.filter((_, i) => i % 4 === 0),
      );
      const twelve = share(12, asked);
      console.log(
        `      ${name}: ${all.toFixed(1)} % among all, ${twelve.toFixed(1)} % within twelve (n ${asked.length})`,
      );
      assert.ok(all >= floors[0] && twelve >= floors[1]);
    });
  }
});
