import { processOutput } from './output';
import { run } from './run';

void run(process.argv.slice(2), processOutput()).then((code) => {
  process.exitCode = code; // and not exit(), which would cut off what is still being written
});
