import { sayEggs } from '../../core/index.ts';
import { sayAboutPercent } from '../genetics/index.ts';
import type { Loosening } from './loosening.ts';
import type { PlanMade } from './usePlan.ts';

/** Which limits stand in the way of a plan, and what each would have to be. */
export function Loosen({ plan }: { readonly plan: PlanMade }) {
  const { loosenings } = plan;
  return (
    <div class="plan-loosen" role="alert">
      <h3>What stands in the way</h3>
      {loosenings.length === 0 ? (
        <p>No single limit: loosen two of them, or ask for fewer eggs of two goals.</p>
      ) : (
        <ul>
          {loosenings.map((one) => (
            <li key={`${one.limit}${one.limit === 'goal' ? one.goal : ''}`}>{sayLoosening(one, plan)}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

function sayLoosening(one: Loosening, { asked }: PlanMade): string {
  const { limits, goals } = asked.setting;
  switch (one.limit) {
    case 'kinship': {
      const limit = limits.meanKinshipLimit ?? 0;
      return `The limit on kinship, ${sayAboutPercent(limit)}: without it there is a plan, at a mean of ${sayAboutPercent(one.possible)}. Raise the limit towards that.`;
    }
    case 'cap':
      return `Females of a male, ${limits.capPerMale}: with ${one.possible} there is a plan.`;
    case 'males':
      return `Males used, ${limits.maxMales}: with ${one.possible} there is a plan.`;
    case 'goal': {
      const goal = goals[one.goal];
      const most = one.possible === 0 ? 'none' : `at most ${sayEggs(one.possible)}`;
      return `${goal?.words ?? 'A goal'}, at least ${sayEggs(goal?.leastEggs ?? 0)}: beside the other limits ${most} can be expected.`;
    }
    default:
      return one satisfies never;
  }
}
