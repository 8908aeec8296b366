import {
  type AnimalRecord,
  type Facility,
  type Id,
  ok,
  parseId,
  problem,
  type Result,
  sayAnimal,
  sayId,
} from '../../../core/index.ts';
import type { Role } from './choice.ts';

/** The animals that can be this parent by their species and sex, by name; those that left count, too. */
export function candidates(facility: Facility, species: string, role: Role): readonly AnimalRecord[] {
  const wrong = role === 'sire' ? 'female' : 'male';
  return [...facility.animals.values()]
    .filter((one) => one.species === species && one.sex !== wrong)
    .sort((a, b) => sayAnimal(a).localeCompare(sayAnimal(b)));
}

/** Of some animals those that a typed name, number or id begins or is part of; nothing for nothing. */
export function matching(animals: readonly AnimalRecord[], typed: string): readonly AnimalRecord[] {
  const term = plain(typed);
  if (term === '') return [];
  const words = (one: AnimalRecord): string => plain(`${one.name ?? ''} ${one.number ?? ''}`);
  const id = term.replace(/[\s-]/g, '');
  const found = animals.filter((one) => words(one).includes(term) || (id !== '' && plain(one.id).startsWith(id)));
  return [
    ...found.filter((one) => words(one).startsWith(term)),
    ...found.filter((one) => !words(one).startsWith(term)),
  ];
}

/** An animal as a list of names offers it: no two are alike. */
export function sayListed(animal: AnimalRecord): string {
  return `${sayAnimal(animal)} · ${sayId(animal.id)}`;
}

/** The animal that was typed as an id, as a line of the list, or as a name or number. Errors: `check-failed`, `name-unknown`, `name-shared`. */
export function animalTyped(facility: Facility, typed: string): Result<Id> {
  const read = parseId(typed.slice(typed.lastIndexOf('·') + 1));
  if (read.ok && facility.animals.has(read.value.id)) return ok(read.value.id);
  const term = plain(typed);
  const named = [...facility.animals.values()].filter((one) =>
    [one.name, one.number].some((word) => plain(word) === term),
  );
  const [only, ...more] = named;
  if (more.length > 0) return fault(problem('name-shared', { typed, count: named.length }));
  if (only !== undefined) return ok(only.id);
  return fault(!read.ok && read.problem.code === 'check-failed' ? read.problem : problem('name-unknown', { typed }));
}

function fault(why: ReturnType<typeof problem>): { readonly ok: false; readonly problem: typeof why } {
  return { ok: false, problem: why };
}

/** Lower case and without accents. */
function plain(text: string | null): string {
  return (text ?? '').toLowerCase().normalize('NFD').replace(/\p{M}/gu, '').trim();
}
