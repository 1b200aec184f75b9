import assert from 'node:assert/strict';
import { performance } from 'node:perf_hooks';
import {
  CancellationTokenSource,
  LSPErrorCodes,
  ResponseError,
  WorkDoneProgress,
  type Hover,
  type WorkDoneProgressBegin,
  type WorkDoneProgressEnd,
  type WorkDoneProgressReport,
} from 'vscode-languageserver/node';
import type { SuitAnswer } from '../../src/server/requests';
import type { SuitResult } from '../../src/service/serviceApi';
import { range, TestClient } from './testClient';
import { FRET_4, LANTERN } from './texts';

const SHORT = 'file:///lantern.pegbox';
const LONG = 'file:///ferry.pegbox';

/** Two voices over sixteen bars: the search through the retunings of two half steps takes seconds. */
const FERRY = `title:  Ferry at Low Water
tuning: standard

${[0, 1, 2, 3]
  .map(
    (n) => `E4 |${n}---3---5---3---|0-------2---${n}---|3---2---0-------|${n}---5---7---5---|
B3 |----${n}-------3---|----3-------1---|0-------${n}---3---|----5-------8---|
G3 |--${n}-------2-----|--2-------0-----|--0---2---------|--4---${n}---5-----|
D3 |----------------|------4---------|------${n}---0-----|--------7-------|
A2 |${n}-------0-------|--------${n}-------|2-------0-------|----------------|
E2 |----3-----------|3---------------|----${n}-----------|5-------7-------|
`,
  )
  .join('\n')}`;

type Told = WorkDoneProgressBegin | WorkDoneProgressReport | WorkDoneProgressEnd;

describe('which tuning suits a passage', () => {
  let client: TestClient;
  beforeEach(async () => {
    client = await TestClient.start();
    await client.opened(SHORT, LANTERN);
    await client.opened(LONG, FERRY);
  });
  afterEach(async () => {
    assert.equal(await client.stop(), 0);
    assert.deepEqual(client.log, []);
  });

  async function found(params: object): Promise<SuitResult & { readonly version: number }> {
    const answer = await client.request<SuitAnswer>('pegbox/suit', params);
    assert.ok(!('error' in answer), JSON.stringify(answer));
    return answer;
  }

  function listen(token: string): Told[] {
    const told: Told[] = [];
    client.connection.onProgress(WorkDoneProgress.type, token, (value) => void told.push(value));
    return told;
  }

  /** Until the search has told how far it is. */
  async function atWork(told: readonly Told[]): Promise<void> {
    const start = performance.now();
    while (!told.some(({ kind }) => kind === 'report')) {
      assert.ok(performance.now() - start < 10_000, 'no progress in 10 s');
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  }

  async function hovered(): Promise<void> {
    const hover = await client.request<Hover>('textDocument/hover', {
      textDocument: { uri: SHORT },
      position: FRET_4,
    });
    assert.ok(hover.range);
  }

  it('is answered for the version of the text, the passage as it stands and the best among them', async () => {
    const { version, here, best, named, byStringsChanged, ...counts } = await found({
      uri: SHORT,
      within: 1,
    });
    assert.equal(version, 1);
    assert.equal(counts.total, counts.evaluated + counts.unplayable + counts.ruledOut);
    assert.ok(here?.cost !== undefined && here.cost !== null);
    const [first] = best;
    assert.ok(first?.cost !== undefined && first.cost !== null && first.cost <= here.cost);
    assert.equal(byStringsChanged[0]?.tuning.notes, here.notes); // no string changed: as it stands
    assert.ok(named.some(({ name }) => name === 'DADGAD'));
    assert.ok(counts.remarks.length > 0);
  });

  it('is asked of a range as of a file', async () => {
    const whole = await found({ uri: LONG, within: 0 });
    const part = await found({ uri: LONG, within: 0, range: range(3, 4, 3, 8) });
    assert.ok((part.here?.cost ?? Infinity) < (whole.here?.cost ?? 0));
  });

  it('tells how far it is: a beginning, steps that never go back, an end', async () => {
    const told = listen('ferry');
    await found({ uri: LONG, within: 1, workDoneToken: 'ferry' });
    assert.equal(told[0]?.kind, 'begin');
    assert.equal(told.at(-1)?.kind, 'end');
    const steps = told.flatMap((value) => (value.kind === 'report' ? [value.percentage ?? -1] : []));
    assert.ok(steps.length > 0);
    assert.deepEqual(
      steps,
      [...steps].sort((one, other) => one - other),
    );
    assert.ok(steps.every((step) => step >= 0 && step <= 100));
  });

  it('tells nothing to a client that did not ask to be told', async () => {
    const told: unknown[] = [];
    client.connection.onUnhandledProgress((value) => void told.push(value));
    await found({ uri: SHORT, within: 1 });
    await found({ uri: SHORT, within: 0, workDoneToken: { not: 'a token' } });
    assert.deepEqual(told, []);
  });

  it('answers hovers meanwhile', async () => {
    const told = listen('ferry');
    const source = new CancellationTokenSource();
    let over = false;
    const params = { uri: LONG, within: 3, workDoneToken: 'ferry' };
    const search = client.connection
      .sendRequest<SuitAnswer>('pegbox/suit', params, source.token)
      .catch((error: unknown) => error)
      .finally(() => (over = true));
    await atWork(told);
    // One after the other, so that each has to find its turn between two slices of the search.
    for (let n = 0; n < 10; n++) await hovered();
    assert.equal(over, false, 'the search was over before the hovers were answered');
    source.cancel();
    assert.ok((await search) instanceof ResponseError);
  });

  it('is for the text that it was asked about, whatever is edited meanwhile', async () => {
    const calm = await found({ uri: LONG, within: 1 });
    const told = listen('ferry');
    const search = found({ uri: LONG, within: 1, workDoneToken: 'ferry' });
    await atWork(told);
    const version = await client.change(LONG, { text: LANTERN });
    const edited = await search;
    assert.ok(edited.version < version);
    assert.deepEqual(edited, calm);
  });

  it('stops when it is cancelled, before ten hovers are answered, and is over', async () => {
    const told = listen('ferry');
    const source = new CancellationTokenSource();
    const search = client.connection.sendRequest<SuitAnswer>(
      'pegbox/suit',
      { uri: LONG, within: 3, anyKey: true, workDoneToken: 'ferry' },
      source.token,
    );
    let over = false;
    const refused = search
      .then(
        () => assert.fail('the search was answered'),
        (error: unknown) => error,
      )
      .finally(() => (over = true));
    await atWork(told);
    source.cancel();
    // Hovers are answered between its slices: one that went on would outlast them, by far.
    for (let n = 0; n < 10; n++) await hovered();
    assert.equal(over, true, 'the search went on after it was cancelled');
    const error = await refused;
    assert.ok(error instanceof ResponseError);
    assert.equal(error.code, LSPErrorCodes.RequestCancelled);
    assert.equal(told.at(-1)?.kind, 'end');
    const { length } = told;
    await new Promise((resolve) => setTimeout(resolve, 300));
    assert.equal(told.length, length);
  });
});
