import { type Problem, problem } from '../../problems.ts';
import { roundTo } from '../../units.ts';
import { sayMl } from './syringe.ts';

/** Rule CARE-TENFOLD: so many times more, or less, than before is a slip of the decimal point (common practice, no source). */
export const TENFOLD_FROM = 5;

/**
 * Rule CARE-TENFOLD: holds a volume against the doses that were given before on the same prescription, by their middle one, so
 * that one earlier slip does not hide the next. Null if nothing is odd or nothing was given yet; else `dose-tenfold`,
 * `not-finite` or `not-positive`.
 */
export function tenfoldFault(ml: number, earlierMl: readonly number[]): Problem | null {
  if (![ml, ...earlierMl].every(Number.isFinite)) return problem('not-finite', { what: 'volume' });
  if (![ml, ...earlierMl].every((one) => one > 0)) return problem('not-positive', { what: 'volume' });
  const before = middleOf(earlierMl);
  if (before === null) return null;
  const times = ml / before;
  if (times < TENFOLD_FROM && times > 1 / TENFOLD_FROM) return null;
  const said = times >= 1 ? `${roundTo(times, 1)} times` : `1/${roundTo(1 / times, 1)} of`;
  return problem('dose-tenfold', { volume: sayMl(ml), times: said, before: sayMl(before) });
}

function middleOf(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? null;
}
