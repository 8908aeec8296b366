import * as z from 'zod/mini';
import { type Fraction, ok, type Problem, parseFraction, type Result } from '../../../core/index.ts';

/** A probability as written: `p/q`, a decimal in quotes, or a bare 0 or 1. */
export const written = z.union([z.string().check(z.maxLength(900)), z.int()], 'a fraction such as "2/3" is wanted');
export type Written = z.infer<typeof written>;

/** Names of loci, alleles, phenotypes and animals: no control characters, which the core keeps for itself. */
export const named = z
  .string('a name is wanted')
  .check(
    z.minLength(1, 'a name is wanted'),
    z.maxLength(80, 'a name of at most 80 characters is wanted'),
    z.regex(/^\P{Cc}+$/u, 'a name without control characters is wanted'),
  );

/** Raised inside a reader to leave it at the first bad value; `attempt` turns it back into a result. */
class Refused {
  readonly problem: Problem;
  constructor(problem: Problem) {
    this.problem = problem;
  }
}

/** The value of a result, or the way out of the reader. */
export function take<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Refused(result.problem);
}

/** Runs a reader that uses {@link take}. */
export function attempt<T>(read: () => T): Result<T> {
  try {
    return ok(read());
  } catch (error) {
    if (error instanceof Refused) return { ok: false, problem: error.problem };
    throw error;
  }
}

/** Reads a written fraction at its path. */
export function fractionAt(value: Written, path: string): Fraction {
  return take(parseFraction(String(value), path));
}
