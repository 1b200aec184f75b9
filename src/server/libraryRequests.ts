import type { Connection } from 'vscode-languageserver';
import { answering } from './answering';
import type { FileFound, ListedFile } from './requests';
import { CLOSED, FAILED } from './changeRequests';
import { clampRange } from './documents';
import { FileShelf } from './fileShelf';
import { fromRange } from './protocolConverter';
import { FLAG, oneOf, readParams } from './readParams';
import { REQUESTS } from './requests';
import type { Guard, Session } from './session';

const WISH = { by: oneOf('tune', 'chords'), rhythm: FLAG, over: FLAG };

const UNREADABLE = { error: 'The parameter files was expected as a list of addresses and stamps.' };

/** Answers what goes over many files: what is in them, and where they sound like a selection. */
export function registerLibraryRequests(connection: Pick<Connection, 'onRequest'>, guard: Guard): void {
  const shelves = new WeakMap<Session, FileShelf>();
  const shelfOf = (session: Session): FileShelf => {
    let shelf = shelves.get(session);
    if (!shelf)
      shelves.set(session, (shelf = new FileShelf(session.service, session.store, () => session.settings)));
    return shelf;
  };
  const on = answering(connection, guard);

  on(REQUESTS.readFiles, {}, (session, params) => {
    const shelf = shelfOf(session);
    const files: unknown = params.files;
    if (!Array.isArray(files)) return UNREADABLE;
    for (const file of files) {
      const [uri, stamp, text] = [textIn(file, 'uri'), textIn(file, 'stamp'), textIn(file, 'text')];
      if (uri === undefined || stamp === undefined || text === undefined) return UNREADABLE;
      shelf.put(uri, stamp, text);
    }
    return {};
  });

  on(REQUESTS.library, FAILED, (session, params) => {
    const shelf = shelfOf(session);
    const files = listed(params.files);
    if (!files) return UNREADABLE;
    shelf.only(new Set(files.map(({ uri }) => uri)));
    const known = files.map((file) => ({ ...file, shelved: shelf.get(file.uri, file.stamp) }));
    return {
      files: known.flatMap(({ uri, shelved }) => (shelved ? [{ uri, entry: shelved.entry }] : [])),
      missing: known.flatMap(({ uri, shelved }) => (shelved ? [] : [uri])),
    };
  });

  on(REQUESTS.findBySound, FAILED, (session, params) => {
    const { store, service } = session;
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, WISH);
    if ('error' in read) return read;
    const files = listed(params.files);
    const sent: unknown = params.ranges;
    if (!files || !Array.isArray(sent)) return UNREADABLE;
    const ranges = params.ranges.map((range) => clampRange(open.document, fromRange(range)));
    const pattern = service.soundPattern(open.document, ranges);
    if ('error' in pattern) return pattern;
    const shelf = shelfOf(session);
    const found: FileFound[] = [];
    const missing: string[] = [];
    for (const { uri, stamp } of files) {
      const shelved = shelf.get(uri, stamp);
      if (!shelved) {
        missing.push(uri);
        continue;
      }
      const passages = service.findBySound(pattern, shelved.index, read, uri === open.uri);
      if ('error' in passages) return passages;
      if (passages.length > 0) found.push({ uri, title: shelved.entry.title, passages });
    }
    return { name: pattern.name, together: pattern.together, found, missing };
  });
}

function textIn(file: unknown, name: string): string | undefined {
  if (typeof file !== 'object' || file === null) return undefined;
  const value: unknown = Object.entries(file).find(([key]) => key === name)?.[1];
  return typeof value === 'string' ? value : undefined;
}

function listed(files: unknown): readonly ListedFile[] | undefined {
  if (!Array.isArray(files)) return undefined;
  const read = files.map((file: unknown) => ({ uri: textIn(file, 'uri'), stamp: textIn(file, 'stamp') }));
  const whole = read.flatMap(({ uri, stamp }) =>
    uri === undefined || stamp === undefined ? [] : [{ uri, stamp }],
  );
  return whole.length === read.length ? whole : undefined;
}
