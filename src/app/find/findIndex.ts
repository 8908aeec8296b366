import {
  type AnimalRecord,
  type ClutchRecord,
  cardTraits,
  type Facility,
  type Id,
  type ItemRecord,
  type LotRecord,
  lastWeight,
  nameOf,
  numberOf,
  type PlaceRecord,
  parseId,
  type Result,
  refuse,
  sayAnimal,
  sayDayShort,
  sayGrams,
  sayId,
  sayPlace,
  sayPrey,
  saySex,
  speciesOf,
} from '../../core/index.ts';
import { sayClutch, sayCount } from '../clutch/sayClutch.ts';

/** Something that can be found, with the words it is found by. */
export interface Findable {
  readonly id: Id;
  readonly kind: 'animal' | 'place' | 'clutch' | 'lot' | 'item';
  readonly title: string;
  readonly sub: string;
  readonly where: string;
  /** In lower case; the title's words come first, for the ranking. */
  readonly words: string;
}

/** Everything that can be found at this site: animals that are here, clutches, places, the shop, the freezer, then animals that left. */
export function findIndex(facility: Facility): readonly Findable[] {
  const animals = [...facility.animals.values()];
  const here = animals.filter((animal) => animal.left === null).map((animal) => animalEntry(facility, animal));
  const left = animals.filter((animal) => animal.left !== null).map((animal) => animalEntry(facility, animal));
  const places = [...facility.places.values()].map((place) => placeEntry(facility, place));
  const clutches = [...facility.clutches.values()].map((clutch) => clutchEntry(facility, clutch));
  const items = [...facility.items.values()].map((item) => itemEntry(facility, item));
  const lots = [...facility.lots.values()].map(lotEntry);
  return [...here, ...clutches.reverse(), ...places, ...items, ...lots.reverse(), ...left];
}

/** Shorter terms are looked for at the beginning of words only: `6` is Rack 6 and not every number with a six. */
const LONG = 3;

/** What every typed word is part of; those whose name begins with what was typed come first. */
export function find(index: readonly Findable[], typed: string): readonly Findable[] {
  const terms = plain(typed).split(/\s+/).filter(Boolean);
  if (terms.length === 0) return [];
  const found = index.filter((one) =>
    terms.every((term) => one.words.includes(term.length < LONG ? ` ${term}` : term)),
  );
  const first = terms.join(' ');
  const rank = ({ title }: Findable): number => {
    const name = plain(title);
    return name === first ? 0 : name.startsWith(first) ? 1 : name.includes(first) ? 2 : 3;
  };
  return found
    .map((one, at) => ({ one, at, rank: rank(one) }))
    .sort((a, b) => a.rank - b.rank || a.at - b.at)
    .map(({ one }) => one);
}

/** A typed id as the address of its record. Errors: `not-an-id`, `check-failed`, `unknown-id`. */
export function addressOf(facility: Facility, typed: string): Result<string> {
  const read = parseId(typed);
  if (!read.ok) return read;
  const { id } = read.value;
  if (facility.animals.has(id)) return { ok: true, value: `/animal/${id}` };
  if (facility.places.has(id)) return { ok: true, value: `/place/${id}` };
  if (facility.clutches.has(id)) return { ok: true, value: `/clutch/${id}` };
  if (facility.items.has(id)) return { ok: true, value: `/item/${id}` };
  if (facility.lots.has(id)) return { ok: true, value: `/lot/${id}` };
  return refuse('unknown-id', { id: sayId(id) });
}

/** Why nothing was found, if what was typed looks like an id; null for other words. */
export function whyNoId(facility: Facility, typed: string) {
  const read = addressOf(facility, typed);
  if (read.ok || read.problem.code === 'not-an-id') return null;
  return read.problem;
}

/** Of the facts shown, the weight is not searched: its digits would answer to every number. */
const WORD_FACTS = 3;

