import { MILLIMETRES_PER_INCH } from '../scaleLength';

/**
 * Music wire, kg/m³: what published unit weights of plain steel strings imply, 7,804–7,810 (strings-and-frets.md P3).
 * Tables of springs print 7,850.
 */
export const STEEL_DENSITY = 7807;

/** 1 ksi in MPa: 4.4482216152605 N to the pound of force, 645.16 mm² to the square inch. */
const MEGAPASCALS_PER_KSI = 6.894757;

/**
 * ASTM A228 music wire: diameter in thousandths of an inch, least tensile strength in ksi, as a wire maker's table
 * prints them (strings-and-frets.md §2.2). Makers of strings use other wire too: their own figures come first.
 */
const LEAST_STRENGTH: readonly (readonly [number, number])[] = [
  [7, 407],
  [8, 399],
  [9, 393],
  [10, 387],
  [11, 382],
  [12, 377],
  [13, 373],
  [14, 369],
  [15, 365],
  [16, 362],
  [18, 356],
  [20, 350],
  [22, 345],
  [24, 341],
  [26, 337],
];

/** The strongest size of the table, .007 in, in megapascals: no plain steel string is sure to bear more. */
export const STRONGEST_STEEL = 407 * MEGAPASCALS_PER_KSI;

/**
 * The least tensile strength of music wire of a size, in megapascals: ASTM A228, between its sizes in a straight line.
 * Undefined beyond them, .007 to .026 in.
 * @param millimetres diameter
 * @example leastStrength(0.254) // 2668, the .010 in wire
 */
export function leastStrength(millimetres: number): number | undefined {
  const thousandths = (millimetres / MILLIMETRES_PER_INCH) * 1000;
  let before = LEAST_STRENGTH[0];
  for (const row of LEAST_STRENGTH) {
    // A size in thousandths comes back from millimetres with five places: a little tolerance at the ends.
    if (before && thousandths >= before[0] - 1e-3 && thousandths <= row[0] + 1e-3) {
      const share = row[0] === before[0] ? 0 : (thousandths - before[0]) / (row[0] - before[0]);
      return (before[1] + share * (row[1] - before[1])) * MEGAPASCALS_PER_KSI;
    }
    before = row;
  }
  return undefined;
}

/**
 * The stress in a plain steel string, in megapascals: σ = ρ(2Lf)², whatever its gauge (strings-and-frets.md P4, from
 * Mersenne's and Taylor's law).
 * @param length the sounding length of the open string, millimetres
 * @example steelStress(648, 329.63) // 1425, E4 on a guitar
 */
export function steelStress(length: number, hertz: number): number {
  return (STEEL_DENSITY * (2 * (length / 1000) * hertz) ** 2) / 1e6;
}

/** The frequency in hertz at which a plain steel string of that length, in millimetres, has that stress in megapascals. */
export function hertzAtStress(length: number, megapascals: number): number {
  return Math.sqrt((megapascals * 1e6) / STEEL_DENSITY) / (2 * (length / 1000));
}

/**
 * Half steps from one share of the strength to another: stress grows with the square of the frequency, so that six
 * half steps double it.
 * @example halfStepsBetween(0.53, 1) // 5.5
 */
export function halfStepsBetween(share: number, to: number): number {
  return 6 * Math.log2(to / share);
}
