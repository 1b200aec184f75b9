/** Where a command's answer goes. */
export interface Output {
  /** What was asked for: standard output, as it is. */
  text(text: string): void;
  /** The same as JSON, one value and a line end. */
  json(value: unknown): void;
  /** What is said about it: standard error. */
  report(text: string): void;
}

/**
 * Writes to the process's own streams. A reader that has gone, such as `head` at its last line, ends the program
 * quietly.
 */
export function processOutput(): Output {
  for (const stream of [process.stdout, process.stderr])
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
      process.exit();
    });
  return {
    text: (text) => void process.stdout.write(text),
    json: (value) => void process.stdout.write(`${JSON.stringify(value, null, 2)}\n`),
    report: (text) => void process.stderr.write(text),
  };
}
