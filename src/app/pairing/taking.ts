import {
  type AnimalRecord,
  type Facility,
  type Id,
  nameOf,
  ok,
  type Problem,
  problem,
  type Result,
  refuse,
  sayDayShort,
  sayId,
} from '../../core/index.ts';
import type { Choice, Role } from './choice.ts';

/**
 * The choice with an animal taken into it. A male becomes the sire and a female the dam, whichever comes first; of an
 * unsexed one the keeper is asked, unless a half was asked for. Errors: `unknown-id`, `animal-gone`, `pairing-self`,
 * `pairing-sexes`, `pairing-species`.
 */
export function take(facility: Facility, choice: Choice, id: Id, wanted: Role | null): Result<Choice> {
  const animal = facility.animals.get(id);
  if (animal === undefined) return refuse('unknown-id', { id: sayId(id) });
  const gone = goneFault(animal);
  if (gone !== null) return { ok: false, problem: gone };
  const own = roleOf(animal);
  const role = wanted ?? (own === null ? null : (emptyHalf(choice) ?? own));
  if (role === null) return asked(facility, choice, animal);
  if (choice[otherOf(role)] === id) return refuse('pairing-self', { animal: nameOf(facility, id) });
  if (own !== null && own !== role)
    return refuse('pairing-sexes', { role, sex: own === 'sire' ? 'a male' : 'a female' }, role);
  const stranger = speciesFault(facility, choice, animal, role);
  if (stranger !== null) return { ok: false, problem: stranger };
  return ok({ ...choice, [role]: id, either: null });
}

/** That an animal left is said on its half. */
export function goneFault({ left }: AnimalRecord): Problem | null {
  return left === null ? null : problem('animal-gone', { day: sayDayShort(left.day), how: left.how });
}

/** The half that an animal's sex gives it; null for an unsexed one. */
export function roleOf({ sex }: AnimalRecord): Role | null {
  return sex === 'male' ? 'sire' : sex === 'female' ? 'dam' : null;
}

export function otherOf(role: Role): Role {
  return role === 'sire' ? 'dam' : 'sire';
}

/** The half that is waited for where only one is chosen: a second male is a slip, not another sire. */
export function emptyHalf({ sire, dam }: Choice): Role | null {
  if ((sire === null) === (dam === null)) return null;
  return sire === null ? 'sire' : 'dam';
}

function asked(facility: Facility, choice: Choice, animal: AnimalRecord): Result<Choice> {
  const chosen = [choice.sire, choice.dam].flatMap((id) => (id === null ? [] : (facility.animals.get(id) ?? [])));
  if (chosen.includes(animal)) return refuse('pairing-self', { animal: nameOf(facility, animal.id) });
  const other = chosen[0];
  if (other !== undefined && other.species !== animal.species)
    return refuse('pairing-species', speciesWords(roleOf(other) ?? 'sire', other.species, animal.species));
  return ok({ ...choice, either: animal.id });
}

function speciesFault(facility: Facility, choice: Choice, animal: AnimalRecord, role: Role): Problem | null {
  const otherId = choice[otherOf(role)];
  const other = otherId === null ? undefined : facility.animals.get(otherId);
  if (other === undefined || other.species === animal.species) return null;
  return problem('pairing-species', speciesWords(role, animal.species, other.species), role);
}

function speciesWords(role: Role, own: string, other: string): { readonly sire: string; readonly dam: string } {
  return role === 'sire' ? { sire: own, dam: other } : { sire: other, dam: own };
}
