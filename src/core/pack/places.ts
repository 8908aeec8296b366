import type { Day } from '../days.ts';
import { standing } from '../events/effective.ts';
import type { LogEvent, SiteEvent } from '../events/index.ts';
import type { Facility, SITE } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import type { PackCleaning } from './pack.ts';
import { placeWords } from './rows.ts';

/** Days that an animal lived in a place; `to` is the day of the next move, which still counts for both. */
interface Stay {
  readonly place: Id;
  readonly from: Day;
  readonly to: Day;
}

/** An event at a place, and the place as far as this animal is concerned. */
export interface AtPlace<E extends SiteEvent> {
  readonly event: E;
  readonly where: Id;
}

/** Places deeper than this exist only in damaged logs, where they may even stand in a ring. */
const DEEPEST = 8;

/**
 * Finds what happened where an animal lived while it lived there: in its tub, and in the rack or room around it; and
 * whatever names the animal itself. Oldest first.
 */
export type AtItsPlaces = <E extends SiteEvent>(
  animal: Id,
  events: readonly SiteEvent[],
  wanted: (event: SiteEvent) => event is E,
) => readonly AtPlace<E>[];

/** One finder for a whole pack, since a rack’s history is asked for by each of its animals. */
export function placeFinder(
  facility: Facility,
  histories: ReadonlyMap<Id | typeof SITE, readonly LogEvent[]>,
  on: Day,
): AtItsPlaces {
  const known = new Map<Id, readonly SiteEvent[]>();
  const historyAt = (place: Id): readonly SiteEvent[] => {
    const before = known.get(place);
    if (before !== undefined) return before;
    // What is first of all about an animal is that animal's, and not the place's.
    const found = standing(histories.get(place) ?? []).filter(({ subjects: [of] }) => !of || !facility.animals.has(of));
    known.set(place, found);
    return found;
  };
  return <E extends SiteEvent>(
    animal: Id,
    events: readonly SiteEvent[],
    wanted: (event: SiteEvent) => event is E,
  ): readonly AtPlace<E>[] => {
    const found = new Map<string, AtPlace<E>>();
    for (const event of events.filter(wanted)) {
      const [where] = event.subjects;
      if (where !== undefined) found.set(event.id, { event, where });
    }
    for (const { place, from, to } of staysOf(animal, events, on))
      for (const where of [place, ...around(facility, place)])
        for (const event of historyAt(where).filter(wanted))
          if (event.day >= from && event.day <= to && !found.has(event.id)) found.set(event.id, { event, where });
    return [...found.values()].sort((a, b) => (a.event.day < b.event.day ? -1 : a.event.day > b.event.day ? 1 : 0));
  };
}

/** What was cleaned, and whose water and pool was seen to. */
export function cleaningOf(facility: Facility, found: readonly AtPlace<Cleaning>[]): readonly PackCleaning[] {
  return found.map(({ event, where }) => ({
    day: event.day,
    by: event.keeper,
    what: whatOf(event),
    where: placeWords(facility, where),
  }));
}

/** An event that tells of cleaning. */
export type Cleaning = Extract<SiteEvent, { kind: 'place-cleaned' | 'water-changed' | 'pool-served' }>;

/** True for such an event. */
export function isCleaning(event: SiteEvent): event is Cleaning {
  return event.kind === 'place-cleaned' || event.kind === 'water-changed' || event.kind === 'pool-served';
}

function whatOf(event: Cleaning): string {
  if (event.kind === 'water-changed') return 'water changed';
  if (event.kind === 'place-cleaned') return event.payload.how === 'full' ? 'cleaned in full' : 'spot cleaned';
  const { work, percent } = event.payload;
  if (work === 'filter') return 'pool filter cleaned';
  if (work === 'drain') return 'pool drained';
  return `pool changed in part${percent === undefined ? '' : `, ${percent} %`}`;
}

function staysOf(animal: Id, events: readonly SiteEvent[], on: Day): readonly Stay[] {
  const own = events.filter(({ subjects }) => subjects[0] === animal);
  const left = own.findLast(({ kind }) => kind === 'animal-left')?.day ?? on;
  const moves = own.flatMap((event) =>
    event.kind === 'animal-moved' ? [{ day: event.day, place: event.payload.to as Id }] : [],
  );
  return moves.map(({ day, place }, at) => ({ place, from: day, to: moves[at + 1]?.day ?? left }));
}

function around(facility: Facility, place: Id): readonly Id[] {
  const above: Id[] = [];
  let next = facility.places.get(place)?.parent ?? null;
  while (next !== null && above.length < DEEPEST) {
    above.push(next);
    next = facility.places.get(next)?.parent ?? null;
  }
  return above;
}
