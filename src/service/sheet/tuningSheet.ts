import { formatCapo } from '../../instrument/capo';
import { harmonicChecks } from '../../instrument/harmonicChecks';
import { octaveChecks, tuneByFrets } from '../../instrument/tuningFrets';
import { formatTuning, formatTuningNotes, sameTuning } from '../../instrument/tuningFormat';
import { formatKey } from '../../music/key';
import type { Header } from '../../notation/header';
import type { TabDocument } from '../../notation/tabDocument';
import type { Place, Settings } from '../records';
import type { ServiceError } from '../serviceApi';
import { barresAnswer } from './barres';
import { tellCheck, tellHarmonics } from './checkWords';
import { fromTuning, type FromTuning } from './fromTuning';
import { tuningWords } from './noteText';
import { openStringsAnswer, stringRows } from './openStrings';
import { pullUnder } from './pull';
import { retuningAnswer } from './retuning';
import { scaleAnswer } from './scale';
import type { SheetAnswer, SheetRequest, SheetTuning } from './sheetAnswer';
import { slideAnswer } from './slide';
import { capital, listed } from '../hover/text';

/**
 * Everything about the tuning in force at a place: its strings and how to tune them by ear, the way there from another
 * tuning, what straight barres and a slide player's bar give, the frets of the key's scale. Works outside systems too.
 * Errors: a tuning to come from, or a chord to look for, that cannot be read.
 * @example tuningSheet(document, { line: 3, character: 0 }, { from: 'standard' }, settings)
 */
export function tuningSheet(
  document: TabDocument,
  place: Place,
  request: SheetRequest,
  settings: Settings,
): SheetAnswer | ServiceError {
  const header = document.headerAt(place.line);
  const from = fromTuning(document, place.line, request.from, settings);
  if ('error' in from) return from;
  // A cursor that moves under the same fields asks for the same sheet again and again.
  const last = lastSheets.get(header);
  const same =
    last?.from.why === from.why &&
    last.request.from === request.from &&
    // Typed ones are read anew each time; what a name of the user's means may have changed meanwhile.
    (last.from.tuning === from.tuning ||
      (from.why === 'asked' && sameTuning(last.from.tuning, from.tuning))) &&
    last.request.chord === request.chord &&
    last.request.slide === request.slide;
  if (same) return last.sheet;
  const sheet = makeSheet(header, from, request);
  if (!('error' in sheet)) lastSheets.set(header, { from, request, sheet });
  return sheet;
}

/** The last sheet of each header; a header is one record as long as its fields stay as they are. */
const lastSheets = new WeakMap<
  Header,
  { readonly from: FromTuning; readonly request: SheetRequest; readonly sheet: SheetAnswer }
>();

function makeSheet(header: Header, from: FromTuning, request: SheetRequest): SheetAnswer | ServiceError {
  const wantsSlide = header.fretting === 'slide' || request.slide === true || request.chord !== undefined;
  const slide = wantsSlide ? slideAnswer(header, request.chord) : null;
  if (slide && 'error' in slide) return slide;
  const { tuning, frets, referencePitch } = header;
  return {
    tuning: sheetTuning(header),
    open: openStringsAnswer(tuning),
    strings: stringRows(tuning, referencePitch),
    tuneBy: tuneByFrets(tuning, frets).map((check) => tellCheck(check, tuning)),
    octaves: octaveChecks(tuning, frets).map((check) => tellCheck(check, tuning)),
    harmonics: harmonicChecks(tuning, referencePitch).map((check) => tellHarmonics(check, tuning)),
    retuning: retuningAnswer(from, header, pullUnder(header, from.tuning)),
    barres: barresAnswer(header),
    slide,
    scale: scaleAnswer(header),
  };
}

function sheetTuning(header: Header): SheetTuning {
  const { tuning, instrument, referencePitch, key } = header;
  const notes = formatTuningNotes(tuning);
  const capo = capoWords(header);
  const keyText = key ? formatKey(key) : null;
  return {
    name: tuning.name ?? null,
    notes,
    value: formatTuning(tuning, instrument),
    instrument: instrument.name,
    referencePitch,
    capo,
    key: keyText,
    title: capital(`${tuningWords(tuning.name, notes)} on the ${instrument.name}`),
    facts: [
      `A4 = ${referencePitch} Hz`,
      ...(capo === null ? [] : [capo]),
      ...(keyText === null ? [] : [`key of ${keyText}`]),
    ],
  };
}

function capoWords({ capo }: Header): string | null {
  if (!capo) return null;
  if (!capo.strings) return `capo at fret ${formatCapo(capo)}`;
  return `capo at fret ${capo.fret} on strings ${listed(capo.strings.map(String))}`;
}
