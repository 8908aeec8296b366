import { useId } from 'preact/hooks';
import {
  type Facility,
  type Id,
  isQuarantinePlace,
  occupants,
  type PlaceRecord,
  sayAnimal,
  sayPlace,
  walkingOrder,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { arrivalDraft } from './draft.ts';
import { type FormState, faultAt, put } from './fields.tsx';

interface PlaceLineProps {
  readonly form: FormState;
  /** Goes to the camera for it; a typing scanner needs no touch. */
  readonly scan: () => void;
}

/** Where it goes: chosen from the quarantine places first, or by a scan of the place’s label. */
export function PlaceLine({ form, scan }: PlaceLineProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const id = useId();
  const { apart, other } = homes(facility);
  const fault = faultAt(form, 'place');
  return (
    <div class="arrive-place">
      <div class="field">
        <label for={id}>Its place</label>
        <select
          id={id}
          value={arrivalDraft.value.place}
          onChange={(event) => put({ place: event.currentTarget.value as Id | '' })}
        >
          <option value="">no place yet</option>
          <Group label="Quarantine" places={apart} facility={facility} />
          <Group label="Other places" places={other} facility={facility} />
        </select>
        {fault !== null && <ProblemLine problem={fault} />}
        {apart.length === 0 && (
          <small>
            There is no quarantine place yet. <a href="/books">Add one in Books</a>: a room or rack of the kind
            “quarantine”, with its tubs in it.
          </small>
        )}
      </div>
      <button type="button" class="secondary" onClick={scan}>
        Scan its place
      </button>
    </div>
  );
}

function Group(props: {
  readonly label: string;
  readonly places: readonly PlaceRecord[];
  readonly facility: Facility;
}) {
  const lives = occupants(props.facility);
  if (props.places.length === 0) return null;
  return (
    <optgroup label={props.label}>
      {props.places.map(({ id, name }) => (
        <option key={id} value={id}>
          {sayPlace(props.facility, id) ?? name}
          {lives.has(id) ? ` (taken: ${(lives.get(id) ?? []).map(sayAnimal).join(', ')})` : ''}
        </option>
      ))}
    </optgroup>
  );
}

const NO_HOMES: ReadonlySet<string> = new Set(['room', 'rack', 'freezer', 'incubator', 'shelf']);

/** The places that an animal can live in, in walking order; those that stand for others are left out. */
function homes(facility: Facility): { readonly apart: readonly PlaceRecord[]; readonly other: readonly PlaceRecord[] } {
  const { places } = facility;
  const holders = new Set([...places.values()].map(({ parent }) => parent));
  const inOrder = [...walkingOrder(facility).keys()].flatMap((id) => places.get(id) ?? []);
  const all = inOrder.filter(({ id, placeKind }) => !NO_HOMES.has(placeKind) && !holders.has(id));
  const isApart = ({ id }: PlaceRecord): boolean => isQuarantinePlace(facility, id);
  return { apart: all.filter(isApart), other: all.filter((place) => !isApart(place)) };
}
