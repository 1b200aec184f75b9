import { frequencyOf } from '../../music/frequency';
import type { Gauge } from '../gauges';
import type { Instrument } from '../instrument';
import type { OpenPitch, Tuning } from '../tuning';
import type { Construction } from './constructions';
import { materialsOf, type Materials } from './materials';
import { leastStrength, steelStress, STRONGEST_STEEL } from './steelWire';
import { soundingLength, tensionOf } from './tension';
import { unitWeight } from './unitWeight';
import { ofString, usualSet, usualSetFor, type UsualSet } from './usualSet';
import {
  gaugeOfCourse,
  isStrungAsUsual,
  pitchRatioOf,
  ratioOf,
  summed,
  usualOf,
  usualTotal,
  type OneString,
  type UsualString,
} from './usualString';

/** Strings on a neck. */
export interface StrungNeck {
  readonly instrument: Instrument;
  /** What the open strings sound, without a capo: a capo hardly changes how the strings pull. */
  readonly tuning: Tuning;
  /** Low string first; undefined for the set that is usual for the tuning. */
  readonly gauges: readonly Gauge[] | undefined;
  /** Millimetres. */
  readonly scaleLength: number;
  /** Hertz of A4. */
  readonly referencePitch: number;
}

/** One string and its load. */
export interface StringLoad {
  /** As players number them. */
  readonly number: number;
  /** 2 for the second string of a course. */
  readonly course: 1 | 2;
  readonly pitch: OpenPitch;
  readonly hertz: number;
  /** Sounding length, millimetres. */
  readonly length: number;
  readonly gauge: Gauge | undefined;
  readonly construction: Construction | undefined;
  /** Newtons; undefined where the gauge is not known, or lies outside the published sizes. */
  readonly tension: number | undefined;
  /** The same string of the usual set in the usual tuning at A4 = 440 Hz on the instrument's usual neck. */
  readonly usual: UsualString | undefined;
  /** Tension by usual tension; the string's own pitch alone counts where the usual gauge is not known. */
  readonly ratio: number | undefined;
  /** The same of this very string, whatever the usual gauge: what pitch and length alone have changed. */
  readonly pitchRatio: number | undefined;
  /** The stress of plain steel at this pitch in megapascals, whether or not the string is of it. */
  readonly stress: number;
  /** The share of the least strength, for plain steel of the sizes of ASTM A228. */
  readonly share: number | undefined;
  /** Whether no steel string can be sure of this pitch: the strongest size of ASTM A228 is asked for all its strength. */
  readonly beyondSteel: boolean;
  /**
   * Whether the string is near its usual gauge, and at most at the stress of its usual pitch on its usual neck, so that
   * it is strung as the trade strings it.
   */
  readonly strungAsUsual: boolean;
}

/** A set on a neck. */
export interface SetLoad {
  /** Low string first; the two strings of a course one after the other. */
  readonly strings: readonly StringLoad[];
  /** Low string first, one entry a string or course; what was asked, or the usual set. */
  readonly gauges: readonly Gauge[] | undefined;
  readonly gaugesAre: 'written' | UsualSet['kind'] | 'unknown';
  readonly materials: Materials;
  /** Newtons, all strings together; undefined where one is not known. */
  readonly total: number | undefined;
  /** Newtons of the whole usual set in the usual tuning, also of strings that are off here; undefined where not known. */
  readonly usualTotal: number | undefined;
  /** Whether the usual figures are those of the very set in hand, for want of a usual one. */
  readonly againstItself: boolean;
}

/**
 * What every string of a set bears: its tension, its change against the usual set in the usual tuning, and for plain
 * steel its share of the least strength.
 * @example stringLoads({ instrument: GUITAR, tuning, gauges: undefined, scaleLength: 647.7, referencePitch: 440 }).total // 460.7
 */
export function stringLoads(neck: StrungNeck): SetLoad {
  const { instrument, tuning } = neck;
  const nearest = usualSetFor(instrument, tuning.strings);
  const base = usualSet(instrument);
  const gauges = neck.gauges ?? nearest.gauges;
  const materials = materialsOf(instrument, gauges);
  const againstItself = base.gauges === undefined;
  const strings = tuning.strings.flatMap((string, index) => {
    const number = tuning.strings.length - index;
    return string.pitches.map((pitch, course) =>
      loadOf({ neck, string, number, pitch, course, gauges, materials, base, nearest }),
    );
  });
  return {
    strings,
    gauges,
    gaugesAre: neck.gauges ? 'written' : gauges ? nearest.kind : 'unknown',
    materials,
    total: summed(strings.map(({ tension }) => tension)),
    usualTotal: usualTotal(neck, base, gauges, materials),
    againstItself,
  };
}

function loadOf(one: OneString): StringLoad {
  const { neck, string, number, pitch, course, materials, nearest } = one;
  const gauge = gaugeOfCourse(ofString(one.gauges, number), course);
  const construction = gauge && (gauge.wound ? materials.wound : materials.plain);
  const hertz = frequencyOf(pitch.midi, neck.referencePitch);
  const length = soundingLength(neck.scaleLength, string.firstFret);
  const weight = gauge && construction && unitWeight(construction, gauge.millimetres);
  const tension = weight === undefined ? undefined : tensionOf(weight, length, hertz);
  const usual = usualOf(one, gauge);
  const stress = steelStress(length, hertz);
  const strength = gauge && construction === 'plain steel' ? leastStrength(gauge.millimetres) : undefined;
  return {
    number,
    course: course === 0 ? 1 : 2,
    pitch,
    hertz,
    length,
    gauge,
    construction,
    tension,
    usual,
    ratio: ratioOf(tension, usual, one, gauge),
    pitchRatio: usual && pitchRatioOf(usual, one),
    stress,
    share: strength === undefined ? undefined : stress / strength,
    beyondSteel: materials.plain === 'plain steel' && stress >= STRONGEST_STEEL,
    strungAsUsual: isStrungAsUsual(stress, gauge, ofString(nearest.strings, number), one),
  };
}
