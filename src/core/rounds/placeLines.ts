import { type AnimalRecord, type Skip, sayAnimal } from '../animal/index.ts';
import type { Day } from '../days.ts';
import type { RoundTask } from '../events/index.ts';
import type { Facility } from '../facility/index.ts';
import { type Problem, problem } from '../problems.ts';
import { handledTooSoon } from './handling.ts';
import { concerns, type Home } from './homes.ts';
import { intervalOf } from './intervals.ts';
import { isLeft, type LineFacts, lineOf, type RoundLine, windowAfter } from './line.ts';

/** A home's line for a task that is done at the place; null where the task is not for it. */
export function placeLine(facility: Facility, home: Home, task: RoundTask, on: Day): RoundLine | null {
  if (!concerns(task, home)) return null;
  const interval = intervalOf(facility, home, task);
  if (interval === null) return null;
  const { place, animals, group } = home;
  const lastDone = lastDoneAt(home, task, on);
  const skip = skipOn(place.skipped[task], on);
  const window = windowAfter(lastDone?.day ?? null, interval.everyDays, on);
  const facts: LineFacts = { ...window, lastDone, interval, words: task === 'look' ? againWords(animals) : null };
  return lineOf({ task, of: place.id, place, group, animals }, stateOf(facts, skip, doubtOf(home, task, on), on));
}

/** True where the task is done at the place and not at each animal. */
export function isAtPlace(task: RoundTask): boolean {
  return task !== 'feeding' && task !== 'weigh' && task !== 'treat';
}

/** That a task was passed over on that very day. */
export function skipOn(skips: readonly Skip[] | undefined, on: Day): Skip | null {
  return skips?.find(({ day }) => day === on) ?? null;
}

/** Done beats skipped, skipped beats held: what stands on the line is the last word of the day. */
export function stateOf(facts: LineFacts, skip: Skip | null, doubt: Problem | null, on: Day): LineFacts {
  if (facts.lastDone?.day === on) return { ...facts, state: 'done' };
  if (skip !== null) return { ...facts, state: 'skipped', skip };
  if (doubt === null || !isLeft(facts)) return facts;
  // A second look is due all the same: it only needs an answer of its own.
  return { ...facts, problem: doubt, state: doubt.code === 'look-again' ? facts.state : 'held' };
}

/** Rule CARE-LOOK: an animal that is to be looked at again stays so until somebody says of it that it is well. */
export function looksAgain(animals: readonly AnimalRecord[]): readonly AnimalRecord[] {
  return animals.filter((animal) => animal.lastLook?.well === false);
}

function lastDoneAt({ place }: Home, task: RoundTask, on: Day): RoundLine['lastDone'] {
  const deed = place.deeds[task]?.findLast((one) => one.day <= on);
  return deed === undefined ? null : { day: deed.day, by: deed.keeper };
}

function againWords(animals: readonly AnimalRecord[]): string | null {
  const again = looksAgain(animals);
  if (again.length === 0) return null;
  return again
    .map(
      (animal) => `${animals.length > 1 ? `${sayAnimal(animal)}: ` : ''}look again${sayAfter(animal.lastLook?.words)}`,
    )
    .join('; ');
}

function sayAfter(words: string | null | undefined): string {
  return words ? `, ${words}` : '';
}

function doubtOf({ animals }: Home, task: RoundTask, on: Day): Problem | null {
  if (task === 'clean') return handledTooSoon(animals, on);
  const [again] = task === 'look' ? looksAgain(animals) : [];
  if (again === undefined) return null;
  return problem('look-again', { animal: sayAnimal(again), words: again.lastLook?.words ?? 'nobody wrote why' });
}
