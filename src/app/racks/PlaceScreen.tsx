import {
  type AnimalRecord,
  type ClutchRecord,
  type Day,
  type Facility,
  occupants,
  type PlaceRecord,
  parseId,
  problem,
  sayPlace,
  stillLies,
  walkingOrder,
} from '../../core/index.ts';
import { PlaceEnclosure } from '../enclosure/PlaceEnclosure.tsx';
import { PlacePeople } from '../identity/PlacePeople.tsx';
import '../look/parts.css';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { PlaceRounds } from '../rounds/PlaceRounds.tsx';
import { RackRound } from '../rounds/RackRound.tsx';
import { Clutches } from './Clutches.tsx';
import { Occupant } from './Occupant.tsx';
import { PlaceDays } from './PlaceDays.tsx';
import { PlaceDone } from './PlaceDone.tsx';
import { PoolPart } from './PoolPart.tsx';
import './racks.css';

/** One place: who lives there, what stands in it, what was done there last. */
export function PlaceScreen({ id }: { readonly id: string }) {
  const { site } = useApp();
  const facility = site.facility.value;
  const read = parseId(id);
  const place = read.ok ? facility.places.get(read.value.id) : undefined;
  if (place === undefined)
    return (
      <section class="screen place">
        <h1>Place</h1>
        <ProblemLine problem={read.ok ? problem('unknown-id', { id }) : read.problem} />
      </section>
    );
  return <Place place={place} facility={facility} />;
}

function Place({ place, facility }: { readonly place: PlaceRecord; readonly facility: Facility }) {
  const today = useApp().clock.today.value;
  const lives = occupants(facility);
  const here = lives.get(place.id) ?? [];
  const clutches = clutchesIn(facility, place.id, today);
  const inside = standingIn(facility, place);
  const isWalked = inside.length > 0 || (place.placeKind === 'exhibit' && here.length > 0);
  return (
    <section class="screen place" aria-labelledby="place-title">
      <p class="soft">
        {place.placeKind} · <span class="place-id">{`${place.id.slice(0, 4)} ${place.id.slice(4)}`}</span>
      </p>
      <h1 id="place-title">{sayPlace(facility, place.id)}</h1>
      <PlacePeople place={place} />
      <div class="place-body">
        <div>
          {isWalked && <RackRound place={place.id} />}
          {inside.length > 0 && <PlaceRounds place={place.id} />}
          <Clutches clutches={clutches} />
          {inside.length > 0 ? (
            <Inside inside={inside} lives={lives} facility={facility} />
          ) : clutches.length === 0 || here.length > 0 ? (
            <Residents here={here} />
          ) : null}
          {inside.length > 0 && here.length > 0 ? <Residents here={here} /> : null}
          {inside.length > 0 ? (
            <a class="secondary" href={`/print?rack=${place.id}`}>
              Print this rack’s cards
            </a>
          ) : null}
        </div>
        <div class="place-side">
          {inside.length > 0 ? <PlaceDays place={place} /> : <PlaceDone place={place} here={here} />}
          {place.placeKind !== 'freezer' && <PoolPart place={place} />}
        </div>
        <PlaceEnclosure place={place} />
      </div>
    </section>
  );
}

function Residents({ here }: { readonly here: readonly AnimalRecord[] }) {
  if (here.length === 0)
    return <p class="empty">Nobody lives here. With the stamp “moved”, scan an animal and then this place.</p>;
  return (
    <>
      {here.map((animal) => (
        <Occupant key={animal.id} animal={animal} />
      ))}
    </>
  );
}

/** Eggs that lie here on a day and have not all hatched. */
function clutchesIn({ clutches }: Facility, place: PlaceRecord['id'], on: Day): readonly ClutchRecord[] {
  return [...clutches.values()].filter((one) => one.incubation?.place === place && stillLies(one, on));
}

interface InsideProps {
  readonly inside: readonly PlaceRecord[];
  readonly lives: ReadonlyMap<PlaceRecord['id'], readonly AnimalRecord[]>;
  readonly facility: Facility;
}

function Inside({ inside, lives, facility }: InsideProps) {
  const today = useApp().clock.today.value;
  return (
    <ol class="inside">
      {inside.map((one) => (
        <li key={one.id}>
          <a href={`/place/${one.id}`}>
            <strong>{one.name}</strong>{' '}
            <span>{sayLives(lives.get(one.id) ?? [], clutchesIn(facility, one.id, today).length)}</span>
          </a>
        </li>
      ))}
    </ol>
  );
}

function sayLives(here: readonly AnimalRecord[], clutches: number): string {
  const animals = here.map((one) => one.name ?? one.number ?? one.id);
  const eggs = clutches === 0 ? [] : [clutches === 1 ? '1 clutch' : `${clutches} clutches`];
  return [...animals, ...eggs].join(', ') || 'empty';
}

function standingIn(facility: Facility, place: PlaceRecord): readonly PlaceRecord[] {
  const order = walkingOrder(facility);
  return [...facility.places.values()]
    .filter((one) => one.parent === place.id)
    .sort((a, b) => (order.get(a.id) ?? 0) - (order.get(b.id) ?? 0));
}
