import type { Connection } from 'vscode-languageserver';
import { answering } from './answering';
import { COLUMN_ACTIONS, OVER_BAR, SHIFT_STEPS } from '../service/columns/columnsRequest';
import type { Range } from '../service/records';
import type { ChangeResult, ServiceError } from '../service/serviceApi';
import { LAYOUT_ROWS } from '../service/start/startAnswer';
import { clampPlace, clampRange, type OpenDocument } from './documents';
import { fromPosition, fromRange, toChangeAnswer } from './protocolConverter';
import {
  FLAG,
  FRETS,
  NUMBER,
  NUMBERS,
  oneOf,
  RANGES,
  readParams,
  someOf,
  TEXT,
  type Kind,
} from './readParams';
import { REQUESTS, type ChangeAnswer } from './requests';
import type { Guard, Session } from './session';

const CONVERT = {
  tuning: TEXT,
  keep: oneOf('sound', 'shapes', 'function'),
  key: TEXT,
  objective: oneOf('total', 'hardest'),
  alternatives: NUMBER,
  instrument: TEXT,
  newPart: TEXT,
  closed: FLAG,
  by: NUMBER,
  capo: TEXT,
  octaves: FLAG,
  leaveOut: oneOf('doubled'),
};

const REFINGER = {
  objective: oneOf('lower', 'open', 'strings', 'hardest', 'closed'),
  strings: NUMBERS,
  alternatives: NUMBER,
};

const FIT = { capoBy: NUMBER, tuningBy: NUMBER };

const SIMPLIFY = { span: NUMBER, speed: NUMBER, barres: FLAG, fingers: NUMBER, highestFret: NUMBER };

const WRITE_NOTES = { text: TEXT, value: TEXT, key: TEXT, inTheWay: oneOf('new bars') };

/** The fret of the index finger, or the open position. */
const NUMBER_OR_OPEN: Kind<number | 'open'> = {
  fits: (value): value is number | 'open' => value === 'open' || NUMBER.fits(value),
  expected: 'a number or open',
};

const WRITE_EXERCISE = {
  scale: TEXT,
  chord: TEXT,
  inPosition: NUMBER_OR_OPEN,
  octaves: NUMBER,
  direction: oneOf('up', 'down', 'up and down'),
  value: TEXT,
  fingers: FLAG,
};

/** How an empty system is laid out. */
export const LAYOUT = { bars: NUMBER, columns: NUMBER, rows: someOf(...LAYOUT_ROWS) };

const COLUMNS = {
  action: oneOf(...COLUMN_ACTIONS),
  ranges: RANGES,
  step: oneOf(...SHIFT_STEPS),
  overBar: oneOf(...OVER_BAR),
  width: NUMBER,
  text: TEXT,
  withNotes: FLAG,
};

const PUT_FRET = { string: NUMBER, fret: NUMBER };

/** How shapes are chosen for the names of chords. */
export const SHAPE_WISHES = { style: oneOf('full', 'small'), highestFret: NUMBER, open: FLAG };
const FILL = { ...SHAPE_WISHES, strum: oneOf('once', 'beats') };
const SECOND_GUITAR = { ...FILL, name: TEXT, tuning: TEXT, capo: TEXT };

const INSERT_SHAPE = { frets: FRETS, chord: TEXT };

export const CLOSED: ServiceError = { error: 'This document is not open, so Pegbox has no text to work on.' };
export const FAILED: ServiceError = { error: 'Pegbox could not do this; the reason is in its output.' };

