import type { AnimalRecord, Day, Facility, Id } from '../../core/index.ts';

/** Young of one clutch, or, where nobody wrote it, of one day and one other parent. */
export interface Brood {
  readonly key: string;
  /** Null where nobody wrote when. */
  readonly hatched: Day | null;
  readonly mate: Id | null;
  readonly young: readonly Young[];
}

/** A young, and what came of it in turn. */
export interface Young {
  readonly animal: AnimalRecord;
  readonly broods: readonly Brood[];
}

/** The young of an animal with theirs, latest first. The second generation is the last, so that a ring of parents ends here too. */
export function broodsOf(facility: Facility, of: Id, generations = 2): readonly Brood[] {
  const animals = [...facility.animals.values()].filter((one) => one.sire === of || one.dam === of);
  const groups = new Map<string, AnimalRecord[]>();
  for (const one of animals) {
    // The young of one clutch may have hatched on several days.
    const key = `${one.clutch ?? one.hatchedOn ?? ''} ${mateOf(one, of) ?? ''}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups]
    .map(([key, young]) => ({ key, young, hatched: firstDay(young) }))
    .sort((a, b) => (`${a.hatched ?? ''}${a.key}` < `${b.hatched ?? ''}${b.key}` ? 1 : -1))
    .map(({ key, young, hatched }) => ({
      key,
      hatched,
      mate: young[0] === undefined ? null : mateOf(young[0], of),
      young: young.map((animal) => ({
        animal,
        broods: generations > 1 ? broodsOf(facility, animal.id, generations - 1) : [],
      })),
    }));
}

/** The first of their days counts for a brood. */
function firstDay(young: readonly AnimalRecord[]): Day | null {
  const days = young.flatMap(({ hatchedOn }) => hatchedOn ?? []).sort();
  return days[0] ?? null;
}

function mateOf({ sire, dam }: AnimalRecord, of: Id): Id | null {
  return sire === of ? dam : sire;
}
