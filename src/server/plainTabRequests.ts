import type { Connection } from 'vscode-languageserver';
import { answering } from './answering';
import { CLOSED, FAILED } from './changeRequests';
import { clampRange } from './documents';
import { fromRange, toTextEdit } from './protocolConverter';
import { readParams, TEXT } from './readParams';
import { REQUESTS } from './requests';
import type { Guard } from './session';

const IMPORT = { text: TEXT, instrument: TEXT, tuning: TEXT };

/** Characters; more than anyone pastes, and a few seconds' work. An engineering value. */
const LONGEST_PASTE = 2_000_000;

const TOO_LONG = {
  error: 'The text to paste has more than 2 million characters, so nothing was done: paste it in parts.',
};

const NO_TEXT = { error: 'The parameter text was expected as text.' };

/** Answers what reads and writes plain tab. */
export function registerPlainTabRequests(connection: Pick<Connection, 'onRequest'>, guard: Guard): void {
  const on = answering(connection, guard);

  on(REQUESTS.importTab, FAILED, ({ plainTab, settings }, params) => {
    const read = readParams(params, IMPORT);
    if ('error' in read) return read;
    const { text, ...more } = read;
    if (text === undefined) return NO_TEXT;
    const answer = plainTab.read(text, { ...more, settings });
    const { fields, body, guesses, kept, systems } = answer;
    return { text: answer.text, fields, body, guesses, kept, systems };
  });

  on(REQUESTS.pasteTab, FAILED, ({ store, plainTab, settings }, params) => {
    const open = store.get(params.uri);
    if (!open) return CLOSED;
    const read = readParams(params, IMPORT);
    if ('error' in read) return read;
    const { text, ...more } = read;
    if (text === undefined) return NO_TEXT;
    if (text.length > LONGEST_PASTE) return TOO_LONG;
    const range = clampRange(open.document, fromRange(params.range));
    const paste = plainTab.paste(open.document, range, { text, ...more }, settings);
    return { ...paste, version: open.version, edits: paste.edits.map(toTextEdit) };
  });

  on(REQUESTS.plainText, FAILED, ({ store, plainTab }, { uri, range }) => {
    const open = store.get(uri);
    if (!open) return CLOSED;
    return plainTab.write(open.document, range && clampRange(open.document, fromRange(range)));
  });
}
