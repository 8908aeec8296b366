import type { AnimalRecord, PlacedHold } from '../animal/index.ts';
import { addDays, type Day, daysBetween, laterDay, sayDayShort } from '../days.ts';
import { withholdsFood } from './treatment/underWay.ts';

/** A reason not to feed until a day, or until somebody says so (`until` null). */
export interface Hold {
  readonly kind: 'opaque' | 'regurgitation' | 'arrival' | 'first-shed' | 'cooling' | PlacedHold['reason'];
  readonly reason: string;
  /** The first day on which feeding is allowed again. */
  readonly until: Day | null;
  readonly source: string;
}

/** Default lengths in days; every one is a range in the field, and the source stands beside it. */
export const HOLD_DAYS = {
  /** Rule CARE-OPAQUE: opaque for several days, shed some days after clearing; after this long a shed was missed. */
  opaque: 21,
  /** Rule CARE-REGURGITATION: rest 10–14 d (range 7–14); after a second one 21–30 d. */
  regurgitation: 10,
  regurgitationSecond: 21,
  regurgitationWindow: 60,
  /** Rule CARE-ARRIVAL: no food for 7 d after transport. */
  arrival: 7,
  /** Rule CARE-HATCHLING: first meal after the first shed, 1–2 weeks. */
  firstShed: 14,
  /** Rule CARE-COOLING: first small meal 3–7 d after warming. */
  afterCooling: 3,
} as const;

const PRACTICE = 'C: common practice, no source';
const PUBLISHED = 'S: published text, see facts in docs/sources.md';

/** Every hold that stands on a day, the one that lasts longest first. */
export function holdsOn(animal: AnimalRecord, on: Day): readonly Hold[] {
  const all = [
    opaque(animal, on),
    regurgitated(animal),
    arrived(animal),
    firstShed(animal),
    animal.cooling && animal.cooling.from <= on ? cooled(animal) : null,
    ...placed(animal),
    treated(animal, on),
  ];
  const standing = all.filter((hold): hold is Hold => hold !== null && (hold.until === null || on < hold.until));
  return standing.sort((a, b) => compareUntil(b.until, a.until));
}

/** Rule CARE-REGURGITATION: two within 60 days and no vet's word since the second. */
export function needsVet(animal: AnimalRecord): string | null {
  const twice = secondRegurgitation(animal);
  if (twice !== null) {
    const [before, again] = twice.map(sayDayShort);
    return `regurgitated on ${before} and again on ${again}; rest ${HOLD_DAYS.regurgitationSecond}–30 days, and the vet decides`;
  }
  const hold = animal.holds.find((one) => one.reason === 'vet');
  return hold ? (hold.words ?? 'a hold until the vet’s word') : null;
}

/** The last two within the window of which no vet has spoken; a later one alone does not stand in for the vet's word. */
function secondRegurgitation({ regurgitations, regurgitationsCleared }: AnimalRecord): readonly [Day, Day] | null {
  for (let at = regurgitations.length - 1; at > 0; at--) {
    const [before, again] = [regurgitations[at - 1], regurgitations[at]];
    if (before === undefined || again === undefined || at < regurgitationsCleared) return null;
    if (daysBetween(before, again) <= HOLD_DAYS.regurgitationWindow) return [before, again];
  }
  return null;
}

/** The latest day on which a rest ended or will end; the meal it put off is due from then, not overdue. */
export function restEnds(animal: AnimalRecord): Day | null {
  const rests = [regurgitated(animal), arrived(animal), firstShed(animal), cooled(animal)];
  const travelled = animal.holds.filter((hold) => hold.reason === 'transport').map((hold) => hold.until);
  const ends = [...rests.map((hold) => hold?.until ?? null), ...travelled, animal.opaqueEndedOn].filter(
    (day) => day !== null,
  );
  return ends.length === 0 ? null : ends.reduce(laterDay);
}

/** How many meals it has taken since its last regurgitation; null if it never regurgitated. */
export function mealsSinceRegurgitation(animal: AnimalRecord): number | null {
  const last = animal.regurgitations.at(-1);
  if (last === undefined) return null;
  return animal.offers.filter((offer) => offer.taken && offer.day > last).length;
}

function opaque(animal: AnimalRecord, on: Day): Hold | null {
  if (animal.opaqueOn === null || animal.opaqueOn > on) return null;
  const until = addDays(animal.opaqueOn, HOLD_DAYS.opaque);
  return {
    kind: 'opaque',
    reason: `opaque since ${sayDayShort(animal.opaqueOn)}, until the shed is seen`,
    until,
    source: PUBLISHED,
  };
}

function regurgitated(animal: AnimalRecord): Hold | null {
  const last = animal.regurgitations.at(-1);
  if (last === undefined || animal.regurgitationsCleared >= animal.regurgitations.length) return null;
  const until = addDays(last, HOLD_DAYS.regurgitation);
  return { kind: 'regurgitation', reason: `rest after regurgitating on ${sayDayShort(last)}`, until, source: PRACTICE };
}

/** The keeper’s own hold after transport takes the place of the usual days. */
function arrived(animal: AnimalRecord): Hold | null {
  const { acquiredOn, holds } = animal;
  if (acquiredOn === null || acquiredOn === animal.hatchedOn || animal.mealsTaken > 0) return null;
  if (holds.some((hold) => hold.reason === 'transport' && hold.since >= acquiredOn)) return null;
  const until = addDays(acquiredOn, HOLD_DAYS.arrival);
  return { kind: 'arrival', reason: `came here on ${sayDayShort(acquiredOn)}`, until, source: PUBLISHED };
}

function firstShed(animal: AnimalRecord): Hold | null {
  if (animal.hatchedOn === null || animal.acquiredOn !== null || animal.mealsTaken > 0 || animal.sheds > 0) return null;
  const until = addDays(animal.hatchedOn, HOLD_DAYS.firstShed);
  return { kind: 'first-shed', reason: 'first meal after the first shed', until, source: PUBLISHED };
}

function cooled(animal: AnimalRecord): Hold | null {
  if (animal.cooling === null) return null;
  const { from, to } = animal.cooling;
  const until = to === null ? null : addDays(to, HOLD_DAYS.afterCooling);
  return { kind: 'cooling', reason: `cooled since ${sayDayShort(from)}`, until, source: PRACTICE };
}

function placed(animal: AnimalRecord): readonly Hold[] {
  const said = {
    vet: 'the vet’s word is needed',
    quarantine: 'quarantine',
    treatment: 'as the vet wrote',
    transport: 'transport',
    keeper: 'the keeper’s hold',
  };
  return animal.holds
    .filter((hold) => hold.reason !== 'quarantine')
    .map((hold) => ({
      kind: hold.reason,
      reason: hold.words ?? said[hold.reason],
      until: hold.until,
      source: 'placed by a keeper',
    }));
}

/** Rule CARE-WITHHOLD: food is withheld while a prescription that says so is under way; only the vet’s paper says when it ends. */
function treated(animal: AnimalRecord, on: Day): Hold | null {
  const record = withholdsFood(animal, on);
  if (record === null) return null;
  const { drug, prescriber, endsOn } = record.written;
  const until = endsOn === undefined ? null : addDays(endsOn as Day, 1);
  return {
    kind: 'treatment',
    reason: `no food under treatment (${drug}), as ${prescriber} wrote`,
    until,
    source: 'the vet’s prescription',
  };
}

function compareUntil(a: Day | null, b: Day | null): number {
  if (a === b) return 0;
  if (a === null) return 1;
  if (b === null) return -1;
  return a < b ? -1 : 1;
}
