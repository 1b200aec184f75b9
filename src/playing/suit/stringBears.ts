import type { Instrument } from '../../instrument/instrument';
import { hertzAtStress, leastStrength } from '../../instrument/strings/steelWire';
import { usualStrings } from '../../instrument/stringsFromNotes';
import { stringNumber, type Tuning } from '../../instrument/tuning';
import { usualGauges } from '../../instrument/usualGauges';
import { STANDARD_PITCH } from '../../music/frequency';

/** The most half steps above the instrument's usual tuning that are offered. An engineering value, on the safe side. */
const MOST_ABOVE_USUAL = 2;

/**
 * The share of the least tensile strength (ASTM A228) beyond which no string is offered. An engineering value: spring
 * makers give 65–75 % of the strength as the elastic limit of music wire in tension.
 */
const MOST_STRESS = 0.7;

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
  const gauges = usualGauges(instrument);
  const highest = start.strings.map((_, index) => {
    const at = usual.length - stringNumber(start, index);
    const made = usual[at];
    if (!made) return [];
    const gauge = gauges?.[at];
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
  const strength = leastStrength(millimetres);
  if (strength === undefined) return Infinity;
  return 69 + 12 * Math.log2(hertzAtStress(scaleLength, MOST_STRESS * strength) / STANDARD_PITCH);
}
