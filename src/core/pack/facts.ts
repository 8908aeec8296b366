import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import { isTreated, peopleFor, sayKindOf, sayPeople, speciesOf } from '../care/index.ts';
import { type Day, dayNumber, sayDayShort } from '../days.ts';
import { type Facility, nameOf } from '../facility/index.ts';
import { sayId } from '../ids.ts';
import { sayLength } from '../units.ts';
import { largeConstrictor, listedIn } from './listed.ts';
import { NOT_RECORDED, type PackFact, type PackLook, type PackTreatment } from './pack.ts';
import { PACK_FIELDS, type PackField } from './profiles.ts';
import { animalsThere, enclosureOf, ruleSetOf, sizeOf } from './space.ts';

/** What the answers are read from. */
export interface FactSetting {
  readonly facility: Facility;
  readonly animal: AnimalRecord;
  readonly treatments: readonly PackTreatment[];
  readonly looks: readonly PackLook[];
  readonly on: Day;
}

type Answer = string | { readonly says: string; readonly plain: string };

const LABELS = {
  id: 'Id',
  name: 'Name',
  number: 'Number',
  species: 'Species',
  'common-name': 'Common name',
  sex: 'Sex',
  age: 'Age',
  hatched: 'Hatched',
  acquired: 'Acquired',
  supplier: 'Supplier or source',
  licence: 'Supplier’s licence',
  'origin-papers': 'Papers with it',
  papers: 'Photographed papers',
  treatment: 'Treatment',
  'under-treatment': 'Under treatment',
  health: 'Last health look',
  sold: 'Sold',
  'left-to': 'Went to',
  died: 'Died',
  cause: 'Cause, if it died',
  microchip: 'Microchip',
  length: 'Length',
  people: 'Opened by',
  enclosure: 'Enclosure',
  size: 'Inside size',
  'animals-there': 'Animals there',
  'rule-set': 'Beside a rule set',
  owner: 'Owner',
  protocol: 'Safety protocol',
  cites: 'CITES',
  lacey: 'Lacey Act',
  'large-constrictor': 'G.S. 14-417.1(a)',
} as const satisfies Record<PackField, string>;

/** Every field of an animal once; what nobody wrote down is said to be so. */
export function factsOf(setting: FactSetting): readonly PackFact[] {
  return PACK_FIELDS.map((field) => {
    const answer = answerTo(field, setting);
    const { says, plain } = typeof answer === 'string' ? { says: answer, plain: answer } : answer;
    return { field, label: LABELS[field], says, plain, isKnown: !plain.startsWith(NOT_RECORDED) };
  });
}

function answerTo(field: PackField, setting: FactSetting): Answer {
  const { animal, facility } = setting;
  switch (field) {
    case 'id':
      return sayId(animal.id);
    case 'name':
    case 'number':
    case 'licence':
    case 'microchip':
      // Nobody wrote one: a pack must not look as if the animal had none.
      return animal[field] ?? NOT_RECORDED;
    case 'species':
      return animal.species;
    case 'common-name':
      return speciesOf(animal.species)?.tradeName ?? NOT_RECORDED;
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
    case 'origin-papers':
      return animal.originPapers ?? NOT_RECORDED;
    case 'papers':
      return papersOf(animal);
    case 'treatment':
      return treatmentOf(setting);
    case 'under-treatment':
      return underTreatment(setting);
    case 'health':
      return healthOf(setting);
    case 'sold':
      return soldOf(animal);
    case 'left-to':
      return leftTo(animal);
    case 'died':
      return animal.left?.how === 'died' ? dayAnswer(animal.left.day) : 'no death recorded';
    case 'cause':
      return animal.left === null ? 'still here' : (animal.left.cause ?? NOT_RECORDED);
    case 'length':
      return lengthOf(animal);
    case 'people':
      return peopleOf(setting);
    case 'enclosure':
      return enclosureOf(setting);
    case 'size':
      return sizeOf(setting);
    case 'animals-there':
      return animalsThere(setting);
    case 'rule-set':
      return ruleSetOf(setting);
    case 'owner':
      return facility.site.name;
    case 'protocol':
      return protocolOf(setting);
    case 'cites':
      return listedIn(animal.species, 'CITES');
    case 'lacey':
      return listedIn(animal.species, 'Lacey Act');
    case 'large-constrictor':
      return largeConstrictor(animal.species);
    default:
      return field satisfies never;
  }
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

function papersOf({ papers }: AnimalRecord): Answer {
  return papers.length === 0 ? 'none kept' : `${counted(papers.length, 'paper')}: see the list`;
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

function healthOf({ looks }: FactSetting): Answer {
  const last = looks.at(-1);
  if (last === undefined) return NOT_RECORDED;
  const day = sayDayShort(last.day);
  return last.well ? `looked well on ${day}` : `to be looked at again, ${day}: ${last.words}`;
}

function soldOf({ left }: AnimalRecord): Answer {
  if (left === null || left.how === 'died') return 'not sold';
  const says = sayDayShort(left.day);
  if (left.how === 'sold') return { says, plain: left.day };
  return `not sold: ${left.how === 'given' ? 'given away' : 'lost'} on ${says}`;
}

function leftTo({ left }: AnimalRecord): Answer {
  if (left === null) return 'still here';
  return left.how === 'died' || left.how === 'lost' ? 'nobody' : (left.to ?? NOT_RECORDED);
}

/** The paper itself hangs at the enclosure; the log holds no more than the site’s own line. */
function protocolOf({ facility }: FactSetting): Answer {
  return facility.site.safetyLine ?? `${NOT_RECORDED}; the paper itself has to be within sight of the enclosure`;
}

function lengthOf({ lengths }: AnimalRecord): Answer {
  if (lengths.length === 0) return NOT_RECORDED;
  return lengths
    .map(({ lengthMm, of, day, guessed }) => {
      return `${sayLength(lengthMm)} ${sayKindOf(of)} on ${sayDayShort(day)}${guessed ? ', guessed' : ''}`;
    })
    .join('; ');
}

/** By its length and the site’s own figure; without a length nobody can say it. */
function peopleOf({ animal, facility }: FactSetting): Answer {
  const people = peopleFor(animal, facility.site.rules.twoPeopleFromM);
  const flagged = animal.flags.includes('two-people') ? 'two people or more: flagged so on its record' : null;
  if (people === null) return flagged ?? NOT_RECORDED;
  const words = `${sayPeople(people.people).toLowerCase()} at least: ${people.because}`;
  return people.people < 2 && flagged !== null ? flagged : words;
}

/** What the pack calls an animal. */
export function calledOf(animal: AnimalRecord): string {
  return sayAnimal(animal);
}
