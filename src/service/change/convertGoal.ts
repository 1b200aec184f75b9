import { readCapo, type Capo } from '../../instrument/capo';
import type { Instrument } from '../../instrument/instrument';
import { readInstrument } from '../../instrument/instruments';
import { retuningCaution } from '../../instrument/retuningCaution';
import { formatTuning, nameOfTuning, stepsFrom } from '../../instrument/tuningFormat';
import { readTuning } from '../../instrument/tuningValue';
import type { Tuning } from '../../instrument/tuning';
import { readKey, transposeKey, type Key } from '../../music/key';
import { Document } from '../../notation/document';
import type { Header } from '../../notation/header';
import { capoShift, usualTuning } from '../../notation/headerViews';
import type { Settings } from '../records';
import type { ConvertRequest, ServiceError } from '../serviceApi';
import { mapHeaders } from './change';
import { degreeShift } from './keyFunction';
import type { PassageEntry } from './placing';
import { hasStrings, type Slice } from './slices';
import { FARTHEST } from './transpose';

/** Where a passage is carried to. */
export interface Goal {
  readonly tuningFor: (header: Header) => Tuning;
  /** The fields after the change. */
  readonly headerFor: (header: Header) => Header;
  /** As the user is to read it. */
  readonly name: string;
  readonly cautions: readonly string[];
  /** The key to go to, for the function. */
  readonly key: Key | undefined;
  /** Half steps by which everything moves as a whole. */
  readonly by: number;
}

/** Reads what is asked; a sentence when it cannot be done. */
export function goalOf(
  slices: readonly Slice[],
  request: ConvertRequest,
  settings: Settings,
): Goal | ServiceError {
  const unfit = unfitRequest(request);
  if (unfit) return { error: unfit };
  const headers = headersOf(slices);
  const brought = instrumentOf(request);
  if (brought && 'error' in brought) return brought;
  const base = mapHeaders((header) => (brought ? withInstrument(header, brought.header) : header));
  const tunings = tuningsFor(headers.map(base), request, settings);
  if ('error' in tunings) return tunings;
  const key = request.keep === 'function' ? keyFor(headersOf(slices.filter(hasStrings)), request) : undefined;
  if (key && 'error' in key) return key;
  const by = request.by ?? 0;
  const tuningFor = (header: Header): Tuning => tunings.get(base(header).instrument) ?? base(header).tuning;
  const capos = new Map<Header, Capo | undefined>();
  for (const header of headers) {
    const { capo, frets } = base(header);
    const read =
      request.capo === undefined
        ? undefined
        : readCapo(request.capo, tuningFor(header).strings.length, frets);
    if (read && !read.ok) return { error: read.error.message };
    const next = read ? read.value : capo;
    const trouble = capoTrouble(next, tuningFor(header));
    if (trouble) return { error: trouble };
    capos.set(header, next);
  }
  const headerFor = mapHeaders((header) => {
    const own = base(header);
    const tuning = tuningFor(header);
    const capo = capos.has(header) ? capos.get(header) : own.capo;
    const fits = own.gauges?.length === tuning.strings.length;
    const next = { ...own, tuning, capo, gauges: fits ? own.gauges : undefined };
    return { ...next, key: keyAfter(header, next, key, by) };
  });
  return {
    tuningFor,
    headerFor,
    name: nameOf(tunings, headers.map(base)),
    cautions: cautionsFor(tunings),
    key,
    by,
  };
}

function headersOf(slices: readonly Slice[]): Header[] {
  return [...new Set(slices.map(({ system }) => system.header))];
}

/** Half steps by which a note is to sound higher, for the sake of what was asked. */
export function shiftFor({ key, by, headerFor }: Goal): (entry: PassageEntry) => number {
  return ({ slice, note }) => {
    const { header } = slice.system;
    const [pitch] = note.pitches;
    if (!key || !header.key || !pitch) return by;
    const before = capoShift(header);
    // Degrees are named as played; the capo moves what sounds.
    return by + degreeShift(header.key, key, pitch.midi - before) + capoShift(headerFor(header)) - before;
  };
}

/** The written key names what is played: a full capo moves it the other way. */
function keyAfter(before: Header, after: Header, key: Key | undefined, by: number): Key | undefined {
  if (key) return by === 0 ? key : transposeKey(key, by);
  const shift = by + capoShift(before) - capoShift(after);
  return before.key && shift !== 0 ? transposeKey(before.key, shift) : before.key;
}

