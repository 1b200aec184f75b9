import { setTimeout as wait } from 'node:timers/promises';
import { barsText, documentFor } from './documents';
import { ratios, RUNS, type Row } from './rows';
import { SERVER_TITLES, ServerProcess, type ServerName } from './serverProcess';
import { BAR_COUNTS } from './texts';

const NAMES = ['pegbox', 'nothing', 'json', 'css'] as const;

/** A server that was started a moment ago is quiet after this time, in milliseconds. */
const QUIET = 250;

/** Opening the first document of a fresh server: how long until its diagnostics are there. */
export async function run(report: (row: Row) => void): Promise<void> {
  const times = new Map<string, number[]>();
  for (let round = 0; round < RUNS; round++) {
    for (const bars of BAR_COUNTS) {
      for (const name of NAMES) {
        const key = `${name} ${bars}`;
        times.set(key, [...(times.get(key) ?? []), await oneRun(name, bars, 1000 * round + bars)]);
      }
    }
  }
  for (const bars of BAR_COUNTS) {
    const of = (name: ServerName): number[] => times.get(`${name} ${bars}`) ?? [];
    for (const name of NAMES) {
      const what = `open → diagnostics, ${barsText(bars)}, ${SERVER_TITLES[name]}`;
      report({ what, runs: of(name), unit: 'ms' });
    }
    const what = `JSON / Pegbox, ${barsText(bars)}`;
    const runs = ratios(of('json'), of('pegbox'));
    report(bars === 100 ? { what, runs, unit: '×', goal: { atLeast: 1 } } : { what, runs, unit: '×' });
  }
}

async function oneRun(name: ServerName, bars: number, seed: number): Promise<number> {
  const document = documentFor(name, bars, seed);
  const server = new ServerProcess(name);
  await server.initialize();
  await wait(QUIET);
  const begun = performance.now();
  await server.open(document);
  const time = performance.now() - begun;
  await server.stop();
  return time;
}
