import { problem } from '../core/index.ts';
import type { ExitCode } from './command.ts';
import { type Io, warn } from './io.ts';
import { inWords } from './refused.ts';

/** Names the signs that stand on the paper as their numbers; with any, not all was done as it was written. */
export function warnOfSigns(missing: readonly string[], io: Io): ExitCode {
  if (missing.length === 0) return 0;
  warn(io, inWords(problem('signs-as-numbers', { signs: missing.join(' ') })));
  return 1;
}
