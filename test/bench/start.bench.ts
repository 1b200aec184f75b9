import { documentFor } from './documents';
import { median, ratios, RUNS, type Row } from './rows';
import { SERVER_TITLES, ServerProcess, type ServerName } from './serverProcess';

const NAMES = ['pegbox', 'nothing', 'json', 'css'] as const;
/** Starts a run: one takes a tenth of a second and is at the mercy of the machine. */
const STARTS = 5;

interface Start {
  /** Spawn → `initialize` answered, in milliseconds. */
  readonly ready: number;
  /** Spawn → diagnostics of a document of 100 bars, opened at once as an editor does. */
  readonly first: number;
}

/** How long a server takes from its start, in a process of its own. */
export async function run(report: (row: Row) => void): Promise<void> {
  const starts = new Map<ServerName, Start[]>(NAMES.map((name) => [name, []]));
  for (let round = 0; round < RUNS; round++) {
    const inRun = new Map<ServerName, Start[]>(NAMES.map((name) => [name, []]));
    for (let i = 0; i < STARTS; i++)
      for (const name of NAMES) inRun.get(name)?.push(await start(name, 100 * round + i));
    for (const name of NAMES) {
      const all = inRun.get(name) ?? [];
      starts.get(name)?.push({
        ready: median(all.map(({ ready }) => ready)),
        first: median(all.map(({ first }) => first)),
      });
    }
  }
  const of = (name: ServerName, what: keyof Start): number[] =>
    (starts.get(name) ?? []).map((one) => one[what]);
  const what = { ready: 'spawn → initialize', first: 'spawn → first diagnostics, 100 bars' } as const;
  for (const part of ['ready', 'first'] as const) {
    for (const name of NAMES)
      report({ what: `${what[part]}, ${SERVER_TITLES[name]}`, runs: of(name, part), unit: 'ms' });
    report({
      what: `JSON / Pegbox, ${what[part]}`,
      runs: ratios(of('json', part), of('pegbox', part)),
      unit: '×',
    });
  }
}

async function start(name: ServerName, seed: number): Promise<Start> {
  const document = documentFor(name, 100, seed);
  const begun = performance.now();
  const server = new ServerProcess(name);
  await server.initialize();
  const ready = performance.now() - begun;
  await server.open(document);
  const first = performance.now() - begun;
  await server.stop();
  return { ready, first };
}
