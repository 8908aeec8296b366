import { type AnimalRecord, lastWeight } from '../animal/index.ts';
import {
  FAST_DAYS,
  isTreated,
  needsVet,
  speciesOf,
  type Treatment,
  treatmentsOn,
  weighEveryDays,
} from '../care/index.ts';
import { type Day, dayFromNumber, dayNumber, daysBetween, laterDay } from '../days.ts';
import type { Facility } from '../facility/index.ts';
import { dueLine } from './dueList.ts';
import { handledTooSoon } from './handling.ts';
import { groupOf } from './homes.ts';
import { type Days, ownInterval } from './intervals.ts';
import { type LineFacts, lineOf, type RoundLine, windowAfter } from './line.ts';
import { skipOn, stateOf } from './placeLines.ts';

/** The tasks at each animal. */
export type AnimalTask = 'feeding' | 'weigh' | 'treat';

/** Which round of animals is asked for; `aheadMs`: how far the site’s clock is ahead of UTC, for the day of a dose. */
export interface AnimalRound {
  readonly task: AnimalTask;
  readonly on: Day;
  readonly aheadMs: number;
}

/** An animal's line; null where the task is not for it, such as a treatment of a healthy one. */
export function animalLine(facility: Facility, animal: AnimalRecord, round: AnimalRound): RoundLine | null {
  const facts = factsOf(facility, animal, round);
  if (facts === null) return null;
  const place = animal.place === null ? undefined : facility.places.get(animal.place);
  const at = { place: place ?? null, group: place === undefined ? null : groupOf(facility, place.id) };
  return lineOf({ task: round.task, of: animal.id, animals: [animal], ...at }, facts);
}

function factsOf(facility: Facility, animal: AnimalRecord, { task, on, aheadMs }: AnimalRound): LineFacts | null {
  switch (task) {
    case 'feeding':
      return feedingFacts(facility, animal, on);
    case 'weigh':
      return weighFacts(facility, animal, on);
    case 'treat':
      return treatFacts(animal, on, aheadMs);
    default:
      return task satisfies never;
  }
}

function feedingFacts(facility: Facility, animal: AnimalRecord, on: Day): LineFacts {
  const { due, meal, problem } = dueLine(facility, animal, on);
  const offer = animal.offers.at(-1);
  const lastDone = offer === undefined ? null : { day: offer.day, by: null };
  const window = due === null ? { next: null, last: null } : { next: due.next, last: due.last };
  const facts = { ...window, lastDone, meal, problem, why: due?.why ?? [] };
  if (offer?.day === on) return { ...facts, state: 'done', words: offer.taken ? null : 'refused' };
  const skip = skipOn(animal.skipped['feeding'], on);
  if (skip !== null) return { ...facts, state: 'skipped', skip };
  const isHeld = due === null || due.state === 'hold' || due.state === 'vet';
  return isHeld ? { ...facts, state: 'held', words: due?.hold?.reason ?? null } : { ...facts, state: due.state };
}

/** How often an animal is weighed on a day, and why; days from first to last. */
export interface Weighing {
  readonly everyDays: Days;
  readonly because: string;
}

/** Rule CARE-WEIGH as ranges: hatchlings every 1–2 weeks, growers monthly, adults every 1–3 months (common practice, no source). */
export const WEIGH_DAYS = { hatchling: [7, 14], grower: [28, 30], adult: [30, 90], weekly: [7, 7] } as const;

/** Rule CARE-WEIGH: by size, weekly while fasting, ill or gravid; the keeper's own days are kept, but never past the weekly ones. */
export function weighingOf(facility: Facility, animal: AnimalRecord, on: Day): Weighing {
  const own = animal.place === null ? null : ownInterval(facility, animal.place, 'weigh');
  const usual = own === null ? bySize(animal) : { everyDays: own.everyDays, because: 'the keeper’s own days' };
  const reason = weeklyReason(animal, on);
  if (reason === null || usual.everyDays[1] <= WEIGH_DAYS.weekly[1]) return usual;
  return { everyDays: WEIGH_DAYS.weekly, because: `${reason}: weekly (C: common practice, no source)` };
}

