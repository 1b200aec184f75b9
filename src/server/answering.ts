import type { Connection } from 'vscode-languageserver';
import type { RequestShapes } from './requests';
import type { Guard, Session } from './session';

/** Registers the answer to one of Pegbox's own requests. */
export type Answering = <Name extends keyof RequestShapes>(
  name: Name,
  /** What is answered when something goes wrong. */
  empty: RequestShapes[Name]['answer'],
  answer: (session: Session, params: RequestShapes[Name]['params']) => RequestShapes[Name]['answer'],
) => void;

/**
 * How Pegbox's own requests are answered: under the guard, each with its types.
 * @example const on = answering(connection, guard);
 */
export function answering(connection: Pick<Connection, 'onRequest'>, guard: Guard): Answering {
  return <Name extends keyof RequestShapes>(
    name: Name,
    empty: RequestShapes[Name]['answer'],
    answer: (session: Session, params: RequestShapes[Name]['params']) => RequestShapes[Name]['answer'],
  ) =>
    connection.onRequest<unknown, unknown>(name, (params: RequestShapes[Name]['params']) =>
      guard(name, empty, (session) => answer(session, params)),
    );
}
