import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import { isTreated, speciesOf } from '../care/index.ts';
import { type Day, dayNumber, sayDayShort } from '../days.ts';
import { type Facility, nameOf, sayPlace } from '../facility/index.ts';
import { sayId } from '../ids.ts';
import { NOT_RECORDED, type PackFact, type PackTreatment } from './pack.ts';
import { PACK_FIELDS, type PackField } from './profiles.ts';

/** What the answers are read from. */
export interface FactSetting {
  readonly facility: Facility;
  readonly animal: AnimalRecord;
  readonly treatments: readonly PackTreatment[];
  readonly on: Day;
}

type Answer = string | { readonly says: string; readonly plain: string };

const LABELS = {
  id: 'Id',
  name: 'Name',
  number: 'Number',
  species: 'Species',
  sex: 'Sex',
  age: 'Age',
  hatched: 'Hatched',
  acquired: 'Acquired',
  supplier: 'Supplier or source',
  treatment: 'Treatment',
  'under-treatment': 'Under treatment',
  sold: 'Sold',
  died: 'Died',
  microchip: 'Microchip',
  enclosure: 'Enclosure',
} as const satisfies Record<PackField, string>;

/** Every field of an animal once; what nobody wrote down is said to be so. */
export function factsOf(setting: FactSetting): readonly PackFact[] {
  return PACK_FIELDS.map((field) => {
    const answer = answerTo(field, setting);
    const { says, plain } = typeof answer === 'string' ? { says: answer, plain: answer } : answer;
    return { field, label: LABELS[field], says, plain };
  });
}

function answerTo(field: PackField, setting: FactSetting): Answer {
  const { animal, facility } = setting;
  switch (field) {
    case 'id':
      return sayId(animal.id);
    case 'name':
      return animal.name ?? NOT_RECORDED;
    case 'number':
      return animal.number ?? NOT_RECORDED;
    case 'species':
      return sayKind(animal.species);
    case 'sex':
      return animal.sex;
    case 'age':
      return ageOf(setting);
    case 'hatched':
      return dayAnswer(animal.hatchedOn);
    case 'acquired':
      return acquired(animal);
    case 'supplier':
      return supplierOf(setting);
    case 'treatment':
      return treatmentOf(setting);
    case 'under-treatment':
      return underTreatment(setting);
    case 'sold':
      return soldOf(animal);
    case 'died':
      return animal.left?.how === 'died' ? dayAnswer(animal.left.day) : 'no death recorded';
    case 'microchip':
      // The log has no field for it yet, and a pack must not look as if the animal had none.
      return NOT_RECORDED;
    case 'enclosure':
      return enclosureOf(facility, animal);
    default:
      return field satisfies never;
  }
}

function sayKind(species: string): string {
  const known = speciesOf(species);
  return known === undefined ? species : `${species} (${known.tradeName})`;
}

function dayAnswer(day: Day | null): Answer {
  return day === null ? NOT_RECORDED : { says: sayDayShort(day), plain: day };
}

function ageOf({ animal, on }: FactSetting): Answer {
  if (animal.hatchedOn === null) return NOT_RECORDED;
  const end = animal.left === null ? on : animal.left.day;
  const words = sayAge(animal.hatchedOn, end);
  return animal.left === null ? words : `${words} when it left`;
}

/** `2 years 4 months`, in whole months that are over; under a month in days. */
function sayAge(from: Day, to: Day): string {
  const months = (day: Day): number => Number(day.slice(0, 4)) * 12 + Number(day.slice(5, 7));
  const whole = months(to) - months(from) - (to.slice(8) < from.slice(8) ? 1 : 0);
  if (whole < 1) return counted(Math.max(0, dayNumber(to) - dayNumber(from)), 'day');
  const [years, rest] = [Math.floor(whole / 12), whole % 12];
  const parts = [years > 0 ? counted(years, 'year') : '', rest > 0 ? counted(rest, 'month') : ''];
  return parts.filter((part) => part !== '').join(' ');
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

function acquired(animal: AnimalRecord): Answer {
  if (animal.acquiredOn !== null) return dayAnswer(animal.acquiredOn);
  if (animal.clutch !== null) return 'no, bred here';
  return { says: `${NOT_RECORDED}; on this record since ${sayDayShort(animal.addedOn)}`, plain: NOT_RECORDED };
}

function supplierOf({ animal, facility }: FactSetting): Answer {
  if (animal.source !== null) return animal.source;
  if (animal.clutch === null) return NOT_RECORDED;
  const parents = [animal.sire, animal.dam].map((id) => (id === null ? 'unknown' : nameOf(facility, id)));
  return `bred here, from ${parents.join(' × ')}`;
}

function treatmentOf({ treatments, on }: FactSetting): Answer {
  const last = treatments.at(-1);
  if (last === undefined) return 'none recorded in these years';
  const day = last.day === on ? 'today' : sayDayShort(last.day);
  return `${counted(treatments.length, 'entry').replace('entrys', 'entries')}, the last ${day}: see the table`;
}

/** A prescription that is under way, or a hold for treatment that a person placed. */
function underTreatment({ animal, on }: FactSetting): Answer {
  const isHeld = animal.holds.some(
    ({ reason, since, until }) => reason === 'treatment' && since <= on && (until === null || until >= on),
  );
  if (animal.left !== null) return 'no longer here';
  return isTreated(animal, on) || isHeld ? 'YES: marked in writing on its card; not to be sold' : 'no';
}

function soldOf({ left }: AnimalRecord): Answer {
  if (left === null || left.how === 'died') return 'not sold';
  const says = sayDayShort(left.day);
  if (left.how === 'sold') return { says, plain: left.day };
  return `not sold: ${left.how === 'given' ? 'given away' : 'lost'} on ${says}`;
}

function enclosureOf(facility: Facility, animal: AnimalRecord): Answer {
  const place = animal.place === null ? undefined : facility.places.get(animal.place);
  if (place === undefined) return NOT_RECORDED;
  const last = animal.left === null ? '' : ', until it left';
  return `${place.placeKind} ${sayPlace(facility, place.id) ?? place.name}${last}; its size is ${NOT_RECORDED}`;
}

/** What the pack calls an animal. */
export function calledOf(animal: AnimalRecord): string {
  return sayAnimal(animal);
}
