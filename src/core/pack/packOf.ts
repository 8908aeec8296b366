import type { AnimalRecord } from '../animal/index.ts';
import { growthPlot, growthWithin } from '../care/index.ts';
import { addDays, type Day, isDay } from '../days.ts';
import { standing } from '../events/effective.ts';
import type { EventOf, LogEvent, SiteEvent } from '../events/index.ts';
import { animalsInWalkingOrder, type Facility, foldFacility, historiesOf, nameOf } from '../facility/index.ts';
import { type Id, sayId } from '../ids.ts';
import { ok, problem, type Result, refuse } from '../problems.ts';
import { calledOf, factsOf } from './facts.ts';
import type { Pack, PackAnimal, PackChoice, PackLeft } from './pack.ts';
import { cleaningOf, isCleaning, placeFinder } from './places.ts';
import type { CountryProfile } from './profiles.ts';
import { feedsOf, movesOf, treatmentsOf, weightsOf } from './rows.ts';
import { lengthsOf, looksOf, notesOf, papersOf, skippedOf } from './words.ts';

/** Which animals, until when, and by whose rules. */
export interface PackQuestion {
  readonly choice: PackChoice;
  readonly on: Day;
  readonly profile: CountryProfile;
}

/**
 * The inspector’s pack of a log, in any order, as known on a day. It reads only. Ids that are no animals are named in
 * `left`. Errors, when no animal is in it: `pack-empty`, `unknown-id`, `pack-no-animal`, `pack-no-place`.
 */
export function packOf(log: readonly LogEvent[], { choice, on, profile }: PackQuestion): Result<Pack> {
  const known = log.filter(({ day }) => day <= on);
  const facility = foldFacility(known);
  const from = yearsBefore(on, profile.years);
  const { animals, left, gone } = chosen(facility, choice, from);
  const [first] = left;
  if (animals.length === 0)
    return first === undefined ? refuse('pack-empty', { from, on }) : { ok: false, problem: first.problem };
  const histories = historiesOf(known);
  const atItsPlaces = placeFinder(facility, histories, on);
  const tell = (animal: AnimalRecord): PackAnimal => {
    const history = histories.get(animal.id) ?? [];
    const events = standing(history);
    const own = events.filter(({ subjects }) => subjects[0] === animal.id);
    const within = <T extends { readonly day: Day }>(rows: readonly T[]) => rows.filter(({ day }) => day >= from);
    const treatments = within(treatmentsOf(own));
    const looks = within(looksOf(atItsPlaces(animal.id, events, isLook)));
    return {
      id: animal.id,
      display: sayId(animal.id),
      called: calledOf(animal),
      facts: factsOf({ facility, animal, treatments, looks, on }),
      feeds: within(feedsOf(own)),
      weights: within(weightsOf(own)),
      lengths: within(lengthsOf(own)),
      treatments,
      looks,
      notes: within(notesOf(own)),
      papers: within(papersOf(facility, own, animal.id)),
      skipped: within(skippedOf(facility, atItsPlaces(animal.id, events, isSkip))),
      cleaning: within(cleaningOf(facility, atItsPlaces(animal.id, events, isCleaning))),
      moves: within(movesOf(facility, own)),
      growth: growthWithin(growthPlot(animal, history, on), from),
      hasDoses: treatments.some(({ what }) => what === 'prescription' || what === 'dose'),
    };
  };
  return ok({ site: facility.site.name, profile, from, on, animals: animals.map(tell), left, gone });
}

function isLook(event: SiteEvent): event is EventOf<'health-looked'> {
  return event.kind === 'health-looked';
}

function isSkip(event: SiteEvent): event is EventOf<'task-skipped'> {
  return event.kind === 'task-skipped';
}

/** The same date some years earlier; a leap day becomes the day before it. */
export function yearsBefore(day: Day, years: number): Day {
  const year = String(Number(day.slice(0, 4)) - years).padStart(4, '0');
  const same = `${year}${day.slice(4)}`;
  return isDay(same) ? same : yearsBefore(addDays(day, -1), years);
}

interface Chosen {
  readonly animals: readonly AnimalRecord[];
  readonly left: readonly PackLeft[];
  readonly gone: number;
}

function chosen(facility: Facility, choice: PackChoice, from: Day): Chosen {
  if (choice.of === 'only') return { ...named(facility, choice.ids), gone: 0 };
  if (choice.of === 'place' && !facility.places.has(choice.place))
    return { animals: [], left: [{ id: choice.place, problem: whyNot(facility, choice.place, 'place') }], gone: 0 };
  const isIn = choice.of === 'all' ? () => true : livesIn(facility, choice.place);
  const all = inOrder(facility).filter(isIn);
  const animals = all.filter(({ left }) => left === null || left.day >= from);
  return { animals, left: [], gone: all.length - animals.length };
}

/** Those that are here in walking order, then those that left, the last one first. */
function inOrder(facility: Facility): readonly AnimalRecord[] {
  const off = [...facility.animals.values()].filter(({ left }) => left !== null);
  const leftOn = (animal: AnimalRecord): string => `${animal.left?.day} ${animal.id}`;
  return [...animalsInWalkingOrder(facility), ...off.sort((a, b) => (leftOn(a) < leftOn(b) ? 1 : -1))];
}

/** Who lives in a place or in anything that stands in it, or lived there when it left. */
function livesIn(facility: Facility, place: Id): (animal: AnimalRecord) => boolean {
  const inside = new Set<Id>([place]);
  const places = [...facility.places.values()];
  for (let before = 0; before < inside.size; ) {
    before = inside.size;
    for (const one of places) if (one.parent !== null && inside.has(one.parent)) inside.add(one.id);
  }
  return (animal) => animal.place !== null && inside.has(animal.place);
}

function named(facility: Facility, ids: readonly Id[]): Omit<Chosen, 'gone'> {
  const wanted = new Set(ids);
  const animals = inOrder(facility).filter(({ id }) => wanted.has(id));
  const strange = [...wanted].filter((id) => !facility.animals.has(id));
  return { animals, left: strange.map((id) => ({ id, problem: whyNot(facility, id, 'animal') })) };
}

function whyNot(facility: Facility, id: Id, wanted: 'animal' | 'place') {
  const { animals, places, keepers, lots, clutches } = facility;
  const isOther = [animals, places, keepers, lots, clutches].some((all) => all.has(id));
  if (!isOther) return problem('unknown-id', { id: sayId(id) });
  return problem(wanted === 'animal' ? 'pack-no-animal' : 'pack-no-place', {
    id: sayId(id),
    what: nameOf(facility, id),
  });
}