function bySize(animal: AnimalRecord): Weighing {
  const weight = lastWeight(animal)?.weightG ?? 0;
  const every = weighEveryDays(speciesOf(animal.species), weight);
  const found = Object.entries(WEIGH_DAYS).find(([, days]) => days[1] === every);
  const [size, everyDays] = found ?? ['grower', WEIGH_DAYS.grower];
  return { everyDays, because: `${size}s, by its last weight (C: common practice, no source)` };
}

function weeklyReason(animal: AnimalRecord, on: Day): string | null {
  if (animal.gravidSince !== null) return 'gravid';
  if (isTreated(animal, on)) return 'under treatment';
  if (needsVet(animal) !== null) return 'waits for the vet';
  const since = [animal.lastTaken?.day, animal.acquiredOn, animal.hatchedOn].flatMap((day) => day ?? []);
  const isCooled = animal.cooling !== null && animal.cooling.to === null;
  const days = daysBetween(since.reduce(laterDay, animal.addedOn), on);
  return !isCooled && days > FAST_DAYS ? `no meal taken for ${days} days` : null;
}

function weighFacts(facility: Facility, animal: AnimalRecord, on: Day): LineFacts {
  const weight = animal.weights.findLast((one) => one.day <= on);
  const lastDone = weight === undefined ? null : { day: weight.day, by: null };
  const { everyDays, because } = weighingOf(facility, animal, on);
  const window = windowAfter(weight?.day ?? null, everyDays, on);
  const facts = { ...window, lastDone, why: [`every ${sayRange(everyDays)}: ${because}`] };
  return stateOf(facts, skipOn(animal.skipped['weigh'], on), handledTooSoon([animal], on), on);
}

const DAY_MS = 86_400_000;

/** Doses by the vet's paper: due on the day of the next one, overdue after it (CARE-COURSE). */
function treatFacts(animal: AnimalRecord, on: Day, aheadMs: number): LineFacts | null {
  if (animal.prescriptions.length === 0) return null;
  // The end of the day after, so that no dose of this day lies ahead wherever the site is.
  const courses = treatmentsOn(animal, on, (dayNumber(on) + 2) * DAY_MS, aheadMs);
  const given = courses.flatMap(({ record }) => record.given).filter((dose) => dose.day <= on);
  const dose = given.sort((a, b) => a.atMs - b.atMs).at(-1);
  const next = courses.flatMap((one) => nextDoseDay(one, aheadMs) ?? []).sort()[0];
  const lastDone = dose === undefined ? null : { day: dose.day, by: dose.by };
  const drugs = courses.filter((one) => one.state.state === 'open').map(({ record }) => record.written.drug);
  const facts = { lastDone, next: next ?? null, last: next ?? null, words: drugs.join(', ') || null };
  if (next === undefined || next > on) return dose?.day === on ? { ...facts, state: 'done' } : null;
  const skip = skipOn(animal.skipped['treat'], on);
  if (skip !== null) return { ...facts, state: 'skipped', skip };
  return { ...facts, state: next < on ? 'overdue' : 'due', why: ['as the vet wrote'] };
}

function nextDoseDay({ record, schedule, state }: Treatment, aheadMs: number): Day | null {
  if (state.state !== 'open' || !schedule.ok || schedule.value.nextMs === null) return null;
  if (schedule.value.lastMs === null) return record.written.startsOn as Day;
  return dayFromNumber(Math.floor((schedule.value.nextMs + aheadMs) / DAY_MS));
}

/** `3 days`, `14–28 days`. */
export function sayRange([low, high]: Days): string {
  return `${low === high ? low : `${low}–${high}`} ${high === 1 ? 'day' : 'days'}`;
}
