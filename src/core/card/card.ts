import { type AnimalRecord, lastWeight, sayAnimal, saySex } from '../animal/index.ts';
import { marksOfSeason } from '../breeding/index.ts';
import {
  type Due,
  feedPlan,
  isTreated,
  lossSinceReset,
  type Meal,
  nextFeedDue,
  peopleFor,
  plannedMeal,
  sayChange,
  sayPeople,
  speciesOf,
} from '../care/index.ts';
import { type Day, sayDay, sayDayShort } from '../days.ts';
import { canonicalJson, fingerprint } from '../events/index.ts';
import { type Facility, nameOf, sayPlace } from '../facility/index.ts';
import { sayId } from '../ids.ts';
import { cardTraits } from '../lineage/index.ts';
import { sayPrey } from '../stock/index.ts';
import { sayGramRange, sayGrams } from '../units.ts';
import type { CardContent, CardFlag, CardLine, CardSlot, Forms } from './content.ts';

const MOST_MARKS = 6;

/** What an animal's card says on a day. The printed-on date is not part of it, nor is anything about printing. */
export function cardContent(facility: Facility, animal: AnimalRecord, on: Day): CardContent {
  const due = nextFeedDue(animal, on);
  const meal = plannedMeal(animal, on);
  const traits = cardTraits(facility, animal);
  const lines = [
    line('name', 1, true, nameForms(animal)),
    line('sex', 1, false, all(saySex(animal.sex))),
    line('species', 1, false, speciesForms(animal.species)),
    line('traitCode', 2, true, traits === null ? null : all(traits.code)),
    line('traitWords', 4, false, traits?.words ?? null),
    line('dates', 5, false, dateForms(animal)),
    line('weight', 3, false, weightForms(animal)),
    line('feed', 1, false, feedForms(animal, meal.ok ? meal.value : null)),
    line('due', 1, true, due.ok ? dueForms(due.value) : all('No feed plan: set one')),
    line('pairings', 6, false, pairingForms(facility, animal, on)),
    line('place', 3, false, placeForms(facility, animal)),
  ].filter((one) => one !== null);
  const flags = flagsOf(facility, animal, due.ok ? due.value : null, on);
  return {
    id: animal.id,
    display: sayId(animal.id),
    lines,
    flags,
    revision: fingerprint(canonicalJson({ lines, flags })),
  };
}

/** True when the card in the tub no longer says what is known, or none was ever printed. */
export function isCardStale(animal: AnimalRecord, content: CardContent): boolean {
  return animal.printed?.revision !== content.revision;
}

function line(slot: CardSlot, rank: number, strong: boolean, forms: Forms | null): CardLine | null {
  return forms === null ? null : { slot, rank, strong, ...forms };
}

function all(text: string): Forms {
  return { long: text, medium: text, short: text };
}

function nameForms(animal: AnimalRecord): Forms {
  const both = animal.name !== null && animal.number !== null;
  const long = both ? `${animal.name} · ${animal.number}` : sayAnimal(animal);
  return { long, medium: sayAnimal(animal), short: animal.number ?? sayAnimal(animal) };
}

/** A species by its scientific and trade name, by the first alone, and as short as the trade has it. */
export function speciesForms(name: string): Forms {
  const species = speciesOf(name);
  const [genus = '', ...rest] = name.split(' ');
  const short = species?.shortName ?? (rest.length === 0 ? genus : `${genus.slice(0, 1)}. ${rest.join(' ')}`);
  return { long: species ? `${name} · ${species.tradeName}` : name, medium: name, short };
}

function dateForms(animal: AnimalRecord): Forms | null {
  const hatched = animal.hatchedOn === null ? null : `hatched ${sayDayShort(animal.hatchedOn)}`;
  const came = animal.acquiredOn === null ? null : `acquired ${sayDayShort(animal.acquiredOn)}`;
  const parts = [hatched, came].filter((part) => part !== null);
  if (parts.length === 0) return null;
  const short = animal.hatchedOn === null ? `acq. ${animal.acquiredOn}` : `h. ${animal.hatchedOn}`;
  return { long: parts.join(' · '), medium: parts[0] ?? '', short };
}

function weightForms(animal: AnimalRecord): Forms {
  const weight = lastWeight(animal);
  if (weight === null) return { long: 'No weight yet: weigh first', medium: 'No weight yet', short: 'Weigh!' };
  const change = sayChange(animal);
  const medium = `${sayGrams(weight.weightG)} on ${sayDayShort(weight.day)}`;
  return {
    long: change === null ? medium : `${medium} (${change})`,
    medium,
    short: `${sayGrams(weight.weightG)} ${weight.day}`,
  };
}

function feedForms(animal: AnimalRecord, meal: Meal | null): Forms {
  const plan = feedPlan(animal.species, lastWeight(animal)?.weightG ?? null, animal.plan);
  const every = plan.ok ? `every ${plan.value.everyDays[0]}–${plan.value.everyDays[1]} d` : 'no plan';
  if (meal === null) return { long: `Feed: ${every}`, medium: every, short: every };
  const what = `${meal.count} × ${sayPrey(meal.prey)}`;
  const each = sayGramRange(meal.eachG);
  return {
    long: `${what}, ${each}${meal.count > 1 ? ' each' : ''}, ${every}`,
    medium: `${what}, ${every}`,
    short: what,
  };
}

