import type { Instrument } from '../../instrument/instrument';
import { formatTuning, nameOfTuning, sameTuning, stepsFrom } from '../../instrument/tuningFormat';
import { retuningCaution } from '../../instrument/retuningCaution';
import { readTuning } from '../../instrument/tuningValue';
import type { Tuning } from '../../instrument/tuning';
import { usualTuning } from '../../notation/headerViews';
import type { Header } from '../../notation/header';
import type { TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ChangeResult, ConvertRequest, Report, ServiceError } from '../serviceApi';
import { changeOf, mapHeaders, NOTHING_THERE, wideningCuts, type Attempt } from './change';
import { convertShapes } from './convertShapes';
import { unplacedNotes } from './placing';
import { placeNotes } from './ways';
import { halfStepWords, leftOut, notesOutOf, verb } from './remarks';
import { hasStrings, slicesIn, type Slice } from './slices';

/** Carries a passage to another tuning: its sound, or its shapes. A tuning's name means what it does on each instrument. */
export function convert(document: TabDocument, request: ConvertRequest, settings: Settings): ChangeResult {
  const slices = slicesIn(document, request.range);
  if (!slices.some(hasStrings)) return { error: NOTHING_THERE };
  const tunings = tuningsFor(slices, request.tuning, settings);
  if ('error' in tunings) return tunings;
  const tuningFor = (header: Header): Tuning => tunings.get(header.instrument) ?? header.tuning;
  const trouble = slices
    .map(({ system }) => capoTrouble(system.header, tuningFor(system.header)))
    .find((sentence) => sentence !== undefined);
  if (trouble) return { error: trouble };
  const goal = {
    tuningFor,
    name: nameOf(tunings),
    cautions: cautions(tunings),
  };
  const attempt = request.keep === 'shapes' ? convertShapes : convertSound;
  return wideningCuts(document, slices, (wider) => attempt(document, wider, goal, settings));
}

/** Where a passage is carried to. */
export interface Goal {
  readonly tuningFor: (header: Header) => Tuning;
  /** As the user is to read it. */
  readonly name: string;
  readonly cautions: readonly string[];
}

function tuningsFor(
  slices: readonly Slice[],
  value: string | undefined,
  settings: Settings,
): Map<Instrument, Tuning> | ServiceError {
  const tunings = new Map<Instrument, Tuning>();
  if (value === undefined) return tunings;
  const instruments = [...new Set(slices.map(({ system }) => system.header.instrument))];
  for (const instrument of instruments) {
    const read = readTuning(value, { instrument, userTunings: settings.tunings });
    if (!read.ok) {
      const where = instruments.length > 1 ? `For the ${instrument.name}: ` : '';
      return { error: where + read.error.message };
    }
    tunings.set(instrument, read.value);
  }
  return tunings;
}

/** A partial capo sits on strings that the new tuning must have. */
function capoTrouble({ capo }: Header, tuning: Tuning): string | undefined {
  const missing = capo?.strings?.find((number) => number > tuning.strings.length);
  return missing === undefined
    ? undefined
    : `The partial capo lies on string ${missing}, which a tuning of ${tuning.strings.length} strings does not have; change capo first.`;
}

function convertSound(
  document: TabDocument,
  slices: readonly Slice[],
  { tuningFor, name, cautions }: Goal,
  settings: Settings,
): Attempt {
  const headerFor = mapHeaders((header) => ({ ...header, tuning: tuningFor(header) }));
  const places = placeNotes(document, slices, headerFor, 0, settings);
  const there = slices.filter(({ system: { header } }) => sameTuning(header.tuning, tuningFor(header)));
  const report = (unwritten: ReadonlySet<string>): Report => {
    const { entries, reasonOf, fitsAt } = places;
    const unplaced = unplacedNotes(document, entries, reasonOf, unwritten);
    const notesIn = entries.length;
    const kept = notesIn - unplaced.length;
    const remarks = [
      `${notesOutOf(kept, notesIn)} ${verb(kept, notesIn, 'keep their', 'keeps its')} pitch in ${name}.`,
      ...leftOut(unplaced.length),
      ...(fitsAt === undefined
        ? []
        : [`Moved ${halfStepWords(fitsAt)} as a whole, the passage fits without a gap.`]),
      ...(there.length > 0 ? [`What stands in ${name} already stays as it is.`] : []),
      ...cautions,
    ];
    return { notesIn, kept, moved: 0, unplaced, remarks, ...(cautions.length > 0 && { cautions }) };
  };
  return changeOf(
    document,
    slices,
    { header: ({ system }) => headerFor(system.header), place: places.at, keepLabels: false },
    report,
    settings,
  );
}

function nameOf(tunings: ReadonlyMap<Instrument, Tuning>): string {
  const names = [...tunings].map(
    ([instrument, tuning]) => nameOfTuning(tuning, instrument) ?? formatTuning(tuning, instrument),
  );
  return [...new Set(names)].join(' and ');
}

/** The usual cautions where a string goes above the pitch it is usually strung for. */
function cautions(tunings: ReadonlyMap<Instrument, Tuning>): string[] {
  const raised = [...tunings].map(([instrument, tuning]) =>
    Math.max(0, ...stepsFrom(usualTuning(instrument), tuning).map((step) => step ?? 0)),
  );
  const caution = retuningCaution(Math.max(0, ...raised));
  return caution ? [caution] : [];
}
