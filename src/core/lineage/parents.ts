import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import type { EventDraft } from '../care/index.ts';
import { type Day, sayDayShort } from '../days.ts';
import { type Facility, nameOf } from '../facility/index.ts';
import type { Parentage } from '../genetics/index.ts';
import type { Id } from '../ids.ts';
import { ok, type Problem, problem, type Result } from '../problems.ts';

/** Who an animal's parents are; null is unknown. */
export interface Parents {
  readonly sire: Id | null;
  readonly dam: Id | null;
}

/**
 * What speaks against these parents of an animal: one that is not here, the animal itself, a female as sire or a male as
 * dam, another species, a parent younger than its young, or one that comes down from the animal. Null if nothing does.
 * Errors: `parent-unknown`, `parent-self`, `parent-sex`, `parent-species`, `parent-younger`, `parent-descends`.
 */
export function parentsFault(facility: Facility, animal: AnimalRecord, parents: Parents): Problem | null {
  const own = ownAncestor(facility, animal, parents);
  if (own !== null) return own;
  return parentFault(facility, animal, parents.sire, 'sire') ?? parentFault(facility, animal, parents.dam, 'dam');
}

/** The event that sets the parents, or why not; nothing is written of one parent if the other is wrong. */
export function parentsDraft(facility: Facility, animal: AnimalRecord, parents: Parents, day: Day): Result<EventDraft> {
  const fault = parentsFault(facility, animal, parents);
  if (fault !== null) return { ok: false, problem: fault };
  const payload = {
    ...(parents.sire === null ? {} : { sire: parents.sire }),
    ...(parents.dam === null ? {} : { dam: parents.dam }),
  };
  return ok({ kind: 'parents-set', subjects: [animal.id], payload, day });
}

/**
 * The pedigree of some animals with all their ancestors, as far as the site knows them. A parent that the site has no
 * record of counts as unknown. What is wrong with it (an animal that is its own ancestor) the reader of it says.
 */
export function pedigreeAround({ animals }: Facility, of: readonly Id[]): readonly Parentage[] {
  const found = new Map<Id, Parentage>();
  const open = [...of];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    const one = animals.get(id);
    if (one === undefined || found.has(id)) continue;
    const [sire, dam] = [one.sire, one.dam].map((parent) => (parent !== null && animals.has(parent) ? parent : null));
    found.set(id, { id, sire: sire ?? null, dam: dam ?? null });
    open.push(...[sire, dam].filter((parent) => parent !== null && parent !== undefined));
  }
  return [...found.values()];
}

function ownAncestor(facility: Facility, animal: AnimalRecord, { sire, dam }: Parents): Problem | null {
  for (const parent of [sire, dam].filter((one) => one !== null)) {
    if (parent === animal.id) return problem('parent-self', { animal: sayAnimal(animal) });
    const above = pedigreeAround(facility, [parent]);
    if (above.some((one) => one.id === animal.id))
      return problem('parent-descends', { animal: sayAnimal(animal), parent: nameOf(facility, parent) });
  }
  return null;
}

function parentFault(facility: Facility, animal: AnimalRecord, id: Id | null, role: 'sire' | 'dam'): Problem | null {
  if (id === null) return null;
  const parent = facility.animals.get(id);
  if (parent === undefined) return problem('parent-unknown', { id: sayAnimal(animal), parent: nameOf(facility, id) });
  const [name, young] = [sayAnimal(parent), sayAnimal(animal)];
  if (parent.sex === (role === 'sire' ? 'female' : 'male'))
    return problem('parent-sex', { parent: name, sex: parent.sex, role });
  if (parent.species !== animal.species)
    return problem('parent-species', { parent: name, species: parent.species, animal: young, own: animal.species });
  if (animal.hatchedOn !== null && parent.hatchedOn !== null && parent.hatchedOn >= animal.hatchedOn)
    return problem('parent-younger', {
      parent: name,
      hatched: sayDayShort(parent.hatchedOn),
      animal: young,
      own: sayDayShort(animal.hatchedOn),
    });
  return null;
}
