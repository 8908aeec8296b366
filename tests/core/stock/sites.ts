import { Chance } from '../../../demo-data/chance.ts';
import {
  ACCEPTANCE,
  ACCEPTANCE_OFFERS,
  AFTER_REFUSAL_DAYS,
  type AnimalRecord,
  addDays,
  type Day,
  eaterKind,
  emptyFacility,
  type Facility,
  feedPlan,
  type Id,
  KEPT_OFFERS,
  mintId,
  type Offer,
  plannedMeal,
} from '../../../src/core/index.ts';
import { day, rex, value, weighed } from '../log.ts';

/** The day on which the forecast is made. */
export const ON: Day = day('2026-03-02');
/** The life of a site before that day; longer than any record of offers. */
const BEFORE_DAYS = 360;

/** A site that was drawn from chance, and what it offers in the weeks to come, by class of prey. */
export interface SimulatedSite {
  readonly facility: Facility;
  /** Items offered in each week. */
  readonly offered: ReadonlyMap<string, readonly number[]>;
}

/** On which day of the plan's range a site offers, as a share of the range from a number between 0 and 1. */
export type Habit = (share: number) => number;

const TEMPLATES = [
  ['Python regius', 650],
  ['Python regius', 1600],
  ['Pantherophis guttatus', 500],
  ['Heterodon nasicus', 120],
].map(([species, weightG]) => rex({ species: String(species) }, weighed('2026-02-20', Number(weightG))));

/** One simulated animal, told day by day. */
interface Life {
  readonly animal: AnimalRecord;
  /** Days after {@link ON} on which something is offered. */
  readonly offersOn: readonly number[];
}

/**
 * Draws a site of so many animals of each of four kinds and lives it day by day, without anything of the forecast: the
 * animal's own chance comes from the starting range, each offer is taken with it, and the next one follows by habit.
 */
export function simulatedSite(seed: number, ofEach: number, weeks: number, habit: Habit): SimulatedSite {
  const chance = new Chance(seed);
  const animals = new Map<Id, AnimalRecord>();
  const offered = new Map<string, number[]>();
  for (let n = 0; n < ofEach * TEMPLATES.length; n++) {
    const template = TEMPLATES[n % TEMPLATES.length];
    if (template === undefined) throw new RangeError('no template');
    const { animal, offersOn } = live({ ...template, id: value(mintId(2, n)) }, chance, weeks, habit);
    animals.set(animal.id, animal);
    const { prey, count } = value(plannedMeal(animal, ON));
    const weekly = offered.get(prey) ?? new Array<number>(weeks).fill(0);
    for (const on of offersOn) weekly[Math.floor(on / 7)] = (weekly[Math.floor(on / 7)] ?? 0) + count;
    offered.set(prey, weekly);
  }
  return { facility: { ...emptyFacility(), animals }, offered };
}

function live(animal: AnimalRecord, chance: Chance, weeks: number, habit: Habit): Life {
  const { everyDays } = value(feedPlan(animal.species, animal.weights[0]?.weightG ?? null, null));
  const { prey, count } = value(plannedMeal(animal, ON));
  const [low, high] = ACCEPTANCE[eaterKind(animal, ON)];
  const mean = (low + high) / 2;
  const takes = betaOf(chance, ACCEPTANCE_OFFERS * mean, ACCEPTANCE_OFFERS * (1 - mean));
  const offers: Offer[] = [];
  const offersOn: number[] = [];
  let next = chance.whole(-BEFORE_DAYS, -BEFORE_DAYS + 30);
  while (next < weeks * 7) {
    const taken = chance.happens(takes);
    if (next < 0) offers.push({ day: addDays(ON, next), prey, count, totalG: 30, taken });
    else offersOn.push(next);
    next += waits(taken ? everyDays : AFTER_REFUSAL_DAYS, chance, taken ? habit : (share) => share);
  }
  const kept = offers.slice(-KEPT_OFFERS);
  const lastTaken = offers.findLast((offer) => offer.taken) ?? null;
  return { animal: { ...animal, offers: kept, lastTaken, mealsTaken: offers.length }, offersOn };
}

function waits([low, high]: readonly [number, number], chance: Chance, habit: Habit): number {
  return low + Math.floor(habit(chance.next()) * (high - low + 1));
}

/** A draw from a beta distribution (the rejection of Jöhnk 1964, from memory; its mean and spread are tested). */
export function betaOf(chance: Chance, yes: number, no: number): number {
  for (;;) {
    const [a, b] = [chance.next() ** (1 / yes), chance.next() ** (1 / no)];
    if (a + b > 0 && a + b <= 1) return a / (a + b);
  }
}
