/** What the program answers to the shell. */
export const EXIT = {
  done: 0,
  /** `check` found an error, or a passage cannot be changed as asked. */
  refused: 1,
  /** The command line itself, or a file that it names, cannot be read. */
  unreadable: 2,
  /** A fault of the program; the number of `EX_SOFTWARE` in BSD's sysexits.h (from memory). */
  fault: 70,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];
