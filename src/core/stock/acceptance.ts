import { type AnimalRecord, lastWeight } from '../animal/index.ts';
import { speciesOf } from '../care/index.ts';
import { type Day, daysBetween } from '../days.ts';

/** What kind of eater an animal is on a day. */
export type EaterKind = 'grower' | 'adult' | 'breeding male';

/** Rule CARE-ACCEPTANCE: the share of offers taken to start with, by kind of eater (common practice, no source). */
export const ACCEPTANCE: Readonly<Record<EaterKind, readonly [number, number]>> = {
  grower: [0.9, 0.95],
  adult: [0.8, 0.9],
  'breeding male': [0.4, 0.7],
};
/** Rule CARE-ACCEPTANCE: the starting share counts as so many offers against the animal's own (ours). */
export const ACCEPTANCE_OFFERS = 8;
/** Rule CARE-ACCEPTANCE: a male is in season so long after a pairing or a lock (ours). */
export const IN_SEASON_DAYS = 30;

/** The chance that an animal takes an offer, as a beta distribution: `yes` and `no` are its two weights, both above 0. */
export interface Acceptance {
  readonly kind: EaterKind;
  /** Above 0 and below 1, whatever the log says. */
  readonly chance: number;
  readonly yes: number;
  readonly no: number;
  /** How many own offers stand behind it, and how many of them were taken. */
  readonly offers: number;
  readonly taken: number;
}

/**
 * Rule CARE-ACCEPTANCE: beta-binomial; the middle of the kind's range counts as {@link ACCEPTANCE_OFFERS} offers, and each
 * own offer that the record keeps as one. Only offers count from when it was in season, or out of it, as it is now.
 */
export function acceptanceOf(animal: AnimalRecord, on: Day): Acceptance {
  const kind = eaterKind(animal, on);
  const inSeason = kind === 'breeding male';
  // A female, or a male without marks, is never in season: then nothing needs to be asked of each offer's day.
  const isSeasonal = animal.sex === 'male' && animal.season.length > 0;
  let [offers, taken] = [0, 0];
  for (const offer of animal.offers) {
    if (offer.day > on || (isSeasonal && isInSeason(animal, offer.day) !== inSeason)) continue;
    offers += 1;
    if (offer.taken) taken += 1;
  }
  const [low, high] = ACCEPTANCE[kind];
  const yes = (ACCEPTANCE_OFFERS * (low + high)) / 2 + taken;
  const no = ACCEPTANCE_OFFERS + offers - yes;
  return { kind, chance: yes / (yes + no), yes, no, offers, taken };
}

/** The kind of eater; an animal without a weight or a known species counts as an adult. */
export function eaterKind(animal: AnimalRecord, on: Day): EaterKind {
  if (isInSeason(animal, on)) return 'breeding male';
  const adultFromG = speciesOf(animal.species)?.adultFromG;
  const weightG = lastWeight(animal)?.weightG;
  return adultFromG !== undefined && weightG !== undefined && weightG < adultFromG ? 'grower' : 'adult';
}

function isInSeason({ sex, season }: AnimalRecord, on: Day): boolean {
  if (sex !== 'male') return false;
  return season.some(({ kind, day }) => {
    const since = daysBetween(day, on);
    return (kind === 'paired' || kind === 'lock') && since >= 0 && since <= IN_SEASON_DAYS;
  });
}
