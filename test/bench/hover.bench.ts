import { barsText, documentFor } from './documents';
import { median, ratios, RUNS, type Row } from './rows';
import { SERVER_TITLES, ServerProcess, type ServerName } from './serverProcess';

const NAMES = ['pegbox', 'nothing', 'json', 'css'] as const;
const BARS = 10_000;
const WARM = 60;
const MEASURED = 60;

/** Hovers at places spread over a document of 10,000 bars, each asked once, after a key was typed. */
export async function run(report: (row: Row) => void): Promise<void> {
  const times = new Map<ServerName, number[]>(NAMES.map((name) => [name, []]));
  for (let round = 0; round < RUNS; round++) {
    for (const name of NAMES) times.get(name)?.push(await oneRun(name, 1000 * round));
  }
  for (const name of NAMES) {
    const what = `hover, ${barsText(BARS)}, ${SERVER_TITLES[name]}`;
    report({ what, runs: times.get(name) ?? [], unit: 'ms' });
  }
  report({
    what: 'JSON / Pegbox',
    runs: ratios(times.get('json') ?? [], times.get('pegbox') ?? []),
    unit: '×',
    goal: { atLeast: 1 },
  });
}

async function oneRun(name: ServerName, seed: number): Promise<number> {
  const document = documentFor(name, BARS, seed);
  const server = new ServerProcess(name);
  await server.initialize();
  await server.open(document);
  for (const key of document.nextKeys()) await server.type(key);
  const times: number[] = [];
  for (let i = 0; i < WARM + MEASURED; i++) {
    const place = document.hoverPlace();
    const begun = performance.now();
    const hover = await server.hover(place);
    const time = performance.now() - begun;
    if (!hover) throw new Error(`${name} has no hover at ${place.line + 1}:${place.character + 1}.`);
    if (i >= WARM) times.push(time);
  }
  await server.stop();
  return median(times);
}
