import {
  type AnimalRecord,
  type FollowedPair,
  plannedFor,
  sayDayShort,
  sayKinship,
  sayPlanned,
} from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { pairingAddress } from '../pairing/choice.ts';
import { sayNow } from '../season/acceptedView.ts';
import { PairMark } from '../season/PairMark.tsx';
import { Because } from './Because.tsx';
import { Mate } from './FemaleSeasonPart.tsx';

/** With whom the accepted plan of the season has an animal, and what became of it; nothing where it is in no plan. */
export function PlannedLines({ animal }: { readonly animal: AnimalRecord }) {
  const { site, clock } = useApp();
  const pairs = plannedFor(site.facility.value, animal, clock.today.value);
  const [first] = pairs;
  if (first === undefined) return null;
  return (
    <section class="breeding-planned" aria-label="In the season plan">
      <h3>
        In the <a href="/season/plan">season plan</a>
      </h3>
      <ul>
        {pairs.map((pair) => (
          <Planned key={`${pair.male}${pair.female}`} pair={pair} animal={animal} />
        ))}
      </ul>
    </section>
  );
}

function Planned({ pair, animal }: { readonly pair: FollowedPair; readonly animal: AnimalRecord }) {
  const facility = useApp().site.facility.value;
  const { male: sire, female: dam, now, plan } = pair;
  const mate = animal.id === dam ? sire : dam;
  return (
    <li>
      <PairMark state={now.state} />
      <div class="window-line window-plain">
        <p>
          with <Mate id={mate} />, {sayNow(facility, pair)}
        </p>
        <Because
          about="the planned pair"
          why={[
            ...sayPlanned(pair, plan).map((words) => `${words}.`),
            `${capital(sayKinship(pair.kinship))}.`,
            `Plan accepted ${sayDayShort(plan.acceptedOn)}${plan.keeper === '' ? '' : ` by ${plan.keeper}`}; pairings since ${sayDayShort(plan.from)} count.`,
          ]}
        />
        {now.state === 'open' && (
          <a class="planned-look" href={pairingAddress({ sire, dam })}>
            Look at the pairing
          </a>
        )}
      </div>
    </li>
  );
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
