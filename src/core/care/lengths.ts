import type { AnimalRecord, Measured } from '../animal/index.ts';
import { type Day, sayDayShort } from '../days.ts';
import { type Problem, problem } from '../problems.ts';
import { sayLength } from '../units.ts';
import { type Decision, dayFault, type Moment } from './decide.ts';
import { lengthInRange } from './length.ts';
import { PEOPLE_RULE, peopleNeeded } from './people.ts';

/** Rule CARE-LENGTH: shorter than the last by more, or longer by more than so many times, is asked about (common practice, no source). */
export const LENGTH_DOUBT = { shorterPercent: 5, times: 1.5 } as const;

/** A length as a keeper measured or guessed it. */
export interface Measuring {
  readonly lengthMm: number;
  readonly of: Measured['of'];
  readonly guessed: boolean;
}

/** How many people open its tub, by which length. */
export interface People {
  readonly people: number;
  readonly length: Measured;
  readonly caution: string;
  readonly because: string;
}

/**
 * What a measured length writes. Errors: those of a day and a length. Asked about: an animal that has left, and what
 * {@link checkLength} doubts.
 */
export function decideMeasured(animal: AnimalRecord, measuring: Measuring, moment: Moment): Decision {
  const wrongDay = dayFault(animal, moment);
  if (wrongDay !== null) return { kind: 'refused', problem: wrongDay };
  const possible = lengthInRange(measuring.lengthMm / 1000);
  if (!possible.ok) return { kind: 'refused', problem: possible.problem };
  const { lengthMm, of, guessed } = measuring;
  const payload = guessed ? { lengthMm, of, guessed } : { lengthMm, of };
  const drafts = [{ kind: 'animal-measured' as const, subjects: [animal.id], payload, day: moment.day }];
  const said = `${guessed ? 'guessed' : 'measured'} ${sayLength(lengthMm)}, ${sayKindOf(of)}`;
  const doubt = goneDoubt(animal) ?? checkLength(animal, measuring, moment.day);
  return doubt === null ? { kind: 'accepted', drafts, said } : { kind: 'asks', problem: doubt, drafts, said };
}

/** Rule CARE-LENGTH: asks about a length that the last of its kind, or the one of the other kind, does not fit; null if all is well. */
export function checkLength(animal: AnimalRecord, { lengthMm, of }: Measuring, day: Day): Problem | null {
  const last = animal.lengths.find((one) => one.of === of && one.day <= day);
  const doubt = last === undefined ? null : againstLast(last, lengthMm);
  if (doubt !== null) return doubt;
  const other = animal.lengths.find((one) => one.of !== of);
  if (other === undefined) return null;
  const [total, body] = of === 'total' ? [lengthMm, other.lengthMm] : [other.lengthMm, lengthMm];
  return body < total ? null : problem('length-order', { body: sayLength(body), total: sayLength(total) });
}

/**
 * Rule CARE-PEOPLE for an animal: by its longest known length and the site's own first length, if it has one. Null where
 * nobody measured it. The length from snout to vent alone counts as the least that it is.
 */
export function peopleFor(animal: AnimalRecord, twoPeopleFromM: number | null): People | null {
  const length = [...animal.lengths].sort((a, b) => b.lengthMm - a.lengthMm)[0];
  if (length === undefined) return null;
  const rule = { ...PEOPLE_RULE, fromM: twoPeopleFromM ?? PEOPLE_RULE.fromM };
  const needed = peopleNeeded(length.lengthMm / 1000, rule);
  if (!needed.ok) return null;
  const whose = twoPeopleFromM === null ? 'common practice, no source' : 'the site’s own rule';
  const guessed = length.guessed ? ', guessed' : '';
  return {
    ...needed.value,
    length,
    because: `${sayLength(length.lengthMm)} ${sayKindOf(length.of)} on ${sayDayShort(length.day)}${guessed}; two people from ${rule.fromM} m, one more for each further ${rule.stepM} m (${whose})`,
  };
}

/** `Three people`: a count as flags and screens say it. */
export function sayPeople(people: number): string {
  return `${PEOPLE_WORDS[people] ?? String(people)} ${people === 1 ? 'person' : 'people'}`;
}

const PEOPLE_WORDS: Readonly<Record<number, string>> = {
  1: 'One',
  2: 'Two',
  3: 'Three',
  4: 'Four',
  5: 'Five',
  6: 'Six',
};

/** `total length`, `snout to vent`. */
export function sayKindOf(of: Measured['of']): string {
  return of === 'total' ? 'total length' : 'snout to vent';
}

function againstLast(last: Measured, lengthMm: number): Problem | null {
  const words = { length: sayLength(lengthMm), last: sayLength(last.lengthMm), day: sayDayShort(last.day) };
  if (lengthMm < last.lengthMm * (1 - LENGTH_DOUBT.shorterPercent / 100))
    return problem('length-unlikely', { ...words, than: 'shorter' });
  return lengthMm > last.lengthMm * LENGTH_DOUBT.times
    ? problem('length-unlikely', { ...words, than: 'much longer' })
    : null;
}

function goneDoubt({ left }: AnimalRecord): Problem | null {
  return left === null ? null : problem('animal-gone', { day: sayDayShort(left.day), how: left.how });
}
