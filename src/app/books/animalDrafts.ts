import {
  type Day,
  type EventDraft,
  type Facility,
  type Grams,
  type Id,
  ok,
  type Payload,
  parseDay,
  parseWeight,
  problem,
  type Result,
  refuse,
  SEXES,
  sayDayShort,
} from '../../core/index.ts';
import { written } from './Field.tsx';

/** An animal as the form gives it. */
export interface NewAnimal {
  readonly added: Payload<'animal-added'>;
  readonly place: Id | null;
  readonly traitCode: string;
  readonly weightG: Grams | null;
}

/** Reads the form. Errors: `text-missing`, `date-malformed`, `date-future`, and those of a weight. */
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
  const added: Payload<'animal-added'> = {
    species,
    sex: SEXES.find((sex) => sex === written(form, 'sex')) ?? 'unsexed',
    ...some('name', written(form, 'animal-name')),
    ...some('number', written(form, 'number')),
    ...some('hatchedOn', hatchedOn.value),
    ...some('acquiredOn', acquiredOn.value),
    ...some('source', written(form, 'source')),
  };
  const place = [...facility.places.keys()].find((id) => id === written(form, 'place')) ?? null;
  return ok({ added, place, traitCode: written(form, 'traits'), weightG: weight.value });
}

/** What adding it writes: the animal, and its place, traits and first weight where they were given. */
export function animalDrafts({ added, place, traitCode, weightG }: NewAnimal, id: Id, day: Day): EventDraft[] {
  const drafts: EventDraft[] = [{ kind: 'animal-added', subjects: [id], payload: added, day }];
  if (place !== null) drafts.push({ kind: 'animal-moved', subjects: [id], payload: { to: place }, day });
  if (traitCode !== '') drafts.push({ kind: 'traits-set', subjects: [id], payload: { code: traitCode }, day });
  if (weightG !== null) drafts.push({ kind: 'animal-weighed', subjects: [id], payload: { weightG }, day });
  return drafts;
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
