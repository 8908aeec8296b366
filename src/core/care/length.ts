import { ok, type Result, refuse } from '../problems.ts';

/** The shortest and longest snake that a figure is taken for, in m: a newborn and more than a record python (common practice, no source). */
export const LENGTH_LIMITS_M = { least: 0.05, most: 10 } as const;

/** Takes a length in m if a snake can have it. Errors: `not-finite`, `not-positive`, `length-impossible`, at the path. */
export function lengthInRange(lengthM: number, path = 'lengthM'): Result<number> {
  if (!Number.isFinite(lengthM)) return refuse('not-finite', { what: 'length' }, path);
  if (lengthM <= 0) return refuse('not-positive', { what: 'length' }, path);
  const possible = lengthM >= LENGTH_LIMITS_M.least && lengthM <= LENGTH_LIMITS_M.most;
  return possible ? ok(lengthM) : refuse('length-impossible', { lengthM }, path);
}
