import { signal } from '@preact/signals';
import {
  type Arrival,
  type Arriving,
  arrive,
  type Day,
  type Facility,
  type Grams,
  geneticSex,
  type Id,
  isDay,
  lociFor,
  type Moment,
  ok,
  type Problem,
  parseDay,
  parseWeight,
  type Result,
  readTraits,
  SEXES,
  type TraitSaying,
  usualArrival,
} from '../../core/index.ts';

/** The form as it is typed; days that are left empty are the usual ones. */
export interface ArrivalDraft {
  readonly species: string;
  readonly sex: string;
  readonly name: string;
  readonly number: string;
  readonly hatched: string;
  readonly acquired: string;
  readonly source: string;
  readonly licence: string;
  readonly papers: string;
  readonly microchip: string;
  readonly traits: string;
  readonly place: Id | '';
  readonly weight: string;
  readonly noFood: string;
  readonly apart: 'until' | 'open' | 'no';
  readonly until: string;
}

export const BLANK: ArrivalDraft = {
  ...{ species: '', sex: 'unsexed', name: '', number: '', hatched: '', acquired: '', source: '', licence: '' },
  ...{ papers: '', microchip: '', traits: '', place: '', weight: '', noFood: '', apart: 'until', until: '' },
};

/** What was typed and not yet written: a place that is scanned meanwhile must not take it away. */
export const arrivalDraft = signal<ArrivalDraft>(BLANK);

/** By the name of the line, what is wrong on it. */
export type Faults = Readonly<Record<string, Problem>>;

/** What a draft comes to, with every problem at its line. */
export interface ReadDraft {
  readonly faults: Faults;
  /** Null while something is wrong. */
  readonly ready: Extract<Arriving, { kind: 'ready' }> | null;
}

/** Reads the whole form; nothing is filled in but the usual days. */
export function readArrival(draft: ArrivalDraft, facility: Facility, moment: Moment): ReadDraft {
  const faults: Record<string, Problem> = {};
  const take = <T>(line: string, result: Result<T>, without: T): T => {
    if (result.ok) return result.value;
    faults[line] = result.problem;
    return without;
  };
  const acquiredOn = take('acquired', dayOr(draft.acquired, moment.today), moment.today);
  const usual = usualArrival(acquiredOn);
  const arrival: Arrival = {
    species: draft.species.trim(),
    sex: SEXES.find((one) => one === draft.sex) ?? 'unsexed',
    name: textOr(draft.name),
    number: textOr(draft.number),
    hatchedOn: take('hatched', draft.hatched === '' ? ok(null) : parseDay(draft.hatched), null),
    acquiredOn,
    source: textOr(draft.source),
    licence: textOr(draft.licence),
    papers: textOr(draft.papers),
    microchip: textOr(draft.microchip),
    traits: traitsIn(draft, facility, faults),
    place: draft.place === '' ? null : draft.place,
    weightG: take<Grams | null>('weight', draft.weight.trim() === '' ? ok(null) : parseWeight(draft.weight), null),
    noFoodUntil: take('no-food', dayOr(draft.noFood, usual.noFoodUntil), usual.noFoodUntil),
    quarantine: apartOf(draft, take('quarantine', dayOr(draft.until, usual.quarantineUntil), usual.quarantineUntil)),
  };
  const arriving = arrive(facility, arrival, moment);
  if (arriving.kind === 'refused') for (const one of arriving.problems) faults[one.path ?? 'species'] ??= one;
  return { faults, ready: arriving.kind === 'ready' && Object.keys(faults).length === 0 ? arriving : null };
}

/** The usual days of an arrival, as the lines show them while they are empty. */
export function usualDays({ acquired }: ArrivalDraft, today: Day) {
  return usualArrival(isDay(acquired) ? acquired : today);
}

function apartOf({ apart }: ArrivalDraft, until: Day): Arrival['quarantine'] {
  switch (apart) {
    case 'until':
      return { until, words: null };
    case 'open':
      return { until: null, words: null };
    case 'no':
      return null;
    default:
      return apart satisfies never;
  }
}

function traitsIn(draft: ArrivalDraft, facility: Facility, faults: Record<string, Problem>): Arrival['traits'] {
  if (draft.traits.trim() === '') return null;
  const { loci } = lociFor(facility, draft.species.trim());
  const sex = SEXES.find((one) => one === draft.sex) ?? 'unsexed';
  const said: Result<TraitSaying> = readTraits(draft.traits, loci, geneticSex(sex));
  if (!said.ok) faults['traits'] = said.problem;
  return said.ok ? { code: said.value.code, words: said.value.words.long } : null;
}

function dayOr(text: string, without: Day): Result<Day> {
  return text === '' ? ok(without) : parseDay(text);
}

function textOr(text: string): string | null {
  return text.trim() === '' ? null : text.trim();
}
