import { GUITAR } from '../instrument/instruments';
import type { Instrument } from '../instrument/instrument';
import { usualGauges } from '../instrument/usualGauges';
import { COMMON_METER } from '../music/meter';
import { DEFAULT_TEMPO } from '../music/tempo';
import type { FieldName } from './fieldNames';
import { FIELD_READERS, type FieldScope, type HeaderChange } from './fieldReaders';
import type { Header } from './header';
import { usualTuning } from './headerViews';
import type { FieldProblem, PlacedField } from './tabDocument';

/** ISO 16:1975: A4 = 440 Hz. */
const STANDARD_PITCH = 440;

/** What holds where nothing is written. */
export const DEFAULT_HEADER: Header = Object.freeze({
  title: undefined,
  by: Object.freeze([]),
  remarks: Object.freeze([]),
  ...broughtBy(GUITAR),
  referencePitch: STANDARD_PITCH,
  key: undefined,
  meter: COMMON_METER,
  tempo: DEFAULT_TEMPO,
  feel: 'straight',
  fretting: 'fingers',
  part: undefined,
});

/** An instrument brings its own tuning, frets, length and strings, and no capo. */
function broughtBy(
  instrument: Instrument,
): Pick<Header, 'instrument' | 'tuning' | 'capo' | 'frets' | 'scaleLength' | 'gauges'> {
  const tuning = usualTuning(instrument);
  return {
    instrument,
    tuning,
    capo: undefined,
    frets: instrument.frets,
    scaleLength: instrument.scaleLength,
    gauges: usualGauges(instrument),
  };
}

/** Fields whose values others depend on come first; the rest in the order written. */
const FIRST: readonly FieldName[] = ['instrument', 'frets', 'tuning'];

export interface GroupReading {
  readonly after: Header;
  readonly problems: readonly FieldProblem[];
}

/**
 * Reads fields that stand together: instrument first; of a field met twice the last holds.
 * @param before what held until then
 */
export function readFields(
  fields: readonly PlacedField[],
  before: Header,
  userTunings: Readonly<Record<string, string>>,
): GroupReading {
  const problems: FieldProblem[] = [];
  const last = new Map<FieldName, PlacedField>();
  const kept: PlacedField[] = [];
  for (const field of fields) {
    const name = field.line.field;
    const earlier = last.get(name);
    if (name === 'by' || name === 'remark') kept.push(field);
    else {
      if (earlier) problems.push(repeated(earlier));
      last.set(name, field);
    }
  }
  const order = [
    ...FIRST.flatMap((name) => last.get(name) ?? []),
    ...[...last.values()].filter(({ line }) => !FIRST.includes(line.field)),
    ...kept,
  ];
  let header: Header = before;
  for (const field of order) {
    const change = readField(field, { ...header, userTunings }, problems);
    if (change) header = applyChange(header, change);
  }
  return { after: sameHeader(header, before) ? before : Object.freeze(header), problems };
}

function applyChange(header: Header, change: HeaderChange): Header {
  if (change.instrument && change.instrument !== header.instrument) {
    const lap = change.instrument.slide
      ? ('slide' as const)
      : header.instrument.slide
        ? ('fingers' as const)
        : header.fretting;
    return { ...header, ...broughtBy(change.instrument), fretting: lap };
  }
  const by = change.by ? [...header.by, ...change.by] : header.by;
  const remarks = change.remarks ? [...header.remarks, ...change.remarks] : header.remarks;
  return { ...header, ...change, by, remarks };
}

function sameHeader(a: Header, b: Header): boolean {
  return (Object.keys(a) as (keyof Header)[]).every((key) => a[key] === b[key]);
}

function readField(
  field: PlacedField,
  scope: FieldScope,
  problems: FieldProblem[],
): HeaderChange | undefined {
  const { line } = field;
  if (line.value === '') {
    problems.push({
      kind: 'malformed',
      field,
      reason: 'empty',
      message: `The field ${line.field} needs a value.`,
      start: line.nameStart,
      end: line.nameEnd,
      suggestions: [],
    });
    return undefined;
  }
  const read = FIELD_READERS[line.field](line.value, scope);
  for (const notice of read.ok ? read.notices : [read.error]) {
    problems.push({
      kind: read.ok ? 'notice' : 'malformed',
      field,
      reason: notice.kind,
      message: notice.message,
      start: line.valueStart + notice.start,
      end: line.valueStart + Math.max(notice.end, notice.start + 1),
      suggestions: notice.suggestions,
    });
  }
  return read.ok ? read.value : undefined;
}

function repeated(field: PlacedField): FieldProblem {
  const { line } = field;
  return {
    kind: 'repeated',
    field,
    reason: line.field,
    message: `The field ${line.field} is written twice here; the last one holds.`,
    start: line.nameStart,
    end: line.valueStart + line.value.length,
    suggestions: [],
  };
}
