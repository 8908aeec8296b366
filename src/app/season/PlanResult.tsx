import { useMemo } from 'preact/hooks';
import { nameOf, sayEggs } from '../../core/index.ts';
import { sayAboutPercent } from '../genetics/index.ts';
import { useApp } from '../model/app.ts';
import { pairingAddress } from '../pairing/choice.ts';
import { AcceptPlan } from './AcceptPlan.tsx';
import { Loosen } from './Loosen.tsx';
import { type ChosenPair, chosenPairs, sayPair, sayProof, whyUnreachable } from './planWords.ts';
import type { PlanMade } from './usePlan.ts';

/** The plan as a list of pairs with its reasons, or which limit stands in the way. */
export function PlanResult({ plan }: { readonly plan: PlanMade }) {
  const pairs = useMemo(() => chosenPairs(plan), [plan]);
  const { answer } = plan;
  return (
    <section class="plan-result" aria-labelledby="plan-result-title">
      <h2 id="plan-result-title">The plan</h2>
      <Standing plan={plan} />
      <Goals plan={plan} />
      {answer.status === 'infeasible' && <Loosen plan={plan} />}
      {pairs.length > 0 && (
        <>
          <ol class="plan-pairs" aria-label="Pairs of the plan">
            {pairs.map((one) => (
              <Pair key={`${one.sire}${one.dam}`} pair={one} />
            ))}
          </ol>
          <p class="soft">
            A plan is arithmetic over written traits. Nothing here advises to breed an animal: the breeder decides, on
            welfare the vet, and local code above both.
          </p>
          <AcceptPlan plan={plan} />
        </>
      )}
      <Faults plan={plan} />
    </section>
  );
}

function Standing({ plan }: { readonly plan: PlanMade }) {
  const { status, plan: chosen, gap } = plan.answer;
  if (status === 'infeasible') return <p class="plan-standing">No plan keeps to all these limits.</p>;
  if (chosen === null) return <p class="plan-standing">The search was ended before a plan was found.</p>;
  if (chosen.pairs.length === 0)
    return <p class="plan-standing">Nobody is paired: no pair gives anything towards a goal.</p>;
  const count = chosen.pairs.length;
  const proof = sayProof(status === 'optimal' ? 0 : gap);
  return (
    <p class="plan-standing" role="status">
      <strong>
        {count} {count === 1 ? 'pairing' : 'pairings'}
      </strong>{' '}
      with {chosen.malesUsed} {chosen.malesUsed === 1 ? 'male' : 'males'}, mean kinship{' '}
      {chosen.meanKinship === 0 ? '0' : sayAboutPercent(chosen.meanKinship ?? 0)}, value{' '}
      {Number(chosen.value.toPrecision(4))}: {proof}.
    </p>
  );
}

function Goals({ plan }: { readonly plan: PlanMade }) {
  const facility = useApp().site.facility.value;
  const { asked, answer } = plan;
  return (
    <table class="plan-table">
      <thead>
        <tr>
          <th scope="col">Goal</th>
          <th scope="col">At least</th>
          <th scope="col">The plan</th>
        </tr>
      </thead>
      <tbody>
        {asked.setting.goals.map(({ words, leastEggs }, at) => {
          const isBeyond = answer.unreachableGoals.includes(at);
          return (
            <tr key={words}>
              <th scope="row">{words}</th>
              <td>{leastEggs === 0 ? '–' : sayEggs(leastEggs)}</td>
              <td>
                {isBeyond ? (
                  <>
                    <strong class="plan-beyond">no pair here can give it</strong>
                    <small>{whyUnreachable(facility, plan, at)}; the goal was left out</small>
                  </>
                ) : answer.plan === null ? (
                  '–'
                ) : (
                  sayEggs(answer.plan.expected[at] ?? 0)
                )}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function Pair({ pair }: { readonly pair: ChosenPair }) {
  const facility = useApp().site.facility.value;
  return (
    <li>
      <a href={pairingAddress({ sire: pair.sire, dam: pair.dam })}>{sayPair(facility, pair.sire, pair.dam)}</a>
      <ul>
        {[...pair.goals, pair.kinship].map((words) => (
          <li key={words}>{words}</li>
        ))}
        {pair.warnings.map((words) => (
          <li key={words} class="plan-warning">
            {words}
          </li>
        ))}
      </ul>
    </li>
  );
}

/** Who could not be planned with, and why. */
function Faults({ plan }: { readonly plan: PlanMade }) {
  const facility = useApp().site.facility.value;
  const { wanted, chances } = plan;
  const unread = wanted.unread.map(({ animal, why }) => `${nameOf(facility, animal.id)}: ${why}`);
  const faults = chances.faults.flatMap(({ sire, dam, problem }) => {
    const [male, female] = [wanted.ask.sires[sire]?.id, wanted.ask.dams[dam]?.id];
    return male === undefined || female === undefined ? [] : [`${sayPair(facility, male, female)}: ${problem.message}`];
  });
  const all = [...unread, ...faults];
  if (all.length === 0) return null;
  return (
    <details>
      <summary>Left out for their traits</summary>
      <ul class="plan-left">
        {all.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </details>
  );
}
