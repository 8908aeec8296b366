import { useMemo, useState } from 'preact/hooks';
import {
  cardTraits,
  type Id,
  type PairState,
  type SeasonPlan,
  sayDay,
  sayDayShort,
  sayId,
  withdrawPlan,
} from '../../core/index.ts';
import { AskedSheet } from '../clutch/AskedSheet.tsx';
import { momentOn } from '../clutch/writing.ts';
import { Lens } from '../look/Lens.tsx';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { pairingAddress } from '../pairing/choice.ts';
import { type AcceptedPair, acceptedView, PAIR_STATES, STATE_TITLES } from './acceptedView.ts';
import { PairMark } from './PairMark.tsx';
import { sayEggsAtLeast, sayPair, sayProof } from './planWords.ts';
import { useSiteDecision } from './useSiteDecision.ts';
import { sayKind } from './words.ts';

interface AcceptedPlanProps {
  readonly plan: SeasonPlan;
  /** True where it is the only one, so that its cards can be asked for by one word. */
  readonly isAlone: boolean;
}

type Shown = PairState['state'] | 'all';

/** The plan that was accepted, as a list to print and to work through: what is made of it, what is open, what fell out. */
export function AcceptedPlan({ plan, isAlone }: AcceptedPlanProps) {
  const { site, clock } = useApp();
  const [facility, today] = [site.facility.value, clock.today.value];
  const { pairs, counts } = useMemo(() => acceptedView(facility, plan, today), [facility, plan, today]);
  const [shown, show] = useState<Shown>('all');
  const listed = pairs.filter(({ now }) => shown === 'all' || now.state === shown);
  return (
    <section class="accepted" aria-label={`Accepted plan, ${sayKind(plan.species)}`}>
      <header>
        <h2>Accepted plan, {sayKind(plan.species)}</h2>
        <p>
          For {plan.goals.map(sayEggsAtLeast).join('; ')}. {capital(sayProof(plan.gap))}.
        </p>
        <p class="soft">
          Accepted {sayDay(plan.acceptedOn)}
          {plan.keeper !== '' && ` by ${plan.keeper}`}, for every device. Pairings since {sayDayShort(plan.from)} count.
        </p>
        {plan.missingParts > 0 && (
          <p class="accepted-missing" role="status">
            {plan.missingParts === 1 ? 'A part' : `${plan.missingParts} parts`} of this plan has not come to this device
            yet; it comes with the next sync.
          </p>
        )}
      </header>
      <Lens
        label="Which pairs"
        chosen={shown}
        choose={show}
        choices={[
          { id: 'all' as Shown, words: 'All', count: pairs.length },
          ...PAIR_STATES.map((state) => ({ id: state as Shown, words: STATE_TITLES[state], count: counts[state] })),
        ]}
      />
      <ol>
        {listed.map((pair) => (
          <Pair key={`${pair.male}${pair.female}`} pair={pair} />
        ))}
      </ol>
      {listed.length === 0 && <p class="soft">No pair of the plan is among these.</p>}
      <PlanDoings plan={plan} open={pairs.filter(({ now }) => now.state === 'open')} isAlone={isAlone} />
    </section>
  );
}

function Pair({ pair }: { readonly pair: AcceptedPair }) {
  const facility = useApp().site.facility.value;
  const { male: sire, female: dam, now, says, reasons, warnings } = pair;
  return (
    <li class={`accepted-${now.state}`}>
      <PairMark state={now.state} />
      <div>
        <a href={pairingAddress({ sire, dam })}>{sayPair(facility, sire, dam)}</a>
        <p class="accepted-now">{says}</p>
        <Parents sire={sire} dam={dam} />
        <small>{reasons.join(' · ')}</small>
        {warnings.map((words) => (
          <small key={words} class="plan-warning">
            {words}
          </small>
        ))}
      </div>
    </li>
  );
}

interface PlanDoingsProps extends AcceptedPlanProps {
  readonly open: readonly AcceptedPair[];
}

function PlanDoings({ plan, open, isAlone }: PlanDoingsProps) {
  const app = useApp();
  const deciding = useSiteDecision(`Season of ${sayKind(plan.species)}s`);
  const only = isAlone ? 'plan' : open.map(({ male, female }) => `${male}/${female}`).join(',');
  return (
    <>
      {deciding.failure !== null && <ProblemLine problem={deciding.failure} />}
      <p class="accepted-do">
        {open.length > 0 && (
          <a class="secondary" href={`/print?what=pairing&only=${only}`}>
            Print the pairing cards still open
          </a>
        )}
        <button type="button" class="link" onClick={() => window.print()}>
          Print this list
        </button>
        <button
          type="button"
          class="link"
          disabled={deciding.isBusy}
          onClick={() => deciding.decide(withdrawPlan(plan, momentOn(app, null)))}
        >
          Withdraw this plan
        </button>
      </p>
      {deciding.doubt !== null && (
        <AskedSheet title="Withdraw this plan" doubt={deciding.doubt} yes={deciding.yes} no={deciding.no} />
      )}
    </>
  );
}

function Parents({ sire, dam }: { readonly sire: Id; readonly dam: Id }) {
  const facility = useApp().site.facility.value;
  const say = (id: Id): string => {
    const animal = facility.animals.get(id);
    const traits = animal === undefined ? null : cardTraits(facility, animal);
    return `${sayId(id)}${traits === null ? '' : `, ${traits.words?.short ?? traits.code}`}`;
  };
  return (
    <small class="accepted-who">
      {say(sire)} × {say(dam)}
    </small>
  );
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
