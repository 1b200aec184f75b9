import { frequencyOf, STANDARD_PITCH } from '../../music/frequency';
import type { Gauge } from '../gauges';
import type { OpenPitch, TuningString } from '../tuning';
import { materialsOf, type Materials } from './materials';
import { steelStress } from './steelWire';
import type { StrungNeck } from './stringLoads';
import { soundingLength, tensionOf } from './tension';
import { unitWeight } from './unitWeight';
import { ofString, type UsualSet } from './usualSet';

/** Thicker or thinner by this share is another string. An engineering value. */
const NEAR_GAUGE = 0.3;
/** Stress above that of the usual string by less than a third of a half step. An engineering value. */
const NEAR_STRESS = 1.04;

/** The same string of the usual set in the usual tuning. */
export interface UsualString {
  readonly midi: number;
  readonly gauge: Gauge | undefined;
  /** Newtons. */
  readonly tension: number | undefined;
}

/** A string of a set on a neck, with all that its usual figures depend on. */
export interface OneString {
  readonly neck: StrungNeck;
  readonly string: TuningString;
  readonly number: number;
  readonly pitch: OpenPitch;
  readonly course: number;
  readonly gauges: readonly Gauge[] | undefined;
  readonly materials: Materials;
  readonly base: UsualSet;
  readonly nearest: UsualSet;
}

/** Of a course without a second gauge both strings have the first one. */
export function gaugeOfCourse(gauge: Gauge | undefined, course: number): Gauge | undefined {
  return course === 0 ? gauge : (gauge?.partner ?? gauge);
}

/** The string of that number in the usual set and tuning; without a usual set, the same string in the usual tuning. */
export function usualOf(one: OneString, gauge: Gauge | undefined): UsualString | undefined {
  const { base, number, course, neck } = one;
  const string = ofString(base.strings, number);
  const pitch = string && (string.pitches[course] ?? string.pitches[0]);
  if (!pitch) return undefined;
  const length = base.gauges ? neck.instrument.scaleLength : neck.scaleLength;
  const usual = base.gauges ? gaugeOfCourse(ofString(base.gauges, number), course) : gauge;
  const materials = base.gauges ? materialsOf(neck.instrument, base.gauges) : one.materials;
  const weight = usual && unitWeight(usual.wound ? materials.wound : materials.plain, usual.millimetres);
  const hertz = frequencyOf(pitch.midi, STANDARD_PITCH);
  return {
    midi: pitch.midi,
    gauge: usual,
    tension:
      weight === undefined ? undefined : tensionOf(weight, soundingLength(length, string.firstFret), hertz),
  };
}

/** Newtons of the whole usual set in the usual tuning, also of strings that are off; undefined where not known. */
export function usualTotal(
  neck: StrungNeck,
  base: UsualSet,
  gauges: readonly Gauge[] | undefined,
  materials: Materials,
): number | undefined {
  const parts = base.strings.flatMap((string, index) => {
    const number = base.strings.length - index;
    return string.pitches.map((pitch, course) => {
      const gauge = gaugeOfCourse(ofString(gauges, number), course);
      return usualOf({ neck, string, number, pitch, course, gauges, materials, base, nearest: base }, gauge)
        ?.tension;
    });
  });
  return summed(parts);
}

/** The tension of one and the same string here, by that at its usual pitch on the usual neck: the square of both. */
export function pitchRatioOf(usual: UsualString, { neck, pitch, base }: OneString): number {
  const length = base.gauges ? neck.scaleLength / neck.instrument.scaleLength : 1;
  const hertz = frequencyOf(pitch.midi, neck.referencePitch) / frequencyOf(usual.midi, STANDARD_PITCH);
  return (length * hertz) ** 2;
}

/** With the same gauge, or without any, tension goes with pitch and length alone. */
export function ratioOf(
  tension: number | undefined,
  usual: UsualString | undefined,
  one: OneString,
  gauge: Gauge | undefined,
): number | undefined {
  if (!usual) return undefined;
  if (tension !== undefined && usual.tension !== undefined) return tension / usual.tension;
  const same = !gauge || !usual.gauge || sameGauge(gauge, usual.gauge);
  return same ? pitchRatioOf(usual, one) : undefined;
}

function sameGauge(a: Gauge, b: Gauge): boolean {
  return a.wound === b.wound && Math.abs(a.millimetres - b.millimetres) < 1e-4;
}

/** Whether a string is near its usual gauge, and at most at the stress of its usual pitch on its usual neck. */
export function isStrungAsUsual(
  stress: number,
  gauge: Gauge | undefined,
  string: TuningString | undefined,
  { nearest, number, course, neck }: OneString,
): boolean {
  const pitch = string && (string.pitches[course] ?? string.pitches[0]);
  if (!pitch) return false;
  const length = soundingLength(neck.instrument.scaleLength, string.firstFret);
  if (stress > steelStress(length, frequencyOf(pitch.midi)) * NEAR_STRESS) return false;
  const usual = gaugeOfCourse(ofString(nearest.gauges, number), course);
  if (!gauge || !usual) return true;
  return (
    gauge.wound === usual.wound && Math.abs(gauge.millimetres / usual.millimetres - 1) <= NEAR_GAUGE + 1e-9
  );
}

/** The sum; undefined where a part is. */
export function summed(parts: readonly (number | undefined)[]): number | undefined {
  return parts.reduce<number | undefined>(
    (sum, part) => (sum === undefined || part === undefined ? undefined : sum + part),
    0,
  );
}
