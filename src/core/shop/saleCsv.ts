import { sayAnimal, saySex } from '../animal/index.ts';
import { csvText } from '../pack/index.ts';
import type { Offered } from './offers.ts';
import { plainPrice } from './price.ts';

const HEADS = [
  'id',
  'name',
  'species',
  'sex',
  'trait_code',
  'traits',
  'hatched',
  'weight_g',
  'weighed_on',
  'price',
  'currency',
  'since',
  'days',
  'words',
] as const;

/** The sale list as CSV (RFC 4180, safe against formulas) for the site's own web shop; animals that must come off are left out. */
export function saleCsv(offered: readonly Offered[], currency: string): string {
  const rows = offered.filter(({ fault }) => fault === null).map((one) => cells(one, currency));
  return csvText([HEADS, ...rows]);
}

function cells({ animal, priceMinor, days, code, words }: Offered, currency: string) {
  const weight = animal.weights.at(-1);
  return [
    animal.id,
    sayAnimal(animal),
    animal.species,
    saySex(animal.sex),
    code,
    words,
    animal.hatchedOn,
    weight?.weightG ?? null,
    weight?.day ?? null,
    plainPrice(priceMinor, currency),
    currency,
    animal.offer?.since ?? null,
    days,
    animal.offer?.words ?? null,
  ];
}
