import { EXIT, type ExitCode } from './exitCodes';

/** Ends a command with one sentence on standard error: what was expected, and how to mend it. */
export class Refusal extends Error {
  constructor(
    sentence: string,
    readonly exitCode: ExitCode = EXIT.unreadable,
  ) {
    super(sentence);
  }
}
