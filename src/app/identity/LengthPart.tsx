import './identity.css';
import { useSignal } from '@preact/signals';
import { type AnimalRecord, peopleFor, sayDayShort, sayKindOf, sayLength, sayPeople } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { MeasureSheet } from './MeasureSheet.tsx';
import { Line } from './OriginPart.tsx';

/** An animal’s lengths, and how many people open its tub by them. */
export function LengthPart({ animal }: { readonly animal: AnimalRecord }) {
  const { site } = useApp();
  const open = useSignal(false);
  const people = peopleFor(animal, site.facility.value.site.rules.twoPeopleFromM);
  return (
    <section class="lengths" aria-labelledby="lengths-title">
      <h2 id="lengths-title">Length</h2>
      {animal.lengths.length === 0 ? (
        <p class="soft">never measured</p>
      ) : (
        <dl class="identity-lines">
          {animal.lengths.map(({ of, lengthMm, day, guessed }) => (
            <Line key={of} term={sayKindOf(of)}>
              <strong>{sayLength(lengthMm)}</strong> on {sayDayShort(day)}
              {guessed && ', guessed'}
            </Line>
          ))}
        </dl>
      )}
      {people !== null && (
        <div class={people.people > 1 ? 'people people-many' : 'people'}>
          <p>
            <strong>{sayPeople(people.people)}</strong> {people.people === 1 ? 'opens' : 'open'} its tub.
          </p>
          {people.people > 1 && <p>{people.caution}</p>}
          <p class="people-because">Because: {people.because}.</p>
        </div>
      )}
      {animal.left === null && (
        <button
          type="button"
          onClick={() => {
            open.value = true;
          }}
        >
          Measure …
        </button>
      )}
      {open.value && (
        <MeasureSheet
          animal={animal}
          onClose={() => {
            open.value = false;
          }}
        />
      )}
    </section>
  );
}
