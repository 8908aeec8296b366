import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import { type Decision, dayFault, type EventDraft, type Moment } from '../care/index.ts';
import { daysBetween, sayDayShort } from '../days.ts';
import { type Facility, nameOf } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';
import { weightInRange } from '../units.ts';
import { breedingOf } from './calendar.ts';
import { isEnd, marksOfSeason } from './marks.ts';
import { candidateSires } from './sires.ts';

/** What can be written of a female in her season. */
export type FemaleAct =
  | { readonly do: 'follicles'; readonly largestMm: number; readonly count?: number }
  | { readonly do: 'ovulation' }
  | { readonly do: 'pre-lay-shed' }
  | Laying
  | Birth;

/** A laying: the clutch has an id of its own by then. */
export interface Laying {
  readonly do: 'laid';
  readonly clutch: Id;
  readonly eggs: number;
  readonly slugs: number;
  readonly clutchG?: number;
  readonly damG?: number;
  /** Null: nobody knows, or several are possible. */
  readonly sire: Id | null;
}

/** A birth of live young. */
export interface Birth {
  readonly do: 'born';
  readonly clutch: Id;
  readonly young: number;
  readonly stillborn: number;
  readonly slugs: number;
  readonly damG?: number;
  readonly sire: Id | null;
}

/** Rule BREED-AGAIN: two layings of one female closer than this are asked about. */
export const LAYING_GAP_DAYS = 30;

/** What an observation on a female, a laying or a birth writes; refused or asked about in words. */
export function decideFemale(facility: Facility, female: AnimalRecord, act: FemaleAct, moment: Moment): Decision {
  const refused = dayFault(female, moment) ?? femaleFault(female) ?? actRefusal(facility, female, act);
  if (refused !== null) return { kind: 'refused', problem: refused };
  const [draft, said] = draftOf(female, act, moment);
  const doubt = goneFault(female) ?? actDoubt(facility, female, act, moment);
  return doubt === null
    ? { kind: 'accepted', drafts: [draft], said }
    : { kind: 'asks', problem: doubt, drafts: [draft], said };
}

function femaleFault(animal: AnimalRecord): Problem | null {
  return animal.sex === 'male' ? problem('season-male', { animal: sayAnimal(animal) }) : null;
}

function goneFault(animal: AnimalRecord): Problem | null {
  return animal.left === null
    ? null
    : problem('animal-gone', { day: sayDayShort(animal.left.day), how: animal.left.how });
}

function actRefusal(facility: Facility, female: AnimalRecord, act: FemaleAct): Problem | null {
  if (act.do === 'follicles')
    return act.largestMm >= 1 && act.largestMm <= 100 ? null : problem('follicle-impossible', { mm: act.largestMm });
  if (act.do !== 'laid' && act.do !== 'born') return null;
  const bears = breedingOf(female.species)?.bears;
  if (bears !== undefined && bears !== (act.do === 'laid' ? 'eggs' : 'live young'))
    return problem(act.do === 'laid' ? 'bears-live' : 'lays-eggs', { species: female.species });
  const counts = act.do === 'laid' ? [act.eggs, act.slugs] : [act.young, act.stillborn, act.slugs];
  if (counts.some((one) => !Number.isInteger(one) || one < 0)) return problem('count-whole', {});
  if (counts.every((one) => one === 0)) return problem('clutch-empty', {});
  const weighed = act.damG === undefined ? null : weightInRange(act.damG);
  if (weighed !== null && !weighed.ok) return weighed.problem;
  return act.sire === null ? null : sireFault(facility, female, act.sire);
}

function sireFault(facility: Facility, female: AnimalRecord, id: Id): Problem | null {
  const sire = facility.animals.get(id);
  if (sire === undefined) return problem('unknown-id', { id: nameOf(facility, id) });
  const name = sayAnimal(sire);
  if (sire.sex !== 'male') return problem('parent-sex', { parent: name, sex: sire.sex, role: 'sire' });
  if (sire.species !== female.species) return problem('pairing-species', { sire: sire.species, dam: female.species });
  return null;
}

function actDoubt(facility: Facility, female: AnimalRecord, act: FemaleAct, moment: Moment): Problem | null {
  if (act.do !== 'laid' && act.do !== 'born') return againDoubt(female, act, moment);
  const last = female.season.findLast(isEnd);
  if (last !== undefined && Math.abs(daysBetween(last.day, moment.day)) < LAYING_GAP_DAYS)
    return problem('laid-again', { female: sayAnimal(female), day: sayDayShort(last.day) });
  const sires = candidateSires(facility, female, moment.day);
  if (sires.length === 0) return problem('laid-unpaired', { female: sayAnimal(female) });
  const sire = act.sire === null ? undefined : facility.animals.get(act.sire);
  if (sire !== undefined && !sires.some((one) => one.id === sire.id))
    return problem('sire-never-with', { sire: sayAnimal(sire), female: sayAnimal(female) });
  if (sire?.left && sires.find((one) => one.id === sire.id)?.season === 'last')
    return problem('sire-gone', { sire: sayAnimal(sire), how: sire.left.how, day: sayDayShort(sire.left.day) });
  return sizeDoubt(female, act);
}

function sizeDoubt(female: AnimalRecord, act: Laying | Birth): Problem | null {
  const usual = breedingOf(female.species)?.clutch;
  const size = act.do === 'laid' ? act.eggs + act.slugs : act.young + act.stillborn;
  if (usual === null || usual === undefined || size <= usual.range[1]) return null;
  return problem('clutch-unusual', { size, low: usual.range[0], high: usual.range[1] });
}

function againDoubt(female: AnimalRecord, act: FemaleAct, moment: Moment): Problem | null {
  const kind = act.do === 'ovulation' ? 'ovulation' : act.do === 'pre-lay-shed' ? 'pre-lay shed' : null;
  if (kind === null) return null;
  const before = marksOfSeason(female, moment.day).find((mark) => mark.kind === kind);
  return before === undefined ? null : problem('seen-again', { what: kind, day: sayDayShort(before.day) });
}

function draftOf(female: AnimalRecord, act: FemaleAct, { day }: Moment): readonly [EventDraft, string] {
  const subjects = [female.id];
  switch (act.do) {
    case 'follicles': {
      const payload = { largestMm: act.largestMm, ...(act.count === undefined ? {} : { count: act.count }) };
      return [{ kind: 'follicles-measured', subjects, payload, day }, `follicles ${act.largestMm} mm`];
    }
    case 'ovulation':
      return [{ kind: 'ovulation-seen', subjects, payload: {}, day }, 'ovulation'];
    case 'pre-lay-shed':
      return [{ kind: 'pre-lay-shed-seen', subjects, payload: {}, day }, 'pre-lay shed'];
    case 'laid': {
      const { do: _do, sire, ...counts } = act;
      const payload = { ...counts, ...(sire === null ? {} : { sire }) };
      return [{ kind: 'clutch-laid', subjects: [female.id, act.clutch], payload, day }, sayLaid(act)];
    }
    case 'born': {
      const { do: _do, sire, ...counts } = act;
      const payload = { ...counts, ...(sire === null ? {} : { sire }) };
      return [
        { kind: 'young-born', subjects: [female.id, act.clutch], payload, day },
        `gave birth: ${act.young} young`,
      ];
    }
    default:
      return act satisfies never;
  }
}

function sayLaid({ eggs, slugs }: Laying): string {
  const good = `${eggs} ${eggs === 1 ? 'egg' : 'eggs'}`;
  return slugs === 0 ? `laid ${good}` : `laid ${good} and ${slugs} ${slugs === 1 ? 'slug' : 'slugs'}`;
}
