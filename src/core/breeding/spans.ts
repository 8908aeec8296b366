import type { AnimalRecord, SeasonMark } from '../animal/index.ts';
import type { Facility } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import type { Milestone, Step } from './calendar.ts';
import { endedSeasons } from './marks.ts';
import { spanBetween } from './windows.ts';

/** Own dates of one step: how many days it took, by female. */
export type Spans = ReadonlyMap<Id, readonly number[]>;

/** Every span of a step in a species that the site's own log holds, by the female it happened to. */
export function spansOf(facility: Facility, species: string, step: Step): Spans {
  const found = new Map<Id, number[]>();
  const add = (female: Id, span: number | null): void => {
    if (span !== null) found.set(female, [...(found.get(female) ?? []), span]);
  };
  if (step.to === 'hatched') {
    for (const clutch of facility.clutches.values()) {
      const dam = facility.animals.get(clutch.dam);
      // Where none hatched, the day on which that was written is no hatching.
      const [first] = clutch.hatchings;
      if (dam?.species === species && clutch.bears === 'eggs' && first !== undefined)
        add(dam.id, spanBetween(clutch.laidOn, first.day));
    }
    return found;
  }
  for (const animal of facility.animals.values()) {
    if (animal.species !== species) continue;
    if (step.to === 'first shed') addFirstShed(animal, add);
    else for (const season of endedSeasons(animal)) add(animal.id, spanIn(season, step));
  }
  return found;
}

function addFirstShed(animal: AnimalRecord, add: (female: Id, span: number | null) => void): void {
  if (animal.dam !== null && animal.acquiredOn === null)
    add(animal.dam, spanBetween(animal.hatchedOn, animal.firstShedOn));
}

/** From the last mark of the first kind before the first of the second. */
function spanIn(season: readonly SeasonMark[], { from, to }: Step): number | null {
  const end = season.findIndex((mark) => mark.kind === MARK_OF[to]);
  if (end < 0) return null;
  const begin = season.slice(0, end).findLast((mark) => mark.kind === MARK_OF[from]);
  return spanBetween(begin?.day ?? null, season[end]?.day ?? null);
}

/** The mark of the record that stands for a milestone; null for those that are not a female's. */
export const MARK_OF: Readonly<Record<Milestone, SeasonMark['kind'] | null>> = {
  lock: 'lock',
  ovulation: 'ovulation',
  'pre-lay shed': 'pre-lay shed',
  laid: 'laid',
  born: 'born',
  hatched: null,
  'first shed': null,
};
