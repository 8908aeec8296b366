import { useState } from 'preact/hooks';
import { type Id, occupants, type Problem, SEXES, SPECIES, sayId, sayPlace, walkingOrder } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { animalDrafts, newAnimal } from './animalDrafts.ts';
import { Field, Pick } from './Field.tsx';

/** Adds an animal with an id of its own; its card can be printed at once. */
export function AddAnimal() {
  const { site, clock } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  const [added, setAdded] = useState<Id | null>(null);
  async function add(form: HTMLFormElement): Promise<void> {
    setAdded(null);
    const today = clock.today.value;
    const read = newAnimal(new FormData(form), site.facility.value, today);
    const result = read.ok ? await site.writeNew((mint) => animalDrafts(read.value, mint(), today)) : read;
    setFailed(result.ok ? null : result.problem);
    if (!read.ok || !result.ok) return;
    setAdded(result.value[0]?.subjects[0] ?? null);
    form.reset();
  }
  return (
    <form
      class="form"
      onSubmit={(event) => {
        event.preventDefault();
        void add(event.currentTarget);
      }}
    >
      <AnimalFields />
      <button type="submit" class="secondary">
        Add the animal
      </button>
      <div role="status">{added === null ? null : <Added id={added} />}</div>
      {failed === null ? null : <ProblemLine problem={failed} />}
    </form>
  );
}

function AnimalFields() {
  const { site } = useApp();
  const facility = site.facility.value;
  const lives = occupants(facility);
  const homes = [...walkingOrder(facility).keys()].filter((id) => {
    const kind = facility.places.get(id)?.placeKind;
    return kind !== 'room' && kind !== 'rack' && kind !== 'freezer';
  });
  return (
    <>
      <Field
        name="species"
        words="Species"
        list="species"
        hint="Its scientific name. A species that is not in the list needs a feed plan of your own."
      />
      <datalist id="species">
        {SPECIES.map(({ name, tradeName }) => (
          <option key={name} value={name}>
            {tradeName}
          </option>
        ))}
      </datalist>
      <Field name="animal-name" words="Name" />
      <Field name="number" words="Number" most={20} />
      <Pick name="sex" words="Sex">
        {['unsexed', ...SEXES.filter((sex) => sex !== 'unsexed')].map((sex) => (
          <option key={sex}>{sex}</option>
        ))}
      </Pick>
      <Field name="hatched" words="Hatched on" type="date" />
      <Field name="acquired" words="Acquired on" type="date" />
      <Field name="source" words="Acquired from" />
      <Pick name="place" words="Place">
        <option value="">no place yet</option>
        {homes.map((id) => (
          <option key={id} value={id}>
            {sayPlace(facility, id)}
            {lives.has(id) ? ' (taken)' : ''}
          </option>
        ))}
      </Pick>
      <Field name="traits" words="Trait code" most={200} />
      <Field name="weight" words="Weight today" most={12} hint="900, 1.2 kg; without a unit it is grams." />
    </>
  );
}

function Added({ id }: { readonly id: Id }) {
  return (
    <p class="done-line">
      Added as <a href={`/animal/${id}`}>{sayId(id)}</a>. <a href={`/print?only=${id}`}>Print its card</a>
    </p>
  );
}
