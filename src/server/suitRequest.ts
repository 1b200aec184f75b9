import {
  LSPErrorCodes,
  ResponseError,
  WorkDoneProgress,
  type CancellationToken,
  type Connection,
  type ProgressToken,
  type WorkDoneProgressBegin,
  type WorkDoneProgressEnd,
  type WorkDoneProgressReport,
} from 'vscode-languageserver';
import type { SuitStep } from '../service/serviceApi';
import { CLOSED, FAILED } from './changeRequests';
import type { Later } from './diagnosticsPublisher';
import { clampRange, type OpenDocument } from './documents';
import { inSlices } from './inSlices';
import { fromRange } from './protocolConverter';
import { FLAG, NUMBER, readParams } from './readParams';
import { REQUESTS, type SuitAnswer, type SuitParams } from './requests';
import type { Guard, Session } from './session';

type SuitConnection = Pick<Connection, 'onRequest' | 'sendProgress'>;
type Answer = SuitAnswer | ResponseError;

const SUIT = { within: NUMBER, anyKey: FLAG, keep: NUMBER };

/** The share of the named tunings in the work, in hundredths: there are some tens of them, and thousands of retunings. */
const NAMED = 10;

/** Progress is told no more often than this, in milliseconds. */
const TELL_EVERY = 100;

/** Answers which tuning suits a passage. Others are answered meanwhile, and it stops when it is cancelled. */
export function registerSuitRequest(connection: SuitConnection, guard: Guard, later: Later): void {
  connection.onRequest<unknown, unknown>(
    REQUESTS.suit,
    (params: SuitParams, cancellation: CancellationToken) =>
      guard<Answer>(REQUESTS.suit, FAILED, (session) =>
        suit(session, params, connection, later, cancellation),
      ),
  );
}

async function suit(
  session: Session,
  params: SuitParams,
  connection: SuitConnection,
  later: Later,
  cancellation: CancellationToken,
): Promise<Answer> {
  const open = session.store.get(params.uri);
  if (!open) return CLOSED;
  const read = readParams(params, SUIT);
  if ('error' in read) return read;
  const { version } = open;
  const range = params.range ? clampRange(open.document, fromRange(params.range)) : undefined;
  // A text of its own: the document may be edited while the search goes on.
  const text = session.service.open(textOf(open), session.settings);
  const search = session.service.suit(text, { range, ...read }, session.settings);
  const progress = new Progress(connection, params.workDoneToken);
  try {
    const found = await inSlices(search, later, cancellation, (step) => progress.tell(step));
    if (found === undefined)
      return new ResponseError(LSPErrorCodes.RequestCancelled, 'The search was called off.');
    return 'error' in found ? found : { version, ...found };
  } finally {
    progress.end();
  }
}

function textOf({ document }: OpenDocument): string {
  return Array.from({ length: document.lineCount }, (_, line) => document.line(line).text).join('\n');
}

/** What a client that gave a token is told: a beginning, how far the search has come, an end. */
class Progress {
  private readonly token: ProgressToken | undefined;
  private told = 0;

  constructor(
    private readonly connection: SuitConnection,
    token: unknown,
  ) {
    this.token = typeof token === 'string' || typeof token === 'number' ? token : undefined;
    this.send({ kind: 'begin', title: 'Which tuning suits this passage', cancellable: true, percentage: 0 });
  }

  tell({ done, total, phase }: SuitStep): void {
    const now = Date.now();
    if (now - this.told < TELL_EVERY) return;
    this.told = now;
    const share = total > 0 ? Math.min(1, done / total) : 1;
    const percentage = Math.floor(phase === 'named' ? share * NAMED : NAMED + share * (100 - NAMED));
    const what = phase === 'named' ? 'named tunings' : 'retunings';
    this.send({ kind: 'report', percentage, message: `${inWords(done)} of ${inWords(total)} ${what}` });
  }

  end(): void {
    this.send({ kind: 'end' });
  }

  private send(value: WorkDoneProgressBegin | WorkDoneProgressReport | WorkDoneProgressEnd): void {
    if (this.token === undefined) return;
    void this.connection.sendProgress(WorkDoneProgress.type, this.token, value);
  }
}

function inWords(count: number): string {
  return count.toLocaleString('en');
}
