import type * as z from 'zod/mini';
import { type OwnPlan, ok, type Result, refuse } from '../../core/index.ts';
import type { planFields } from './fields.ts';

/** The plan of a case as the log would hold it. Errors: `plan-malformed`. */
export function ownPlan(given: z.infer<typeof planFields> | null | undefined): Result<OwnPlan | null> {
  if (!given) return ok(null);
  const { percent, everyDays, prey, count } = given;
  const why = whatIsWrong(percent, everyDays);
  if (why !== null) return refuse('plan-malformed', { why }, 'plan');
  return ok({
    ...(percent && { percent }),
    ...(everyDays && { everyDays }),
    ...(prey && { prey }),
    ...(count && { count }),
  });
}

function whatIsWrong(percent: readonly number[] | undefined, everyDays: readonly number[] | undefined): string | null {
  if (percent?.some((share) => !(share > 0 && share <= 100))) return 'percent lies outside 0 to 100';
  if (everyDays?.some((days) => !(Number.isInteger(days) && days >= 1 && days <= 400)))
    return 'days are not whole numbers from 1 to 400';
  if (percent && (percent[0] ?? 0) > (percent[1] ?? 0)) return 'percent runs from high to low';
  if (everyDays && (everyDays[0] ?? 0) > (everyDays[1] ?? 0)) return 'days run from high to low';
  return null;
}
