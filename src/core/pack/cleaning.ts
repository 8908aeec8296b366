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

/** Cleaned places deeper than this exist only in damaged logs, where they may even stand in a ring. */
const DEEPEST = 8;

/** Finds what was cleaned where an animal lived while it lived there: its tub, and the rack or room around it. */
export type CleaningOf = (animal: Id, events: readonly SiteEvent[]) => readonly PackCleaning[];

/** One finder for a whole pack, since a rack’s history is asked for by each of its animals. */
export function cleaningFinder(
  facility: Facility,
  histories: ReadonlyMap<Id | typeof SITE, readonly LogEvent[]>,
  on: Day,
): CleaningOf {
  const known = new Map<Id, readonly SiteEvent[]>();
  const cleanedAt = (place: Id): readonly SiteEvent[] => {
    const before = known.get(place);
    if (before !== undefined) return before;
    const found = standing(histories.get(place) ?? []).filter(isCleaning);
    known.set(place, found);
    return found;
  };
  return (animal, events) => {
    const found = new Map<string, { readonly event: SiteEvent; readonly where: Id }>();
    for (const event of events.filter(isCleaning)) {
      const [where] = event.subjects;
      if (where !== undefined) found.set(event.id, { event, where });
    }
    for (const { place, from, to } of staysOf(animal, events, on))
      for (const where of [place, ...around(facility, place)])
        for (const event of cleanedAt(where))
          if (event.day >= from && event.day <= to && !found.has(event.id)) found.set(event.id, { event, where });
    return [...found.values()]
      .map(({ event, where }) => ({
        day: event.day,
        by: event.keeper,
        what: whatOf(event),
        where: placeWords(facility, where),
      }))
      .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
  };
}

function isCleaning({ kind }: SiteEvent): boolean {
  return kind === 'place-cleaned' || kind === 'water-changed';
}

function whatOf(event: SiteEvent): string {
  if (event.kind === 'place-cleaned') return event.payload.how === 'full' ? 'cleaned in full' : 'spot cleaned';
  return 'water changed';
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
