import { type AnimalRecord, lastWeight, sayAnimal, saySex } from '../animal/index.ts';
import { speciesOf } from '../care/index.ts';
import { sayDayShort } from '../days.ts';
import type { Facility, ItemRecord, PlaceRecord } from '../facility/index.ts';
import { sayId } from '../ids.ts';
import { cardTraits } from '../lineage/index.ts';
import { numberOf, sayPrice } from '../shop/index.ts';
import { sayGrams } from '../units.ts';
import type { Forms } from './content.ts';
import { type LabelContent, type LabelLine, labelLine, labelOf } from './label.ts';

/** What stands on everything that comes from a live reptile; the meaning is fixed, the words get shorter with the tag. */
const SHED_CAUTION: Forms = {
  long: 'From a live reptile: may carry Salmonella. Keep it in its sleeve, wash your hands after touching it, keep it from food. Not for children under 5. Check the rules for this species before taking it abroad.',
  medium:
    'May carry Salmonella: keep in sleeve, wash hands, keep from food, not for under 5s. Check rules before taking abroad.',
  short: 'May carry Salmonella: keep sleeved, wash hands, no food near, not under 5. Check before export.',
};

/** What stands on the tag of a live animal. */
const ANIMAL_CAUTION: Forms = {
  long: 'Reptiles may carry Salmonella: wash your hands after touching. Not for children under 5, pregnant people or people with weak immunity without advice.',
  medium: 'May carry Salmonella: wash hands after touching. Ask first if under 5, pregnant or of weak immunity.',
  short: 'May carry Salmonella: wash hands.',
};

/** The tag of a ware: what it is, its price, its bar code, and a code that opens it here. */
export function wareTag(facility: Facility, item: ItemRecord): LabelContent {
  return itemTag(item, 'ware', [
    labelLine('main', true, item.name),
    ...price(facility, item.priceMinor),
    ...words(item),
    ...edition(item),
    labelLine('id', false, sayId(item.id)),
  ]);
}

/** The same for a string through a hole: the price first, as it hangs among others. */
export function hangTag(facility: Facility, item: ItemRecord): LabelContent {
  return itemTag(item, 'hang', [
    labelLine('main', true, item.kind === 'shed' ? `Shed of ${item.name}` : item.name),
    ...price(facility, item.priceMinor),
    ...(item.kind === 'shed' ? shedLines(item) : [...words(item), ...edition(item)]),
    labelLine('id', false, sayId(item.id)),
    ...(item.kind === 'shed' ? [labelLine('caution', false, SHED_CAUTION)] : []),
  ]);
}

/** The tag at the edge of a shelf: large enough for who stands before it. */
export function shelfTag(facility: Facility, item: ItemRecord): LabelContent {
  return itemTag(item, 'shelf', [
    ...price(facility, item.priceMinor, 'main'),
    labelLine('body', true, item.kind === 'shed' ? `Shed of ${item.name}` : item.name),
    ...words(item),
  ]);
}

/** The tag of a piece of shed skin: whose it is, the species, the day, and the cautions. */
export function shedTag(facility: Facility, item: ItemRecord): LabelContent {
  return itemTag(item, 'shed', [
    labelLine('main', true, { long: `Shed of ${item.name}`, medium: `Shed: ${item.name}`, short: item.name }),
    ...shedLines(item),
    ...price(facility, item.priceMinor),
    labelLine('id', false, sayId(item.id)),
    labelLine('caution', false, SHED_CAUTION),
  ]);
}

