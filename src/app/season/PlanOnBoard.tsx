import { useMemo } from 'preact/hooks';
import { type SeasonPlan, sayDayShort, standingPlans } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { pairingAddress } from '../pairing/choice.ts';
import { acceptedView, sayCounts } from './acceptedView.ts';
import { PairMark } from './PairMark.tsx';
import { sayPair } from './planWords.ts';
import { sayKind } from './words.ts';

/** So many open pairs are named on the board; the plan's own page has them all. */
const FEW = 5;

/** How far the accepted plans are, and the next pairs to make; nothing where no plan was accepted. */
export function PlanOnBoard({ species }: { readonly species: readonly string[] | null }) {
  const { site, clock } = useApp();
  const [facility, today] = [site.facility.value, clock.today.value];
  const plans = useMemo(() => standingPlans(facility, today), [facility, today]);
  const shown = plans.filter((plan) => species === null || species.includes(plan.species));
  if (shown.length === 0) return null;
  return (
    <section class="season-planned" aria-labelledby="season-planned-title">
      <h2 id="season-planned-title">The accepted plan</h2>
      {shown.map((plan) => (
        <Planned key={plan.species} plan={plan} isNamed={plans.length > 1} />
      ))}
    </section>
  );
}

function Planned({ plan, isNamed }: { readonly plan: SeasonPlan; readonly isNamed: boolean }) {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const { pairs, counts } = acceptedView(facility, plan, clock.today.value);
  const open = pairs.filter(({ now }) => now.state === 'open');
  const out = pairs.filter(({ now }) => now.state === 'out');
  return (
    <div class="planned">
      <p>
        {isNamed && <>{sayKind(plan.species)}: </>}
        <strong>{sayCounts(counts)}</strong>{' '}
        <span class="soft">
          of {pairs.length} {pairs.length === 1 ? 'pair' : 'pairs'}, accepted {sayDayShort(plan.acceptedOn)}
        </span>
      </p>
      <ul>
        {[...open.slice(0, FEW), ...out].map(({ male: sire, female: dam, now, says }) => (
          <li key={`${sire}${dam}`}>
            <PairMark state={now.state} />
            <span>
              <a class="planned-pair" href={pairingAddress({ sire, dam })}>
                {sayPair(facility, sire, dam)}
              </a>{' '}
              <small>{says}</small>
            </span>
          </li>
        ))}
      </ul>
      <p>
        <a class="planned-all" href="/season/plan">
          {open.length > FEW ? `The whole plan, ${open.length - FEW} more open` : 'The whole plan'}
        </a>
      </p>
    </div>
  );
}
