/** Exit codes, as `jigwright help` and the README list them. */
export const EXIT = {
  /** Done; no finding stops the work. */
  done: 0,
  /** Done; at least one finding says: do not build on. */
  stops: 1,
  /** The input could not be read or is not valid. */
  badInput: 2,
  /** The command line is not understood. */
  usage: 3,
  /** The result could not be written; what was there before is as it was. */
  notWritten: 4,
  /** A fault of the program itself. */
  fault: 5,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];
