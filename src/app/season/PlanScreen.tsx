import { useEffect, useMemo, useState } from 'preact/hooks';
import '../look/parts.css';
import '../traits/traits.css';
import { standingPlans } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { AcceptedPlan } from './AcceptedPlan.tsx';
import { Formula } from './Formula.tsx';
import { type Herd, plannable } from './herd.ts';
import { keepDraft, keptDraft } from './keepDraft.ts';
import { PlanForm } from './PlanForm.tsx';
import { PlanResult } from './PlanResult.tsx';
import './plan.css';
import { PlanWork } from './PlanWork.tsx';
import type { PlanDraft } from './planDraft.ts';
import { usePlan } from './usePlan.ts';
import { usualClutch } from './usualClutch.ts';

/** The season's plan: which male with which female, so that the goals are met at best within the limits. */
export function PlanScreen() {
  const { site, clock } = useApp();
  const [facility, today] = [site.facility.value, clock.today.value];
  const herds = useMemo(() => plannable(facility, today), [facility, today]);
  const plans = useMemo(() => standingPlans(facility, today), [facility, today]);
  return (
    <section class="screen season-plan" aria-labelledby="plan-title">
      <header class="plan-head">
        <h1 id="plan-title">Season plan</h1>
        <nav class="plan-nav" aria-label="Season">
          <a href="/season">Season</a>
        </nav>
      </header>
      {plans.map((plan) => (
        <AcceptedPlan key={plan.species} plan={plan} isAlone={plans.length === 1} />
      ))}
      {herds.length === 0 ? <NobodyToPlan /> : <Planner herds={herds} />}
    </section>
  );
}

function NobodyToPlan() {
  return (
    <p class="empty">
      There is no grown male with a grown female of one species here. Weigh them first: take the stamp “weighed” in hand
      on <a href="/">Scan</a> and scan their cards.
    </p>
  );
}

function Planner({ herds }: { readonly herds: readonly Herd[] }) {
  const { site } = useApp();
  const planning = usePlan();
  const { state } = planning;
  const isWorking = state.at === 'pairs' || state.at === 'search' || state.at === 'why';
  const facility = site.facility.value;
  const [draft, setDraft] = useState<PlanDraft>(keptDraft);
  useEffect(() => keepDraft(draft), [draft]);
  const herd = herds.find(({ species }) => species === draft.species) ?? herds[0];
  if (herd === undefined) return null;
  const clutch = usualClutch(facility, herd.species);
  return (
    <div class="planner">
      <PlanForm
        herds={herds}
        herd={herd}
        clutch={clutch}
        draft={draft}
        setDraft={setDraft}
        isWorking={isWorking}
        begin={(asked) => planning.begin(facility, asked)}
      />
      <div class="plan-outcome">
        <Formula clutch={clutch} />
        <PlanWork state={state} cancel={planning.cancel} />
        {state.at === 'done' && <PlanResult plan={state.plan} />}
      </div>
    </div>
  );
}
