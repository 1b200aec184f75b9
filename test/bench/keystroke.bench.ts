import { barsText, documentFor } from './documents';
import { median, ratios, RUNS, type Row } from './rows';
import { SERVER_TITLES, ServerProcess, type ServerName } from './serverProcess';
import { BAR_COUNTS } from './texts';

/** Pairs of keys to warm up with and pairs to measure: fewer where one takes a second, so that a run stays short. */
const PAIRS: Readonly<Record<ServerName, readonly (readonly [warm: number, measured: number])[]>> = {
  pegbox: [
    [150, 100],
    [150, 100],
    [150, 100],
  ],
  nothing: [
    [150, 100],
    [150, 100],
    [150, 100],
  ],
  json: [
    [150, 100],
    [50, 30],
    [8, 8],
  ],
  css: [
    [100, 40],
    [15, 10],
    [2, 2],
  ],
};

const NAMES = ['pegbox', 'nothing', 'json', 'css'] as const;

/**
 * A key is typed and fresh diagnostics are waited for, as an editor sees it: through the protocol, from the change
 * sent to the diagnostics of its version read. Every key changes the diagnostics, so that none may be passed over.
 */
export async function run(report: (row: Row) => void): Promise<void> {
  const times = new Map<string, number[]>();
  for (let round = 0; round < RUNS; round++) {
    for (const [size, bars] of BAR_COUNTS.entries()) {
      for (const name of NAMES) {
        const [warm, measured] = PAIRS[name][size] ?? [10, 10];
        const key = `${name} ${bars}`;
        const value = await oneRun(name, bars, 1000 * round + bars, warm, measured);
        times.set(key, [...(times.get(key) ?? []), value]);
      }
    }
  }
  const of = (name: ServerName, bars: number): number[] => times.get(`${name} ${bars}`) ?? [];
  for (const bars of BAR_COUNTS) {
    for (const name of NAMES) {
      report({
        what: `key → diagnostics, ${barsText(bars)}, ${SERVER_TITLES[name]}`,
        runs: of(name, bars),
        unit: 'ms',
      });
    }
  }
  report({
    what: 'flat: Pegbox at 10,000 bars / at 100',
    runs: ratios(of('pegbox', 10_000), of('pegbox', 100)),
    unit: '×',
    goal: { atMost: 1.2 },
  });
  for (const bars of BAR_COUNTS) {
    const runs = ratios(of('json', bars), of('pegbox', bars));
    const what = `JSON / Pegbox, ${barsText(bars)}`;
    report(
      bars === 1_000
        ? { what, runs, unit: '×', goal: { atLeast: 20, alarmUnder: 12 } }
        : { what, runs, unit: '×' },
    );
  }
  for (const bars of BAR_COUNTS) {
    const what = `CSS / Pegbox, ${barsText(bars)}`;
    report({ what, runs: ratios(of('css', bars), of('pegbox', bars)), unit: '×' });
  }
  for (const bars of BAR_COUNTS) {
    const what = `Pegbox / does nothing, ${barsText(bars)}`;
    report({ what, runs: ratios(of('pegbox', bars), of('nothing', bars)), unit: '×' });
  }
}

async function oneRun(
  name: ServerName,
  bars: number,
  seed: number,
  warm: number,
  measured: number,
): Promise<number> {
  const document = documentFor(name, bars, seed);
  const server = new ServerProcess(name);
  await server.initialize();
  await server.open(document);
  const times: number[] = [];
  for (let i = 0; i < warm + measured; i++) {
    const [wrong, right] = document.nextKeys();
    const begun = performance.now();
    const worse = await server.type(wrong);
    const between = performance.now();
    const better = await server.type(right);
    const done = performance.now();
    if (name !== 'nothing' && worse.length <= better.length)
      throw new Error(
        `${name} does not tell the problem that was typed: ${worse.length} diagnostics, then ${better.length}.`,
      );
    if (i >= warm) times.push(between - begun, done - between);
  }
  await server.stop();
  return median(times);
}
