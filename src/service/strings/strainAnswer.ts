import { formatGauges } from '../../instrument/gauges';
import { retuningCaution } from '../../instrument/retuningCaution';
import type { StrainLimits } from '../../instrument/strings/limits';
import { halfStepsBetween } from '../../instrument/strings/steelWire';
import { raisedBy, strainStates } from '../../instrument/strings/strainState';
import {
  lengthWords,
  materialWords,
  ownGauge,
  percentChange,
  strainSentence,
} from '../../instrument/strings/strainWords';
import {
  stringLoads,
  type SetLoad,
  type StringLoad,
  type StrungNeck,
} from '../../instrument/strings/stringLoads';
import { suggestedGauge } from '../../instrument/strings/suggestGauge';
import { NEWTONS_PER_POUND } from '../../instrument/strings/tension';
import { formatTuning, formatTuningNotes, nameOfTuning } from '../../instrument/tuningFormat';
import { formatNoteName } from '../../music/noteName';
import { STANDARD_PITCH } from '../../music/frequency';
import { usualTuning } from '../../notation/headerViews';
import type {
  SetPull,
  SteelStrain,
  StrainChange,
  StrainState,
  StringsAnswer,
  StringStrain,
} from './stringsAnswer';

/** A set that pulls this much more than usual is told as such. An engineering value: some half of a half step a string. */
const MORE_PULL = 1.05;

/**
 * What the strings of a neck bear, in figures and sentences; for callers without a document too.
 * @param neck `gauges` undefined for the set that is usual for the tuning
 * @example strainAnswer({ instrument: GUITAR, tuning, gauges: undefined, scaleLength: 648, referencePitch: 440 }, USUAL_LIMITS).total
 */
export function strainAnswer(neck: StrungNeck, limits: StrainLimits): StringsAnswer {
  const set = stringLoads(neck);
  const states = strainStates(set, limits);
  const strings = set.strings.map((load, at) => tellString(load, states[at] ?? 'unknown', set, neck, limits));
  return {
    instrument: neck.instrument.name,
    tuning: formatTuning(neck.tuning, neck.instrument),
    notes: formatTuningNotes(neck.tuning),
    gauges: set.gauges ? formatGauges(set.gauges) : null,
    gaugesAre: set.gaugesAre,
    scaleLength: neck.scaleLength,
    referencePitch: neck.referencePitch,
    strings,
    total: totalOf(set),
    against: against(set, neck),
    told: strings.flatMap(({ told }) => (told === '' ? [] : [told])),
    remarks: remarksOf(set, neck),
    cautions: cautionsOf(set),
  };
}

function tellString(
  load: StringLoad,
  state: StrainState,
  set: SetLoad,
  neck: StrungNeck,
  limits: StrainLimits,
): StringStrain {
  const { tension, usual, ratio, share, gauge } = load;
  const suggested = set.gaugesAre === 'octave' ? undefined : suggestedGauge(load, set.materials);
  const change: StrainChange | null =
    ratio === undefined
      ? null
      : { ratio: rounded(ratio, 4), ...inBoth(tension, usual?.tension, (now, before) => now - before) };
  const steel: SteelStrain | null =
    share === undefined
      ? null
      : {
          megapascals: rounded(load.stress, 1),
          share: rounded(share, 4),
          halfStepsToBreaking: rounded(halfStepsBetween(share, 1), 2),
          halfStepsToWarning: rounded(halfStepsBetween(share, limits.warning), 2),
        };
  return {
    number: load.number,
    course: load.course,
    note: formatNoteName(load.pitch.name),
    gauge: gauge ? ownGauge(gauge.text) : null,
    material: load.construction ?? null,
    change,
    halfSteps: usual ? rounded(load.pitch.midi - usual.midi, 4) : null,
    newtons: tension === undefined ? null : rounded(tension, 2),
    pounds: tension === undefined ? null : rounded(tension / NEWTONS_PER_POUND, 2),
    steel,
    state,
    told: strainSentence(load, state, { scaleLength: neck.scaleLength, gaugesAre: set.gaugesAre, suggested }),
    suggestedGauge: suggested ?? null,
  };
}

