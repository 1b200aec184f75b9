import { MILLIMETRES_PER_INCH } from '../scaleLength';
import {
  BASS_ROUND_WOUND,
  NICKEL_PLATED,
  PHOSPHOR_BRONZE,
  SILVERED_COPPER,
  type Construction,
  type Wound,
} from './constructions';
import { STEEL_DENSITY } from './steelWire';

/** Clear nylon by its nominal size, kg/m³ (strings-and-frets.md §2.4); makers name sizes so loosely that it may be 6 % off. */
const NYLON_DENSITY = 996;

/** Plain steel and nylon by the sizes that are made, thousandths of an inch (§2.4; the thickest steel from memory). */
const PLAIN: Readonly<Partial<Record<Construction, Plain>>> = {
  'plain steel': { sizes: [7, 30], density: STEEL_DENSITY },
  'plain nylon': { sizes: [18, 41], density: NYLON_DENSITY },
};

interface Plain {
  readonly sizes: readonly [number, number];
  readonly density: number;
}

const WOUND: Readonly<Partial<Record<Construction, Wound>>> = {
  'nickel-plated wound': NICKEL_PLATED,
  'phosphor bronze wound': PHOSPHOR_BRONZE,
  'bass round wound': BASS_ROUND_WOUND,
  'silvered copper on nylon': SILVERED_COPPER,
};

/** 1 lb = 0.45359237 kg exactly (international pound, 1959). */
const KILOGRAMS_PER_METRE = (0.45359237 / (MILLIMETRES_PER_INCH / 1000)) * 1e-5;

/**
 * The mass of a string by its length, in kilograms a metre: by the density of the material for a plain one; for a wound
 * one by the effective density over its outer diameter, taken between published sizes in a straight line. Undefined
 * outside the published sizes of the construction.
 * @param millimetres outer diameter
 * @example unitWeight('nickel-plated wound', 1.1684) // 0.00682, the .046 in string
 */
export function unitWeight(construction: Construction, millimetres: number): number | undefined {
  const [least, most] = sizesOf(construction);
  const thousandths = thousandthsOf(millimetres);
  if (thousandths < least - 1e-3 || thousandths > most + 1e-3) return undefined;
  const area = (Math.PI / 4) * (millimetres / 1000) ** 2;
  const plain = PLAIN[construction];
  if (plain) return plain.density * area;
  const wound = WOUND[construction];
  return wound && densityAt(wound, thousandths) * area;
}

/** The least and the greatest published size of a construction, in thousandths of an inch. */
export function sizesOf(construction: Construction): readonly [number, number] {
  return (PLAIN[construction] ?? WOUND[construction] ?? { sizes: [0, 0] as const }).sizes;
}

/** @example thousandthsOf(0.254) // 10 */
export function thousandthsOf(millimetres: number): number {
  return (millimetres / MILLIMETRES_PER_INCH) * 1000;
}

/** kg/m³ over the solid outer diameter; beyond the first and the last row as there. */
function densityAt({ weights }: Wound, thousandths: number): number {
  let [before] = weights;
  for (const row of weights) {
    if (before && thousandths <= row[0]) {
      const share = row[0] === before[0] ? 0 : (thousandths - before[0]) / (row[0] - before[0]);
      const at = Math.min(Math.max(share, 0), 1);
      return densityOf(before) + at * (densityOf(row) - densityOf(before));
    }
    before = row;
  }
  return before ? densityOf(before) : 0;
}

function densityOf([thousandths, weight]: readonly [number, number]): number {
  const metres = (thousandths / 1e6) * MILLIMETRES_PER_INCH;
  return (weight * KILOGRAMS_PER_METRE) / ((Math.PI / 4) * metres ** 2);
}
