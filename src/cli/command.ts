import type { Output } from './output';
import type { ExitCode } from './exitCodes';

/** An option of a command, as `--tuning T`. */
export interface Option {
  /** Without its dashes. */
  readonly name: string;
  /** The word that stands for its value in the help; undefined for an option that takes none. */
  readonly value?: string;
  /** One line of help. */
  readonly help: string;
}

/** What a command takes beside its options. */
export interface Operands {
  /** As in the help: `FILE`, `NOTES…`. */
  readonly word: string;
  /** One line of help. */
  readonly help: string;
  /** Whether more than one may be given; at least one must be, unless it is optional. */
  readonly many: boolean;
  /** Whether it may be left out; the command then gets an empty one. */
  readonly optional?: boolean;
}

/** What a user asked of one command. */
export interface Asked {
  /** At least one; exactly one where the command takes no more. */
  readonly operands: readonly [string, ...string[]];
  /** Values of the options that take one, by name. */
  readonly values: ReadonlyMap<string, string>;
  /** Names of the options given that take none. */
  readonly flags: ReadonlySet<string>;
}

/** One command of the program. */
export interface Command {
  readonly name: string;
  /** One line of help. */
  readonly does: string;
  readonly operands: Operands;
  readonly options: readonly Option[];
  /** Names of options that must be given. */
  readonly required?: readonly string[];
  /**
   * Does it.
   * @throws {Refusal} with one sentence, when it cannot be done
   */
  run(asked: Asked, output: Output): Promise<ExitCode>;
}