function unfitRequest({
  keep,
  by,
  closed,
  octaves,
  capo,
  leaveOut,
  key,
}: ConvertRequest): string | undefined {
  if (by !== undefined && !(Number.isInteger(by) && Math.abs(by) <= FARTHEST))
    return `Move the passage by a whole number of half steps from −${FARTHEST} to ${FARTHEST}, such as 2 or -3.`;
  if (keep !== 'shapes') return undefined;
  const extra = by
    ? 'be moved by half steps'
    : closed
      ? 'be closed'
      : octaves
        ? 'go to other octaves'
        : undefined;
  if (extra) return `Shapes stay on their strings and frets and cannot ${extra}; keep the sound instead.`;
  if (capo !== undefined)
    return 'To keep the shapes under another capo, move the capo; or keep the sound instead.';
  if (leaveOut !== undefined || key !== undefined)
    return `${key === undefined ? 'What to leave out' : 'A key to go to'} cannot be asked for where shapes stay; keep the ${key === undefined ? 'sound' : 'function'} instead.`;
  return undefined;
}

function instrumentOf({
  instrument,
}: ConvertRequest): { readonly header: Header } | ServiceError | undefined {
  if (instrument === undefined) return undefined;
  const read = readInstrument(instrument);
  if (!read.ok) return { error: read.error.message };
  return { header: new Document(`instrument: ${read.value.name}\n`).headerAt(0) };
}

/** An instrument brings its tuning, frets, length, gauges and way of fretting, and no capo. */
function withInstrument(header: Header, own: Header): Header {
  if (header.instrument === own.instrument) return header;
  const { instrument, tuning, capo, frets, scaleLength, gauges } = own;
  const lap = instrument.slide ? 'slide' : header.instrument.slide ? 'fingers' : header.fretting;
  return { ...header, instrument, tuning, capo, frets, scaleLength, gauges, fretting: lap };
}

/** A tuning's name means what it does on each instrument; none means the one that each has. */
function tuningsFor(
  headers: readonly Header[],
  request: ConvertRequest,
  settings: Settings,
): Map<Instrument, Tuning> | ServiceError {
  const tunings = new Map<Instrument, Tuning>();
  const instruments = [...new Set(headers.map(({ instrument }) => instrument))];
  for (const instrument of instruments) {
    if (request.tuning === undefined) {
      if (request.instrument !== undefined) tunings.set(instrument, usualTuning(instrument));
      continue;
    }
    const read = readTuning(request.tuning, { instrument, userTunings: settings.tunings });
    if (!read.ok) {
      const where = instruments.length > 1 ? `For the ${instrument.name}: ` : '';
      return { error: where + read.error.message };
    }
    tunings.set(instrument, read.value);
  }
  return tunings;
}

function keyFor(headers: readonly Header[], request: ConvertRequest): Key | ServiceError {
  if (headers.some(({ key }) => key === undefined))
    return {
      error:
        'The passage has no key whose degrees could be kept; write a key: field above it, such as key: D, and try again.',
    };
  if (request.key === undefined || request.key.trim() === '')
    return {
      error: 'Keeping the function needs the key to go to; give one, such as G or E minor.',
      asks: 'key',
    };
  const read = readKey(request.key);
  return read.ok ? read.value : { error: read.error.message };
}

/** A partial capo sits on strings that the new tuning must have. */
function capoTrouble(capo: Capo | undefined, tuning: Tuning): string | undefined {
  const missing = capo?.strings?.find((number) => number > tuning.strings.length);
  return missing === undefined
    ? undefined
    : `The partial capo lies on string ${missing}, which a tuning of ${tuning.strings.length} strings does not have; change capo first.`;
}

function nameOf(tunings: ReadonlyMap<Instrument, Tuning>, headers: readonly Header[]): string {
  const named =
    tunings.size > 0
      ? [...tunings]
      : headers.map(({ instrument, tuning }): [Instrument, Tuning] => [instrument, tuning]);
  const names = named.map(
    ([instrument, tuning]) => nameOfTuning(tuning, instrument) ?? formatTuning(tuning, instrument),
  );
  return [...new Set(names)].join(' and ');
}

/** The usual cautions where a string goes above the pitch it is usually strung for. */
function cautionsFor(tunings: ReadonlyMap<Instrument, Tuning>): string[] {
  const raised = [...tunings].map(([instrument, tuning]) =>
    Math.max(0, ...stepsFrom(usualTuning(instrument), tuning).map((step) => step ?? 0)),
  );
  const caution = retuningCaution(Math.max(0, ...raised));
  return caution ? [caution] : [];
}
