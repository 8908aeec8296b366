import { ok, type Result, refuse } from '../problems.ts';
import { exact } from './exact.ts';
import { lengthInRange } from './length.ts';

/** A site's own rule for large constrictors: two people from this length, one more for each further step, in m. */
export interface PeopleRule {
  readonly fromM: number;
  readonly stepM: number;
}

/** Rule CARE-PEOPLE: two people from 2.4 m (8 ft), one more per further 1.2 m (1.2-1.5 m; common practice, no source). */
export const PEOPLE_RULE: PeopleRule = { fromM: 2.4, stepM: 1.2 };

/** Stands beside the number of people. */
export const PEOPLE_CAUTION =
  'The least by the site’s own rule. Never open or feed a large constrictor alone; its temper, your training and your licence may ask for more people.';

/** Rule CARE-PEOPLE: how many people open the tub of a large constrictor. Errors: those of a length, `not-finite` and `not-positive` for the rule. */
export function peopleNeeded(
  lengthM: number,
  rule: PeopleRule = PEOPLE_RULE,
): Result<{ readonly people: number; readonly caution: string }> {
  for (const [path, value] of Object.entries(rule)) {
    if (!Number.isFinite(value)) return refuse('not-finite', { what: 'length in the rule' }, path);
    if (value <= 0) return refuse('not-positive', { what: 'length in the rule' }, path);
  }
  const length = lengthInRange(lengthM);
  if (!length.ok) return length;
  const people = lengthM < rule.fromM ? 1 : 2 + Math.floor(exact((lengthM - rule.fromM) / rule.stepM));
  return ok({ people, caution: PEOPLE_CAUTION });
}
