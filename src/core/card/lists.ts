import { lastWeight, sayAnimal, saySex } from '../animal/index.ts';
import { speciesOf } from '../care/index.ts';
import { type Day, sayDay, sayDayShort } from '../days.ts';
import { canonicalJson, fingerprint } from '../events/index.ts';
import { animalsInWalkingOrder, type Facility, nameOf, type PlaceRecord, sayPlace } from '../facility/index.ts';
import { type Id, sayId } from '../ids.ts';
import { dueLine, standsIn } from '../rounds/index.ts';
import { saleList, sayPrice } from '../shop/index.ts';
import { sayPrey } from '../stock/index.ts';
import { sayGrams } from '../units.ts';

/** A column of a list on paper: its words, its share of the width, and whether its cells end at the right. */
export interface ListColumn {
  readonly words: string;
  readonly share: number;
  readonly align?: 'end';
}

/** A list that prints on whole pages: words only. */
export interface ListSheet {
  readonly kind: 'rack-sheet' | 'sale-list';
  readonly title: string;
  readonly under: string;
  /** What its code opens; null for a list without one. */
  readonly code: Id | null;
  readonly columns: readonly ListColumn[];
  readonly rows: readonly (readonly string[])[];
  readonly notes: readonly string[];
  readonly site: string;
  readonly on: Day;
  readonly revision: string;
}

const RACK_COLUMNS: readonly ListColumn[] = [
  { words: 'place', share: 10 },
  { words: 'animal', share: 18 },
  { words: 'sex', share: 6 },
  { words: 'weight', share: 9, align: 'end' },
  { words: 'next meal', share: 13 },
  { words: 'gets', share: 18 },
  { words: 'fed', share: 6 },
  { words: 'water', share: 6 },
  { words: 'note', share: 14 },
];

/** A rack or room on one list, for a day without a phone: who stands where, what is due, and room for marks by hand. */
export function rackSheet(facility: Facility, place: PlaceRecord, on: Day): ListSheet {
  const animals = animalsInWalkingOrder(facility).filter((one) => standsIn(facility, one.place, place.id));
  const rows = animals.map((animal) => {
    const { due, meal } = dueLine(facility, animal, on);
    const weight = lastWeight(animal);
    const at = animal.place === null ? '' : (facility.places.get(animal.place)?.name ?? '');
    const species = speciesOf(animal.species)?.shortName ?? animal.species;
    const stops = due?.state === 'vet' || due?.state === 'hold' ? `hold: ${due.hold?.reason ?? 'the vet’s word'}` : '';
    const next = due?.next === null || due === null ? 'no plan' : sayDayShort(due.next);
    const gets = stops || (meal === null ? '' : `${meal.count} × ${sayPrey(meal.prey)}`);
    return [
      at,
      `${sayAnimal(animal)}, ${species}`,
      saySex(animal.sex),
      weight === null ? '' : sayGrams(weight.weightG),
      next,
      gets,
      '',
      '',
      '',
    ];
  });
  return sheetOf({
    kind: 'rack-sheet',
    title: sayPlace(facility, place.id) ?? place.name,
    under: `Rack sheet of ${sayDay(on)}: ${animals.length} ${animals.length === 1 ? 'animal' : 'animals'}`,
    code: place.id,
    columns: RACK_COLUMNS,
    rows,
    notes: [
      'Marks made here by hand are not in the log: write them in afterwards, each with its day.',
      'Meals are suggestions from the last weight and the plan; look at the animal first, and skip it if it is opaque, recently moved or unwell.',
    ],
    site: facility.site.name,
    on,
  });
}

const SALE_COLUMNS: readonly ListColumn[] = [
  { words: 'animal', share: 20 },
  { words: 'sex', share: 6 },
  { words: 'traits', share: 32 },
  { words: 'hatched', share: 12 },
  { words: 'weight', share: 9, align: 'end' },
  { words: 'days', share: 7, align: 'end' },
  { words: 'price', share: 14, align: 'end' },
];

/** The animals on offer by species and trait; those that must come off the list today are left out and counted. */
export function saleListSheet(facility: Facility, on: Day): ListSheet {
  const offered = saleList(facility, on);
  const good = offered.filter(({ fault }) => fault === null);
  const { currency } = facility.site;
  const rows = good.map(({ animal, words, code, days, priceMinor }) => {
    const weight = lastWeight(animal);
    const species = speciesOf(animal.species)?.shortName ?? animal.species;
    return [
      `${nameOf(facility, animal.id)}, ${species}, ${sayId(animal.id)}`,
      saySex(animal.sex),
      words || code,
      animal.hatchedOn === null ? '' : sayDayShort(animal.hatchedOn),
      weight === null ? '' : sayGrams(weight.weightG),
      String(days),
      currency === null ? '' : sayPrice(priceMinor, currency),
    ];
  });
  const off = offered.length - good.length;
  return sheetOf({
    kind: 'sale-list',
    title: `Animals on offer, ${facility.site.name}`,
    under: `${sayDay(on)}: ${good.length} on offer${off === 0 ? '' : `, ${off} taken off today for treatment, a hold or quarantine`}`,
    code: null,
    columns: SALE_COLUMNS,
    rows,
    notes: [
      'Reptiles may carry Salmonella: wash your hands after touching them, and keep them from food and from children under 5.',
    ],
    site: facility.site.name,
    on,
  });
}

function sheetOf(sheet: Omit<ListSheet, 'revision'>): ListSheet {
  return { ...sheet, revision: fingerprint(canonicalJson(sheet)) };
}
