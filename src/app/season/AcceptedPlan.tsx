import { cardTraits, type Id, sayDayShort, sayId } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { pairingAddress } from '../pairing/choice.ts';
import type { KeptPlan } from './keepPlan.ts';
import { sayPair } from './planWords.ts';
import { sayKind } from './words.ts';

interface AcceptedPlanProps {
  readonly kept: KeptPlan;
  drop(): void;
}

/** The plan that was accepted, as a list to print and to work through; it lies on this device until the pairings are written. */
export function AcceptedPlan({ kept, drop }: AcceptedPlanProps) {
  const facility = useApp().site.facility.value;
  return (
    <section class="accepted" aria-labelledby="accepted-title">
      <h2 id="accepted-title">
        Accepted plan, {sayKind(kept.species)}, {sayDayShort(kept.day)}
      </h2>
      <p class="soft">
        For {kept.goals.join('; ')}. It lies on this device alone; a pairing is in the log only once it is written.
      </p>
      <ol>
        {kept.pairs.map(({ sire, dam, reasons }) => (
          <li key={`${sire}${dam}`}>
            <span class="accepted-box" aria-hidden="true" />
            <div>
              <a href={pairingAddress({ sire, dam })}>{sayPair(facility, sire, dam)}</a>
              <Parents sire={sire} dam={dam} />
              <small>{reasons.join(' · ')}</small>
            </div>
          </li>
        ))}
      </ol>
      <p class="accepted-do">
        <a class="secondary" href={cardsAddress(kept)}>
          Print the pairing cards
        </a>
        <button type="button" class="link" onClick={() => window.print()}>
          Print this list
        </button>
        <button type="button" class="link" onClick={drop}>
          Drop this plan
        </button>
      </p>
    </section>
  );
}

/** Where the cards of the plan’s pairs are printed. */
function cardsAddress({ pairs }: KeptPlan): string {
  return `/print?what=pairing&only=${pairs.map(({ sire, dam }) => `${sire}/${dam}`).join(',')}`;
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
