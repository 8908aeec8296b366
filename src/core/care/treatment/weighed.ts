import { addDays, type Day, daysBetween, sayDayShort } from '../../days.ts';
import { type Problem, problem } from '../../problems.ts';
import { speciesOf } from '../species.ts';

/** Rule CARE-RECENT: a dose is worked out from a weight of at most so many days (common practice, no source). */
export const WEIGHT_DAYS = { young: 7, adult: 30 } as const;

/** When an animal was weighed, and whether somebody doubts the weight. */
export interface Weighed {
  readonly massDate: Day;
  /** True when the entry check asked about this weight (CARE-ENTRY) and nobody weighed again. */
  readonly flagged?: boolean | undefined;
}

/** Whom the weight is for, and when. */
export interface WeighedFor {
  readonly on: Day;
  /** True for a young animal, false for an adult; unknown, it counts as an adult and the answer warns. */
  readonly young?: boolean | undefined;
}

/** Rule CARE-RECENT: why a weight may not carry a dose, or null: `date-future`, `weight-flagged`, `weight-too-old`. */
export function weightFault({ massDate, flagged }: Weighed, { on, young }: WeighedFor): Problem | null {
  const days = daysBetween(massDate, on);
  const most = young === true ? WEIGHT_DAYS.young : WEIGHT_DAYS.adult;
  if (days < 0) return problem('date-future', { day: sayDayShort(massDate) }, 'massDate');
  if (flagged === true) return problem('weight-flagged', { day: sayDayShort(massDate) }, 'flagged');
  if (days <= most) return null;
  const who = young === true ? 'a young animal' : 'an adult';
  return problem('weight-too-old', { days, who, most }, 'massDate');
}

/** The last day on which a weight still carries a dose (CARE-RECENT). */
export function weightGoodUntil({ massDate }: Weighed, young: boolean | undefined): Day {
  return addDays(massDate, young === true ? WEIGHT_DAYS.young : WEIGHT_DAYS.adult);
}

/** What to say when nobody said whether the animal is young and the weight would be too old for a young one. */
export function ageWarning({ massDate }: Weighed, { on, young }: WeighedFor): readonly string[] {
  const days = daysBetween(massDate, on);
  if (young !== undefined || days <= WEIGHT_DAYS.young) return [];
  return [
    `The weight is ${days} days old. That will do for an adult; a young animal is weighed again after ${WEIGHT_DAYS.young} days.`,
  ];
}

/** Whether an animal of that mass is young for its species; undefined where the species is not known here. */
export function isYoung(species: string, massG: number): boolean | undefined {
  const known = speciesOf(species);
  return known === undefined ? undefined : massG < known.adultFromG;
}
