import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Bench, Row } from './rows';

/* Runs one benchmark in this process and hands its rows to the parent (src/tools/bench.mjs). */

const [name = ''] = process.argv.slice(2);

async function main(): Promise<void> {
  const file = path.join(import.meta.dirname, `${name}.bench.ts`);
  const { run } = (await import(pathToFileURL(file).href)) as { readonly run: Bench };
  await run((row: Row) => {
    if (process.send) process.send(row);
    else console.log(JSON.stringify(row));
  });
}

main().then(
  () => {
    if (process.connected) process.disconnect();
  },
  (error: unknown) => {
    console.error(error);
    process.exit(1);
  },
);
