import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import {
  type ClutchRecord,
  type Facility,
  type Id,
  ok,
  type PlaceRecord,
  type Problem,
  sayPlace,
  walkingOrder,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { useApp } from '../model/app.ts';
import { Readings } from './Readings.tsx';
import { readTempC } from './typed.ts';
import { useIncubatorScan, useWaitForPlace } from './useIncubatorScan.ts';
import type { ClutchView } from './view.ts';
import { writeAct } from './writing.ts';

interface IncubatorProps {
  readonly clutch: ClutchRecord;
  readonly view: ClutchView;
}

/** Where the clutch lies, at what it is set, and what was read there. */
export function Incubator({ clutch, view }: IncubatorProps) {
  const { incubation } = clutch;
  const isMoving = useSignal(false);
  const isChoosing = view.isOpen && (incubation === null || isMoving.value);
  useWaitForPlace(clutch, isChoosing);
  return (
    <section class="incubator" aria-labelledby="incubator-title">
      <header class="part-head">
        <h2 id="incubator-title">Incubator</h2>
        {incubation !== null && view.isOpen && (
          <button
            type="button"
            class="link"
            aria-expanded={isMoving.value}
            onClick={() => {
              isMoving.value = !isMoving.value;
            }}
          >
            {isMoving.value ? 'Leave it there' : 'Move or set'}
          </button>
        )}
      </header>
      {incubation !== null && <Lies clutch={clutch} />}
      {isChoosing && (
        <PlacePick
          clutch={clutch}
          done={() => {
            isMoving.value = false;
          }}
        />
      )}
      {incubation !== null && <Readings clutch={clutch} isOpen={view.isOpen} />}
    </section>
  );
}

function Lies({ clutch: { incubation } }: { readonly clutch: ClutchRecord }) {
  const { site, clock } = useApp();
  if (incubation === null) return null;
  const { place, setC, since } = incubation;
  const words = sayPlace(site.facility.value, place);
  return (
    <p class="incubator-lies">
      {words === null ? 'in the incubator' : <a href={`/place/${place}`}>{words}</a>}
      <span>{setC === null ? 'no set temperature written' : `set to ${setC} °C`}</span>
      <span class="soft">
        since <SpokenDay day={since} today={clock.today.value} />
      </span>
    </p>
  );
}

/** Scan a place, or pick it; the set temperature goes with it where it is typed. */
function PlacePick({ clutch, done }: { readonly clutch: ClutchRecord; done(): void }) {
  const app = useApp();
  const { walk } = useIncubatorScan(clutch);
  const facility = app.site.facility.value;
  const places = incubatorPlaces(facility);
  const place = useSignal<Id | null>(clutch.incubation?.place ?? null);
  const typed = useSignal('');
  const why = useSignal<Problem | null>(null);
  const [placeId, setId] = [useId(), useId()];
  async function write(event: Event): Promise<void> {
    event.preventDefault();
    const setC = typed.value.trim() === '' ? ok(null) : readTempC(typed.value);
    why.value = setC.ok
      ? await writeAct(app, clutch, { do: 'incubated', place: place.value, setC: setC.value })
      : setC.problem;
    if (why.value === null) done();
  }
  return (
    <form class="place-pick" onSubmit={(event) => void write(event)}>
      <p class="soft">
        {clutch.incubation === null ? 'It lies nowhere yet.' : 'It goes elsewhere.'} Scan the place now with a typing
        scanner, or pick it here.
      </p>
      {clutch.incubation !== null && (
        <button type="button" class="secondary" onClick={walk}>
          Scan it by camera
        </button>
      )}
      <p class="field">
        <label for={placeId}>Place</label>
        <select
          id={placeId}
          value={place.value ?? ''}
          onChange={(event) => {
            place.value = places.find(({ id }) => id === event.currentTarget.value)?.id ?? null;
          }}
        >
          <option value="">not said</option>
          {places.map(({ id }) => (
            <option key={id} value={id}>
              {sayPlace(facility, id)}
            </option>
          ))}
        </select>
      </p>
      <p class="field">
        <label for={setId}>Set temperature, °C (may stay empty)</label>
        <input
          id={setId}
          inputMode="decimal"
          autoComplete="off"
          placeholder={clutch.incubation?.setC?.toString() ?? ''}
          onInput={(event) => {
            typed.value = event.currentTarget.value;
          }}
        />
      </p>
      {why.value !== null && <ProblemLine problem={why.value} />}
      <button type="submit" class="secondary">
        Incubate
      </button>
    </form>
  );
}

/** Incubators and their shelves first, then every other place: some sites keep eggs in a tub. */
function incubatorPlaces(facility: Facility): readonly PlaceRecord[] {
  const order = walkingOrder(facility);
  const isIncubator = ({ placeKind, parent }: PlaceRecord): boolean =>
    placeKind === 'incubator' || (parent !== null && facility.places.get(parent)?.placeKind === 'incubator');
  return [...facility.places.values()].sort(
    (a, b) => Number(isIncubator(b)) - Number(isIncubator(a)) || (order.get(a.id) ?? 0) - (order.get(b.id) ?? 0),
  );
}
