import { useState } from 'preact/hooks';
import { acceptPlan, type Day, seasonBegan, standingPlan } from '../../core/index.ts';
import { AskedSheet } from '../clutch/AskedSheet.tsx';
import { momentOn } from '../clutch/writing.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { FirstDay } from './FirstDay.tsx';
import { isSamePairs, newPlanOf } from './newPlan.ts';
import type { PlanMade } from './usePlan.ts';
import { useSiteDecision } from './useSiteDecision.ts';
import { sayKind } from './words.ts';

/** Makes the plan a fact of the log, so that every device goes by it. */
export function AcceptPlan({ plan }: { readonly plan: PlanMade }) {
  const app = useApp();
  const facility = app.site.facility.value;
  const { species } = plan.asked.herd;
  const fresh = newPlanOf(plan, app.clock.today.value);
  const standing = standingPlan(facility, species, app.clock.today.value);
  const began = seasonBegan(facility, species, app.clock.today.value);
  const [chosen, choose] = useState<Day | null>(null);
  const from = chosen ?? began.from;
  const deciding = useSiteDecision(`Season of ${sayKind(species)}s`);
  const accept = (): void => deciding.decide(acceptPlan(facility, { ...fresh, from }, momentOn(app, null)));
  if (standing !== null && isSamePairs(standing.pairs, fresh.pairs))
    return (
      <p class="plan-standing" role="status">
        These pairs are accepted: the list of them stands above, on every device.
      </p>
    );
  return (
    <div class="plan-accept">
      <FirstDay day={from} why={chosen === null ? began.why : 'as you chose'} set={choose} />
      {deciding.failure !== null && <ProblemLine problem={deciding.failure} />}
      <button type="button" class="primary" onClick={accept} disabled={deciding.isBusy}>
        Accept the plan
      </button>
      {deciding.doubt !== null && (
        <AskedSheet title="Accept the plan" doubt={deciding.doubt} yes={deciding.yes} no={deciding.no} />
      )}
    </div>
  );
}
