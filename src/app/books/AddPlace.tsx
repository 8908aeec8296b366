import { useState } from 'preact/hooks';
import { PLACE_KINDS, type Problem, sayPlace, walkingOrder } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { Field, Pick } from './Field.tsx';
import { newPlace, placeDrafts } from './placeDrafts.ts';

const KINDS = ['rack', ...PLACE_KINDS.filter((kind) => kind !== 'rack')];

/** Adds a rack with its tubs, or any other place, each with an id of its own. */
export function AddPlace() {
  const { site, clock } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  const [said, setSaid] = useState('');
  const facility = site.facility.value;
  const holders = [...walkingOrder(facility).keys()].filter((id) => facility.places.get(id)?.placeKind !== 'tub');
  async function add(form: HTMLFormElement): Promise<void> {
    setSaid('');
    const read = newPlace(new FormData(form), facility);
    const result = read.ok ? await site.writeNew((mint) => placeDrafts(read.value, clock.today.value, mint)) : read;
    setFailed(result.ok ? null : result.problem);
    if (!read.ok || !result.ok) return;
    setSaid(`${read.value.name} is added${read.value.tubs > 0 ? ` with ${read.value.tubs} tubs` : ''}.`);
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
      <Pick name="place-kind" words="Kind">
        {KINDS.map((kind) => (
          <option key={kind}>{kind}</option>
        ))}
      </Pick>
      <Field name="place-name" words="Name" hint="As it stands on the rack, such as Rack 3." />
      <Field
        name="tubs"
        words="Tubs in it, from the top"
        type="number"
        hint="None for a tub, an exhibit or a freezer."
      />
      <Pick name="parent" words="Stands in">
        <option value="">nothing</option>
        {holders.map((id) => (
          <option key={id} value={id}>
            {sayPlace(facility, id)}
          </option>
        ))}
      </Pick>
      <button type="submit" class="secondary">
        Add the place
      </button>
      <p role="status">{said}</p>
      {failed === null ? null : <ProblemLine problem={failed} />}
    </form>
  );
}