function dueForms(due: Due): Forms {
  if (due.state === 'vet')
    return { long: 'Not to be fed without a vet’s word', medium: 'Vet’s word needed', short: 'VET' };
  if (due.next === null) return { long: 'Not to be fed until further word', medium: 'Do not feed', short: 'HOLD' };
  return { long: `Due ${sayDay(due.next)}`, medium: `Due ${sayDayShort(due.next)}`, short: `Due ${due.next}` };
}

function pairingForms(facility: Facility, animal: AnimalRecord, on: Day): Forms | null {
  const marks = marksOfSeason(animal, on);
  if (marks.length === 0) return null;
  const said = marks.slice(-MOST_MARKS).map((mark) => {
    const mate = mark.with === null ? '' : ` ${nameOf(facility, mark.with)}`;
    const what = mark.largestMm === undefined ? mark.kind : `${mark.kind} ${mark.largestMm} mm`;
    return { long: `${what}${mate} ${sayMonthDay(mark.day)}`, short: `${what} ${sayMonthDay(mark.day)}` };
  });
  return {
    long: said.map((one) => one.long).join(' · '),
    medium: said.map((one) => one.short).join(' · '),
    short: said.at(-1)?.short ?? '',
  };
}

function sayMonthDay(day: Day): string {
  return sayDayShort(day).replace(/ \d{4}$/, '');
}

function placeForms(facility: Facility, animal: AnimalRecord): Forms | null {
  const long = sayPlace(facility, animal.place);
  return long === null
    ? null
    : {
        long,
        medium: facility.places.get(animal.place ?? animal.id)?.name ?? long,
        short: facility.places.get(animal.place ?? animal.id)?.name ?? long,
      };
}

function flagsOf(facility: Facility, animal: AnimalRecord, due: Due | null, on: Day): readonly CardFlag[] {
  const flags: CardFlag[] = [];
  if (due?.state === 'vet')
    flags.push({ kind: 'vet', long: `Vet: ${due.hold?.reason ?? ''}`, medium: 'Vet’s word needed', short: 'VET' });
  if (due?.state === 'hold' && due.hold) flags.push(holdFlag(due.hold));
  const held = new Set(animal.holds.map((hold) => hold.reason));
  if (held.has('treatment') || isTreated(animal, on))
    flags.push({
      kind: 'treatment',
      long: 'Under treatment, not for sale',
      medium: 'Treatment, not for sale',
      short: 'TREATMENT',
    });
  if (held.has('quarantine'))
    flags.push({
      kind: 'quarantine',
      long: 'Quarantine: last in the walk, own tools',
      medium: 'Quarantine',
      short: 'QUAR.',
    });
  const people = peopleFlag(facility, animal);
  if (people !== null) flags.push(people);
  flags.push(...animal.flags.filter((flag) => flag !== 'two-people').map((flag) => animalFlag(facility, flag)));
  const loss = lossSinceReset(animal);
  if (loss.level === 'review' || loss.level === 'urgent')
    flags.push({
      kind: 'weight',
      long: `Weight ${loss.words}`,
      medium: `Down ${loss.percent} %: weigh again`,
      short: `−${loss.percent} %`,
    });
  return flags;
}

function holdFlag(hold: { reason: string; until: Day | null }): CardFlag {
  const until = hold.until === null ? '' : ` until ${sayDayShort(hold.until)}`;
  const short = hold.until === null ? 'HOLD' : `HOLD to ${sayMonthDay(hold.until)}`;
  const long = hold.reason.includes('until') ? hold.reason : `${hold.reason}${until}`;
  return { kind: 'hold', long: `Hold: ${long}`, medium: `Hold${until || `: ${hold.reason}`}`, short };
}

/** Rule CARE-PEOPLE: by its length and the site’s own figure, and never fewer than the flag on its record says. */
function peopleFlag({ site }: Facility, animal: AnimalRecord): CardFlag | null {
  const flagged = animal.flags.includes('two-people') ? 2 : 1;
  const people = Math.max(flagged, peopleFor(animal, site.rules.twoPeopleFromM)?.people ?? 1);
  if (people < 2) return null;
  const medium = sayPeople(people);
  return { kind: 'two-people', long: `${medium}: do not open alone`, medium, short: `${people} PEOPLE` };
}

function animalFlag(facility: Facility, flag: Exclude<AnimalRecord['flags'][number], 'two-people'>): CardFlag {
  switch (flag) {
    case 'venomous':
      return {
        kind: 'venomous',
        long: facility.site.safetyLine ?? 'Venomous: site protocol, trained keepers only',
        medium: 'Venomous: trained keepers only',
        short: 'VENOMOUS',
      };
    case 'not-for-sale':
      return { kind: 'not-for-sale', long: 'Not for sale', medium: 'Not for sale', short: 'NFS' };
  }
}