/** Answers the requests of Pegbox's own commands. */
export function registerChangeRequests(connection: Pick<Connection, 'onRequest'>, guard: Guard): void {
  const on = answering(connection, guard);

  on(REQUESTS.convert, FAILED, (session, params) =>
    change(session, params, (open, range) => {
      const read = readParams(params, CONVERT);
      if ('error' in read) return read;
      return session.service.convert(open.document, { range, ...read }, session.settings);
    }),
  );

  on(REQUESTS.refinger, FAILED, (session, params) =>
    change(session, params, (open, range) => {
      const read = readParams(params, REFINGER);
      if ('error' in read) return read;
      const { objective, ...more } = read;
      if (objective === undefined)
        return { error: `The parameter objective was expected as ${REFINGER.objective.expected}.` };
      return session.service.refinger(open.document, { range, objective, ...more }, session.settings);
    }),
  );

  on(REQUESTS.simplify, FAILED, (session, params) =>
    change(session, params, (open, range) => {
      const read = readParams(params, SIMPLIFY);
      if ('error' in read) return read;
      return session.service.simplify(open.document, { range, ...read }, session.settings);
    }),
  );

  on(REQUESTS.applyFit, FAILED, (session, params) =>
    change(session, params, (open, range) => {
      const read = readParams(params, FIT);
      if ('error' in read) return read;
      const { capoBy = 0, tuningBy = 0 } = read;
      return session.service.applyFit(open.document, { range, capoBy, tuningBy }, session.settings);
    }),
  );

  on(REQUESTS.fillChords, FAILED, (session, params) =>
    change(session, params, (open, range) => {
      const read = readParams(params, FILL);
      if ('error' in read) return read;
      return session.service.fillChords(open.document, { range, ...read }, session.settings);
    }),
  );

  on(REQUESTS.secondGuitar, FAILED, (session, params) =>
    change(session, params, (open, range) => {
      const read = readParams(params, SECOND_GUITAR);
      if ('error' in read) return read;
      const { name = '', ...more } = read;
      return session.service.secondGuitar(open.document, { range, name, ...more }, session.settings);
    }),
  );

  on(REQUESTS.writeChords, FAILED, (session, params) =>
    change(session, params, (open, range) => {
      const read = readParams(params, { replace: FLAG });
      if ('error' in read) return read;
      return session.service.writeChords(open.document, { range, ...read });
    }),
  );

  on(REQUESTS.columns, FAILED, (session, params) =>
    change(session, params, (open, range) => {
      const read = readParams(params, COLUMNS);
      if ('error' in read) return read;
      const { action, ranges, ...rest } = read;
      const more = {
        ...rest,
        ...(ranges && { ranges: ranges.map((one) => clampRange(open.document, fromRange(one))) }),
      };
      if (action === undefined)
        return { error: `The parameter action was expected as ${COLUMNS.action.expected}.` };
      if (range === undefined) return { error: 'The parameter range was expected: where the cursor stands.' };
      return session.service.columns(open.document, { action, range, ...more }, session.settings);
    }),
  );

  on(REQUESTS.insertSystem, FAILED, (session, params) => {
    const open = session.store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, LAYOUT);
    if ('error' in read) return read;
    const place = clampPlace(open.document, fromPosition(params.position));
    return toChangeAnswer(session.service.insertSystem(open.document, place, read), open.version);
  });

  on(REQUESTS.transpose, FAILED, (session, params) =>
    change(session, params, (open, range) => {
      const by = typeof params.by === 'number' ? params.by : textOf(params.by);
      return session.service.transpose(open.document, { range, by }, session.settings);
    }),
  );

  on(REQUESTS.moveCapo, FAILED, (session, params) =>
    change(session, params, (open, range) => {
      const capo = textOf(params.capo);
      const keep = params.keep === 'shapes' ? 'shapes' : 'sound';
      return session.service.moveCapo(open.document, { range, capo, keep }, session.settings);
    }),
  );

  on(REQUESTS.insertShape, FAILED, (session, params) => {
    const open = session.store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, INSERT_SHAPE);
    if ('error' in read) return read;
    const { frets, chord } = read;
    if (!frets) return { error: `The parameter frets was expected as ${FRETS.expected}.` };
    const place = clampPlace(open.document, fromPosition(params.position));
    const request = { frets, ...(chord !== undefined && { chord }) };
    return toChangeAnswer(session.service.insertShape(open.document, place, request), open.version);
  });

  on(REQUESTS.putFret, FAILED, (session, params) => {
    const open = session.store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, PUT_FRET);
    if ('error' in read) return read;
    const { string, fret } = read;
    if (string === undefined || fret === undefined)
      return { error: 'The parameters string and fret were expected as numbers.' };
    const place = clampPlace(open.document, fromPosition(params.position));
    return toChangeAnswer(
      session.service.putFret(open.document, place, { string, fret }, session.settings),
      open.version,
    );
  });

  on(REQUESTS.writeNotes, FAILED, (session, params) => {
    const open = session.store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, WRITE_NOTES);
    if ('error' in read) return read;
    const place = clampPlace(open.document, fromPosition(params.position));
    const request = { ...read, text: textOf(read.text) };
    return toChangeAnswer(
      session.service.writeNotes(open.document, place, request, session.settings),
      open.version,
    );
  });

  on(REQUESTS.writeExercise, FAILED, (session, params) => {
    const open = session.store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, WRITE_EXERCISE);
    if ('error' in read) return read;
    const place = clampPlace(open.document, fromPosition(params.position));
    return toChangeAnswer(
      session.service.writeExercise(open.document, place, read, session.settings),
      open.version,
    );
  });

  on(REQUESTS.passages, { passages: [] }, (session, params) => {
    const open = session.store.get(params.uri);
    if (!open) return { passages: [] };
    const selection = clampRange(open.document, fromRange(params.selection));
    return { passages: session.service.passages(open.document, selection) };
  });

  on(REQUESTS.counterpart, {}, (session, params) => {
    const open = session.store.get(params.uri);
    const there = session.store.get(params.there);
    if (!open || !there) return {};
    const place = clampPlace(open.document, fromPosition(params.position));
    const passage = session.service.counterpart(open.document, place, there.document);
    return passage ? { passage } : {};
  });

  on(REQUESTS.tuningChoices, [], (session, params) => {
    const open = session.store.get(params.uri);
    if (!open) return [];
    const place = clampPlace(open.document, fromPosition(params.position));
    return session.service.tuningChoices(open.document, place, session.settings);
  });

  on(REQUESTS.grip, null, (session, params) => {
    const open = session.store.get(params.uri);
    if (!open) return null;
    const place = clampPlace(open.document, fromPosition(params.position));
    return session.service.grip(open.document, place, session.settings) ?? null;
  });

  on(REQUESTS.readTuning, FAILED, (session, params) => {
    const open = session.store.get(params.uri);
    if (!open) return CLOSED;
    const { line } = clampPlace(open.document, fromPosition(params.position));
    const { instrument } = open.document.headerAt(line);
    return session.service.tuning(textOf(params.value), instrument.name, session.settings);
  });
}

/** A client may send what it likes; what is no text is read as none, which the service answers with a sentence. */
function textOf(value: unknown): string {
  return typeof value === 'string' ? value : '';
}

function change(
  session: Session,
  params: { readonly uri: string; readonly range?: Parameters<typeof fromRange>[0] | undefined },
  make: (open: OpenDocument, range: Range | undefined) => ChangeResult,
): ChangeAnswer {
  const open = session.store.get(params.uri);
  if (!open) return CLOSED;
  const range = params.range ? clampRange(open.document, fromRange(params.range)) : undefined;
  return toChangeAnswer(make(open, range), open.version);
}
