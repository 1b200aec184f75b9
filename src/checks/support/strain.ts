import { USUAL_LIMITS, type StrainLimits } from '../../instrument/strings/limits';
import { strainStates, type StrainState } from '../../instrument/strings/strainState';
import { stringLoads, type SetLoad, type StringLoad } from '../../instrument/strings/stringLoads';
import { usualGauges } from '../../instrument/usualGauges';
import type { FieldName } from '../../notation/fieldNames';
import type { Header } from '../../notation/header';
import type { FieldGroup, PlacedField, TextEdit } from '../../notation/tabDocument';
import type { CheckSettings } from '../check';
import { replace } from './edits';
import { newLine } from './setField';

/** A string that something is told of. */
export interface Strained {
  readonly load: StringLoad;
  readonly state: StrainState;
}

/** What the fields that stand together make of the strings. */
export interface GroupStrain {
  /** Where it is told: the field that most likely brought it about. */
  readonly field: PlacedField;
  readonly header: Header;
  readonly set: SetLoad;
  readonly strings: readonly Strained[];
  readonly limits: StrainLimits;
}

/** The fields that decide what strings bear, the one that is told about first. */
const DECIDE: readonly FieldName[] = ['tuning', 'gauges', 'scale length', 'reference pitch', 'instrument'];

/** The load of every string after a group of fields; undefined where none of them concerns the strings. */
export function groupStrain(group: FieldGroup, settings: CheckSettings): GroupStrain | undefined {
  const field = decidingField(group);
  if (!field) return undefined;
  const { after: header } = group;
  const limits = settings.strain ?? USUAL_LIMITS;
  const { instrument, tuning, scaleLength, referencePitch } = header;
  const gauges = header.gauges === usualGauges(instrument) ? undefined : header.gauges;
  const set = stringLoads({ instrument, tuning, gauges, scaleLength, referencePitch });
  const states = strainStates(set, limits);
  const strings = set.strings.map((load, at) => ({ load, state: states[at] ?? 'unknown' }));
  return { field, header, set, strings, limits };
}

/** Strings that are near their strength or beyond it, the nearest first. */
export function nearBreaking({ strings }: GroupStrain): readonly Strained[] {
  return strings
    .filter(({ state }) => state === 'error' || state === 'warning' || state === 'information')
    .sort((a, b) => b.load.stress - a.load.stress);
}

function decidingField({ fields, problems }: FieldGroup): PlacedField | undefined {
  for (const name of DECIDE) {
    const field = fields.findLast(({ line }) => line.field === name);
    const read = field && !problems.some((p) => p.field === field && p.kind === 'malformed');
    if (read) return field;
  }
  return undefined;
}

/** Writes a field's value among fields that stand together: in its own line, else in a new one behind them. */
export function setInGroup(group: FieldGroup, name: FieldName, value: string): TextEdit {
  const written = group.fields.findLast(({ line }) => line.field === name);
  if (!written || written.line.value === '') return newLine(group, name, value);
  const { line, lineIndex } = written;
  return replace(lineIndex, line.valueStart, line.valueStart + line.value.length, value);
}
