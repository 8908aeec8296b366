import {
  type AnimalRecord,
  type Day,
  type EventDraft,
  type Facility,
  type Grams,
  geneticSex,
  type Id,
  lociFor,
  ok,
  type Parents,
  type Payload,
  type Problem,
  parentsFault,
  parseDay,
  parseWeight,
  problem,
  type Result,
  readTraits,
  refuse,
  SEXES,
  sayDayShort,
  type TraitSaying,
} from '../../core/index.ts';
import { LogFailure } from '../../store/index.ts';
import { animalTyped } from '../traits/parents/index.ts';
import { written } from './Field.tsx';

/** An animal as the form gives it. */
export interface NewAnimal {
  readonly added: Payload<'animal-added'>;
  readonly place: Id | null;
  /** Null where nobody wrote any. */
  readonly said: TraitSaying | null;
  readonly weightG: Grams | null;
  readonly hatchedOn: Day | null;
  readonly parents: Parents;
}

/**
 * Reads the form. Errors: `text-missing`, `date-malformed`, `date-future`, those of a weight, of a trait code or trade
 * words, and of a parent's name or id.
 */
export function newAnimal(form: FormData, facility: Facility, today: Day): Result<NewAnimal> {
  const species = written(form, 'species');
  if (species === '') return refuse('text-missing', { what: 'species' });
  const hatchedOn = dayOf(written(form, 'hatched'), today);
  if (!hatchedOn.ok) return hatchedOn;
  const acquiredOn = dayOf(written(form, 'acquired'), today);
  if (!acquiredOn.ok) return acquiredOn;
  const typed = written(form, 'weight');
  const weight: Result<Grams | null> = typed === '' ? ok(null) : parseWeight(typed);
  if (!weight.ok) return weight;
  const sex = SEXES.find((one) => one === written(form, 'sex')) ?? 'unsexed';
  const traits = written(form, 'traits');
  const said = traits === '' ? ok(null) : readTraits(traits, lociFor(facility, species).loci, geneticSex(sex));
  if (!said.ok) return said;
  const [sire, dam] = [parentIn(form, 'sire', facility), parentIn(form, 'dam', facility)];
  if (!sire.ok) return sire;
  if (!dam.ok) return dam;
  const added: Payload<'animal-added'> = {
    species,
    sex,
    ...some('name', written(form, 'animal-name')),
    ...some('number', written(form, 'number')),
    ...some('hatchedOn', hatchedOn.value),
    ...some('acquiredOn', acquiredOn.value),
    ...some('source', written(form, 'source')),
    ...some('sire', sire.value ?? ''),
    ...some('dam', dam.value ?? ''),
  };
  const place = [...facility.places.keys()].find((id) => id === written(form, 'place')) ?? null;
  return ok({
    added,
    place,
    said: said.value,
    weightG: weight.value,
    hatchedOn: hatchedOn.value || null,
    parents: { sire: sire.value, dam: dam.value },
  });
}

/**
 * What adding it writes: the animal with its parents, and its place, traits and first weight where they were given.
 * Parents that cannot be end the transaction, so that nothing of it is written.
 */
export function animalDrafts(animal: NewAnimal, id: Id, day: Day, facility: Facility): EventDraft[] {
  const { added, place, said, weightG } = animal;
  const fault = ownParentsFault(facility, animal, id);
  if (fault !== null) throw new LogFailure(fault);
  const drafts: EventDraft[] = [{ kind: 'animal-added', subjects: [id], payload: added, day }];
  if (place !== null) drafts.push({ kind: 'animal-moved', subjects: [id], payload: { to: place }, day });
  if (said !== null) {
    const payload = { code: said.code, words: said.words.long };
    drafts.push({ kind: 'traits-set', subjects: [id], payload, day });
  }
  if (weightG !== null) drafts.push({ kind: 'animal-weighed', subjects: [id], payload: { weightG }, day });
  return drafts;
}

/** A parent as it was typed, null for none; a refusal has its line as path. */
function parentIn(form: FormData, role: 'sire' | 'dam', facility: Facility): Result<Id | null> {
  const typed = written(form, role);
  if (typed === '') return ok(null);
  const found = animalTyped(facility, typed);
  return found.ok ? found : { ok: false, problem: { ...found.problem, path: role } };
}

/** What speaks against the parents of an animal that no log knows yet; the path says which of them. */
function ownParentsFault(facility: Facility, { added, hatchedOn, parents }: NewAnimal, id: Id): Problem | null {
  for (const role of ['sire', 'dam'] as const) {
    const parent = facility.animals.get(parents[role] ?? id);
    if (parent === undefined) continue;
    // Of the young one only what it is called, its species and its day count; a record has to have the rest.
    const { species, name = null, number = null } = added;
    const young: AnimalRecord = { ...parent, id, species, name, number, hatchedOn, sire: null, dam: null };
    const fault = parentsFault(facility, young, { sire: null, dam: null, [role]: parent.id });
    if (fault !== null) return { ...fault, path: role };
  }
  return null;
}

function dayOf(text: string, today: Day): Result<Day | ''> {
  if (text === '') return ok('');
  const read = parseDay(text);
  if (!read.ok) return read;
  return read.value > today ? { ok: false, problem: problem('date-future', { day: sayDayShort(read.value) }) } : read;
}

function some<K extends string>(key: K, value: string): { readonly [P in K]?: string } {
  return (value === '' ? {} : { [key]: value }) as { readonly [P in K]?: string };
}