function totalOf({ total, usualTotal }: SetLoad): SetPull | null {
  if (total === undefined) return null;
  const change =
    usualTotal === undefined
      ? null
      : {
          ratio: rounded(total / usualTotal, 4),
          ...inBoth(total, usualTotal, (now, before) => now - before),
        };
  return { newtons: rounded(total, 1), pounds: rounded(total / NEWTONS_PER_POUND, 1), change };
}

/** A difference of newtons in newtons and in pounds; null in both where a side is not known. */
function inBoth(
  now: number | undefined,
  before: number | undefined,
  of: (now: number, before: number) => number,
): { readonly newtons: number | null; readonly pounds: number | null } {
  if (now === undefined || before === undefined) return { newtons: null, pounds: null };
  const newtons = of(now, before);
  return { newtons: rounded(newtons, 2), pounds: rounded(newtons / NEWTONS_PER_POUND, 2) };
}

/** What the changes are counted from, as words that end a sentence. */
function against(set: SetLoad, { instrument, scaleLength }: StrungNeck): string {
  const usual = usualTuning(instrument);
  const tuning = nameOfTuning(usual, instrument) ?? formatTuningNotes(usual);
  const pitch = `at A4 = ${STANDARD_PITCH} Hz`;
  return set.againstItself || instrument.usualGauges === undefined
    ? `the same strings on the same neck, ${lengthWords(scaleLength)}, in the usual tuning of the ${instrument.name}, ${tuning}, ${pitch}`
    : `the usual set of the ${instrument.name}, ${instrument.usualGauges}, in ${tuning} on ${lengthWords(instrument.scaleLength)} ${pitch}`;
}

function remarksOf(set: SetLoad, { instrument, tuning }: StrungNeck): readonly string[] {
  const remarks: string[] = [];
  if (set.gaugesAre === 'unknown') {
    remarks.push(
      `No set of strings is usual for the ${instrument.name}, so tensions are not known and changes are counted from pitch alone: write one for each of the ${tuning.strings.length} strings in a gauges field, low string first, w for wound.`,
    );
    return remarks;
  }
  const missing = set.strings.find(({ gauge }) => !gauge);
  if (missing)
    remarks.push(
      `No gauge is known for string ${missing.number}: write one for each of the ${tuning.strings.length} strings in a gauges field.`,
    );
  if (set.gaugesAre === 'usual')
    remarks.push(`The usual set of the ${instrument.name} is assumed; a gauges field says otherwise.`);
  if (set.gaugesAre === 'octave')
    remarks.push(
      'The octave strings of a 12-string set are assumed for strings 6 to 3, since an ordinary set does not fit this tuning; a gauges field says otherwise.',
    );
  remarks.push(materialWords(set));
  if (set.strings.some(({ gauge }) => gauge?.wound))
    remarks.push(
      'Wound strings have their tension and its change only: they break at the core, whose thickness is rarely published.',
    );
  if (set.strings.some(({ share }) => share !== undefined))
    remarks.push(
      'The strength is the least that ASTM A228 asks of music wire of the size; strings are made of other wire too, and the string maker’s figures come first.',
    );
  return remarks;
}

function cautionsOf(set: SetLoad): readonly string[] {
  const cautions: string[] = [];
  if (set.materials.steelOnNylonInstrument)
    cautions.push(
      'These are steel strings on an instrument that is built for nylon: they may pull its bridge off. Ask a luthier before you put them on.',
    );
  const ratio = set.total === undefined || !set.usualTotal ? 1 : set.total / set.usualTotal;
  if (ratio > MORE_PULL)
    cautions.push(
      `The whole set pulls ${percentChange(ratio)} than usual on neck and bridge. Ask a luthier first, unless you know that the instrument is built for it.`,
    );
  cautions.push(
    retuningCaution(raisedBy(set)) ??
      'Tune slowly and keep your eyes and face away from the strings: a string can break. The string maker’s figures decide. Ask a luthier before you raise a whole set or put a heavier one on.',
  );
  return cautions;
}

function rounded(value: number, places: number): number {
  return Math.round(value * 10 ** places) / 10 ** places + 0;
}
