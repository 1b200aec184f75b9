import { readGauges } from '../../instrument/gauges';
import type { Instrument } from '../../instrument/instrument';
import { MILLIMETRES_PER_INCH } from '../../instrument/scaleLength';
import { usualStrings } from '../../instrument/stringsFromNotes';
import { stringNumber, type Tuning } from '../../instrument/tuning';

/** The most half steps above the instrument's usual tuning that are offered. An engineering value, on the safe side. */
const MOST_ABOVE_USUAL = 2;

/**
 * The share of the least tensile strength (ASTM A228) beyond which no string is offered. An engineering value: spring
 * makers give 65–75 % of the strength as the elastic limit of music wire in tension.
 */
const MOST_STRESS = 0.7;

/** Music wire, kg/m³: what published unit weights of plain steel strings imply. */
const STEEL_DENSITY = 7807;
const MEGAPASCALS_PER_KSI = 6.894757;

/**
 * ASTM A228 music wire: diameter in thousandths of an inch, least tensile strength in ksi (strings-and-frets.md §2.2).
 * Makers use other wire too: a string maker's own figures come first.
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

/**
 * What is offered of a string, as a test by its index in `start.strings` and the half steps from there. Down and
 * unchanged is always borne. Up is offered to two half steps above the instrument's usual tuning, and for plain steel
 * not beyond 70 % of the least strength of its wire at the neck's length, σ = ρ(2Lf)² (strings-and-frets.md P4), with
 * the instrument's usual gauges; the core of a wound string is not published, so it has no such figure. Plain strings
 * thicker than the wire table are not steel. That a string is offered is no promise: the string maker's figures decide.
 * @param scaleLength millimetres
 * @example stringBears(standard, GUITAR, 648)(5, 3) // false: G4 on string 1
 */
export function stringBears(
  start: Tuning,
  instrument: Instrument,
  scaleLength: number,
): (string: number, halfSteps: number) => boolean {
  const usual = usualStrings(instrument);
  const gauges = instrument.usualGauges ? readGauges(instrument.usualGauges, usual.length) : undefined;
  const highest = start.strings.map((_, index) => {
    const at = usual.length - stringNumber(start, index);
    const made = usual[at];
    if (!made) return [];
    const gauge = gauges?.ok === true ? gauges.value[at] : undefined;
    return made.pitches.map(({ midi }, course) => {
      const own = course === 0 ? gauge : gauge?.partner;
      const steel = own && !own.wound ? highestMidiOf(own.millimetres, scaleLength) : Infinity;
      return Math.min(midi + MOST_ABOVE_USUAL, steel);
    });
  });
  return (string, halfSteps) =>
    halfSteps <= 0 ||
    (start.strings[string]?.pitches ?? []).every(
      ({ midi }, course) => midi + halfSteps <= (highest[string]?.[course] ?? -Infinity) + 1e-9,
    );
}

/** The MIDI number, with decimals, at which a plain steel string is at the share of its strength; A4 is 440 Hz. */
function highestMidiOf(millimetres: number, scaleLength: number): number {
  const strength = leastStrength((millimetres / MILLIMETRES_PER_INCH) * 1000);
  if (strength === undefined) return Infinity;
  const stress = MOST_STRESS * strength * MEGAPASCALS_PER_KSI * 1e6;
  const hertz = Math.sqrt(stress / STEEL_DENSITY) / (2 * (scaleLength / 1000));
  return 69 + 12 * Math.log2(hertz / 440);
}

/** Between the sizes of the table in a straight line; undefined beyond them. */
function leastStrength(thousandths: number): number | undefined {
  let before = LEAST_STRENGTH[0];
  for (const row of LEAST_STRENGTH) {
    if (before && thousandths >= before[0] - 1e-6 && thousandths <= row[0] + 1e-6) {
      const share = row[0] === before[0] ? 0 : (thousandths - before[0]) / (row[0] - before[0]);
      return before[1] + share * (row[1] - before[1]);
    }
    before = row;
  }
  return undefined;
}
