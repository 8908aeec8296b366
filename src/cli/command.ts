import type { Given, Options } from './args.ts';
import type { Io } from './io.ts';

/** 0 only when all was done. */
export type ExitCode = 0 | 1;

/** One command: what its help says, what it takes and what it does. */
export interface Command {
  readonly help: string;
  readonly options: Options;
  readonly run: (given: Given, io: Io) => Promise<ExitCode>;
}
