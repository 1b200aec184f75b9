import type { Connection } from 'vscode-languageserver';
import { answering } from './answering';
import { CLOSED, FAILED, LAYOUT, SHAPE_WISHES } from './changeRequests';
import { clampPlace, clampRange } from './documents';
import { fromPosition, fromRange } from './protocolConverter';
import { FLAG, FRETS, NUMBER, oneOf, readParams, TEXT } from './readParams';
import { REQUESTS } from './requests';
import type { Guard } from './session';

const NECK = { scale: TEXT, chord: TEXT, frets: NUMBER, known: TEXT };
const NECK_PICTURE = {
  scale: TEXT,
  chord: TEXT,
  frets: NUMBER,
  labels: oneOf('notes', 'degrees', 'intervals'),
  every: FLAG,
  leftHanded: FLAG,
  upright: FLAG,
};

const NEW_TAB = { ...LAYOUT, instrument: TEXT, tuning: TEXT, meter: TEXT };

const SHEET = { from: TEXT, chord: TEXT, slide: FLAG };

const SHAPE_KIN = { chord: TEXT, frets: FRETS };
const SHAPES = { chord: TEXT, limit: NUMBER, highestFret: NUMBER };

const SINGER = {
  voice: TEXT,
  compass: TEXT,
  key: TEXT,
  tunePart: TEXT,
  low: TEXT,
  high: TEXT,
  highestCapo: NUMBER,
};

/** Answers the requests that only tell something and change no text. */
export function registerTellRequests(connection: Pick<Connection, 'onRequest'>, guard: Guard): void {
  const on = answering(connection, guard);

  on(REQUESTS.fitSinger, FAILED, ({ store, service, settings }, params) => {
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, SINGER);
    if ('error' in read) return read;
    const range = params.range && clampRange(open.document, fromRange(params.range));
    return service.fitSinger(open.document, { range, ...read }, settings);
  });

  on(REQUESTS.copyBars, FAILED, ({ store, service }, params) => {
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    return service.copyBars(open.document, clampRange(open.document, fromRange(params.range)));
  });

  on(REQUESTS.newTab, FAILED, ({ service, settings }, params) => {
    const read = readParams(params, NEW_TAB);
    return 'error' in read ? read : service.newTab(read, settings);
  });

  on(REQUESTS.instruments, [], ({ service }) => service.instruments());

  on(REQUESTS.startingTunings, FAILED, ({ service, settings }, params) => {
    const read = readParams(params, { instrument: TEXT });
    return 'error' in read ? read : service.startingTunings(read.instrument, settings);
  });

  on(REQUESTS.noteNames, FAILED, ({ store, service }, params) => {
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, { octaves: FLAG });
    if ('error' in read) return read;
    return { ...service.noteNames(open.document, read), version: open.version };
  });

  on(REQUESTS.chordChart, FAILED, ({ store, service, settings }, params) => {
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, SHAPE_WISHES);
    if ('error' in read) return read;
    const range = params.range && clampRange(open.document, fromRange(params.range));
    return service.chordChart(open.document, { range, ...read }, settings);
  });

  on(REQUESTS.ringing, FAILED, ({ store, service, settings }, { uri, position, range }) => {
    const open = store.get(uri);
    if (!open) return CLOSED;
    const where = {
      ...(position && { place: clampPlace(open.document, fromPosition(position)) }),
      ...(range && { range: clampRange(open.document, fromRange(range)) }),
    };
    return service.ringing(open.document, where, settings);
  });

  on(REQUESTS.strings, FAILED, ({ store, service, settings }, { uri, position }) => {
    const open = store.get(uri);
    if (!open) return CLOSED;
    return service.strings(open.document, clampPlace(open.document, fromPosition(position)), settings);
  });

  on(REQUESTS.shapeKin, FAILED, ({ store, service, settings }, params) => {
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, SHAPE_KIN);
    if ('error' in read) return read;
    const { frets, chord = '' } = read;
    const place = clampPlace(open.document, fromPosition(params.position));
    return service.shapeKin(open.document, place, frets ? { frets } : { chord }, settings);
  });

  on(REQUESTS.songShapes, FAILED, ({ store, service, settings }, params) => {
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    const range = params.range ? clampRange(open.document, fromRange(params.range)) : undefined;
    return service.songShapes(open.document, range, settings);
  });

  on(REQUESTS.shapes, FAILED, ({ store, service, settings }, params) => {
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, SHAPES);
    if ('error' in read) return read;
    const place = clampPlace(open.document, fromPosition(params.position));
    return service.shapes(open.document, place, { ...read, chord: read.chord ?? '' }, settings);
  });

  on(REQUESTS.tuningSheet, FAILED, ({ store, service, settings }, params) => {
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, SHEET);
    if ('error' in read) return read;
    const place = clampPlace(open.document, fromPosition(params.position));
    return service.tuningSheet(open.document, place, read, settings);
  });

  on(REQUESTS.tuningHandout, FAILED, ({ store, service, settings }, params) => {
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, SHEET);
    if ('error' in read) return read;
    const place = clampPlace(open.document, fromPosition(params.position));
    return service.tuningHandout(open.document, place, read, settings);
  });

  on(REQUESTS.neck, FAILED, ({ store, service, settings }, params) => {
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, NECK);
    if ('error' in read) return read;
    const place = clampPlace(open.document, fromPosition(params.position));
    return service.neck(open.document, place, read, settings);
  });

  on(REQUESTS.neckSvg, FAILED, ({ store, service, settings }, params) => {
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, NECK_PICTURE);
    if ('error' in read) return read;
    const place = clampPlace(open.document, fromPosition(params.position));
    return service.neckSvg(open.document, place, read, settings);
  });

  on(REQUESTS.compare, FAILED, ({ store, service, settings }, params) => {
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, { before: TEXT });
    if ('error' in read) return read;
    if (read.before === undefined) return { error: 'The parameter before was expected as text.' };
    return service.compare(service.open(read.before, settings), open.document);
  });

  on(REQUESTS.chordAt, null, ({ store, service }, { uri, position }) => {
    const open = store.get(uri);
    return open
      ? (service.chordAt(open.document, clampPlace(open.document, fromPosition(position))) ?? null)
      : null;
  });
}