/** The tag of an animal on offer, for the front of its tub; null for one that is not on offer. */
export function saleTag(facility: Facility, animal: AnimalRecord): LabelContent | null {
  if (animal.offer === null) return null;
  const traits = cardTraits(facility, animal);
  const species = speciesOf(animal.species);
  const weight = lastWeight(animal);
  const called = { long: animal.species, medium: animal.species, short: species?.shortName ?? animal.species };
  return labelOf({
    kind: 'sale',
    id: animal.id,
    called: `sale tag of ${sayAnimal(animal)}`,
    code: { says: 'id', id: animal.id },
    lines: [
      labelLine('main', true, `${sayAnimal(animal)} ${saySex(animal.sex)}`),
      ...price(facility, animal.offer.priceMinor),
      labelLine('body', false, called),
      ...(traits === null ? [] : [labelLine('body', true, traits.words ?? traits.code)]),
      ...(animal.hatchedOn === null ? [] : [labelLine('small', false, `hatched ${sayDayShort(animal.hatchedOn)}`)]),
      ...(weight === null
        ? []
        : [labelLine('small', false, `${sayGrams(weight.weightG)} on ${sayDayShort(weight.day)}`)]),
      ...(animal.offer.words === null ? [] : [labelLine('body', false, animal.offer.words)]),
      labelLine('id', false, sayId(animal.id)),
      labelLine('caution', false, ANIMAL_CAUTION),
    ],
  });
}

/**
 * The sign of an exhibit for visitors: who lives there, in names and plain facts only. No price, no trait code, nothing of the
 * site's own business; the code is for the keepers and opens the place.
 */
export function exhibitSign(place: PlaceRecord, here: readonly AnimalRecord[]): LabelContent {
  const species = [...new Set(here.map((animal) => animal.species))].sort();
  const names = here.flatMap((animal) => (animal.name === null ? [] : [animal.name]));
  const first = speciesOf(species[0] ?? '')?.tradeName;
  const [year] = here.flatMap(({ hatchedOn }) => (hatchedOn === null ? [] : [hatchedOn.slice(0, 4)]));
  return labelOf({
    kind: 'exhibit',
    id: place.id,
    called: `exhibit sign ${place.name}`,
    code: { says: 'id', id: place.id },
    lines: [
      labelLine('main', true, species.length === 1 && first !== undefined ? capital(first) : place.name),
      ...species.map((name) => labelLine('body', false, name)),
      ...(names.length === 0 ? [] : [labelLine('body', true, names.join(', '))]),
      ...(here.length === 1 && year !== undefined ? [labelLine('small', false, `hatched in ${year}`)] : []),
      labelLine('caution', false, {
        long: 'Please do not tap the glass. Wash your hands after touching anything here: reptiles may carry Salmonella.',
        medium: 'Please do not tap the glass. Wash your hands: reptiles may carry Salmonella.',
        short: 'Do not tap. Wash your hands.',
      }),
    ],
  });
}

/** Whether the tag on an item no longer says what is known, or none was ever printed. */
export function isTagStale(facility: Facility, item: ItemRecord): boolean {
  const tag = item.kind === 'shed' ? shedTag(facility, item) : wareTag(facility, item);
  return item.printed?.revision !== tag.revision;
}

function itemTag(
  item: ItemRecord,
  kind: 'ware' | 'shed' | 'shelf' | 'hang',
  lines: readonly LabelLine[],
): LabelContent {
  const bar = numberOf(item);
  return labelOf({
    kind,
    id: item.id,
    called: `${kind} tag of ${item.name}`,
    code: { says: 'id', id: item.id },
    ...(bar === null ? {} : { bar }),
    lines,
  });
}

function price({ site }: Facility, priceMinor: number, slot: 'figure' | 'main' = 'figure'): readonly LabelLine[] {
  return site.currency === null ? [] : [labelLine(slot, true, sayPrice(priceMinor, site.currency))];
}

function words({ words: more }: ItemRecord): readonly LabelLine[] {
  return more === null ? [] : [labelLine('body', false, more)];
}

function edition({ edition: size }: ItemRecord): readonly LabelLine[] {
  return size === null
    ? []
    : [
        labelLine('small', false, {
          long: `limited edition of ${size}`,
          medium: `edition of ${size}`,
          short: `ed. ${size}`,
        }),
      ];
}

function shedLines(item: ItemRecord): readonly LabelLine[] {
  const day =
    item.shedOn === null
      ? []
      : [
          labelLine('body', false, {
            long: `shed on ${sayDayShort(item.shedOn)}`,
            medium: sayDayShort(item.shedOn),
            short: item.shedOn,
          }),
        ];
  return [...(item.species === null ? [] : [labelLine('body', false, item.species)]), ...day, ...words(item)];
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