function animalEntry(facility: Facility, animal: AnimalRecord): Findable {
  const weight = lastWeight(animal);
  const trade = speciesOf(animal.species)?.tradeName ?? '';
  const where = animal.left === null ? (sayPlace(facility, animal.place) ?? 'no place') : `left: ${animal.left.how}`;
  const traits = cardTraits(facility, animal);
  const facts = [saySex(animal.sex), animal.species, traits?.code, weight === null ? null : sayGrams(weight.weightG)];
  const known = [animal.name, animal.number, ...idWords(animal.id), trade, animal.sex, traits?.words?.long, where];
  const words = [...known, ...facts.slice(0, WORD_FACTS)];
  return {
    id: animal.id,
    kind: 'animal',
    title: sayAnimal(animal),
    sub: facts.filter(Boolean).join(' · '),
    where,
    words: ` ${plain(words.filter(Boolean).join(' '))}`,
  };
}

function placeEntry(facility: Facility, place: PlaceRecord): Findable {
  const title = sayPlace(facility, place.id) ?? place.name;
  const words = [title, place.name, place.placeKind, ...idWords(place.id)];
  return { id: place.id, kind: 'place', title, sub: place.placeKind, where: '', words: ` ${plain(words.join(' '))}` };
}

/** A clutch is called by its dam, and known by its sire and its tag. */
function clutchEntry(facility: Facility, clutch: ClutchRecord): Findable {
  const title = sayClutch(facility, clutch);
  const sire = clutch.sire === null ? 'sire unknown' : `sire ${nameOf(facility, clutch.sire)}`;
  const came = `${clutch.bears === 'eggs' ? 'laid' : 'born'} ${sayDayShort(clutch.laidOn)}`;
  const place = sayPlace(facility, clutch.incubation?.place ?? null);
  const where = clutch.hatchedOn === null ? (place ?? 'no place') : clutch.bears === 'eggs' ? 'hatched' : 'litter';
  const species = facility.animals.get(clutch.dam)?.species ?? '';
  const words = [title, ...idWords(clutch.id), clutch.dam, sire, species, where, came];
  return {
    id: clutch.id,
    kind: 'clutch',
    title,
    sub: [sayCount(clutch), sire, came].join(' · '),
    where,
    words: ` ${plain(words.join(' '))}`,
  };
}

/** What the shop sells, by its name and the number of its bar code. */
function itemEntry(facility: Facility, item: ItemRecord): Findable {
  const title = item.kind === 'shed' ? `Shed of ${item.name}` : item.name;
  const shelf = sayPlace(facility, item.shelf);
  const where = item.retiredOn === null ? (shelf ?? 'shop') : 'no longer sold';
  const words = [title, item.kind, item.species, item.words, numberOf(item), where, ...idWords(item.id)];
  return {
    id: item.id,
    kind: 'item',
    title,
    sub: `${item.left} left`,
    where,
    words: ` ${plain(words.filter(Boolean).join(' '))}`,
  };
}

/** A lot is called by what it is and the day it came. */
function lotEntry(lot: LotRecord): Findable {
  const title = `Lot of ${sayPrey(lot.prey)}`;
  const came = `came ${sayDayShort(lot.receivedOn)}`;
  const where = lot.left > 0 ? 'freezer' : 'used up';
  const words = [title, lot.source, came, where, ...idWords(lot.id)];
  return {
    id: lot.id,
    kind: 'lot',
    title,
    sub: `${lot.left} left · ${came}`,
    where,
    words: ` ${plain(words.filter(Boolean).join(' '))}`,
  };
}

/** An id is typed with a hyphen, with a space, or without. */
function idWords(id: Id): readonly string[] {
  return [id, sayId(id)];
}

/** Lower case and without accents, so that nobody needs another keyboard. */
function plain(text: string): string {
  return text.toLowerCase().normalize('NFD').replace(/\p{M}/gu, '').trim();
}
