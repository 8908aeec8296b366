import { describe, expect, it } from 'vitest';
import {
  type Decision,
  decideItem,
  editionLeft,
  endOffer,
  type Facility,
  type ItemAction,
  type ItemRecord,
  isCurrency,
  isSoldOut,
  itemsByNumber,
  LONG_OFFER_DAYS,
  makeShedItem,
  minorDigits,
  numberOf,
  offerAnimal,
  offerFault,
  ownNumber,
  parsePrice,
  readGtin,
  saleCsv,
  saleList,
  salesCsv,
  sayPrice,
  setWare,
  stockCsv,
} from '../../src/core/index.ts';
import { added, day, id, type Line, log, REX, refusal, rex, site, weighed } from './log.ts';

const ITEM = id(41);
const OTHER = id(42);
const NOW = { day: day('2026-03-10'), today: day('2026-03-10'), nowMs: Date.UTC(2026, 2, 10, 12) };
const on = (subject: typeof ITEM) => ({ subjects: [subject] });
const mug = (more: object = {}, item = ITEM): Line => [
  '2026-03-01',
  'ware-set',
  { name: 'Mug', priceMinor: 900, ...more },
  on(item),
];
const stocked = (count: number): Line => ['2026-03-02', 'item-stocked', { count }, on(ITEM)];
const shed: Line = ['2026-03-04', 'shed-seen', { whole: true }];

function item(...lines: readonly Line[]): ItemRecord {
  const found = site(...lines).items.get(ITEM);
  if (found === undefined) throw new Error('the lines leave no such item');
  return found;
}

function outcome(decision: Decision): string {
  return decision.kind === 'accepted' ? decision.said : `${decision.kind}: ${decision.problem.code}`;
}

describe('prices', () => {
  // ISO 4217 minor units, from memory: EUR 2, JPY 0, KWD 3.
  it.each([
    ['EUR', 2, 1250, '€12.50'],
    ['JPY', 0, 1200, '¥1,200'],
    ['KWD', 3, 1250, 'KWD 1.250'],
    ['CHF', 2, 123456, 'CHF 1,234.56'],
  ])('in %s have %d decimals: %d is %s', (currency, digits, minor, said) => {
    expect(minorDigits(currency)).toBe(digits);
    expect(sayPrice(minor, currency)).toBe(said);
  });
  it.each([
    ['12.50', 1250],
    ['12,5', 1250],
    ['€ 12', 1200],
    ['12 EUR', 1200],
    ['0', 0],
    ['1.005', 'price-malformed'],
    ['1.0051', 'price-too-fine'],
    ['-3', 'price-malformed'],
    ['twelve', 'price-malformed'],
    ['999999999', 'price-impossible'],
  ])('“%s” is %s', (text, expected) => {
    const read = parsePrice(text, 'EUR');
    expect(read.ok ? read.value : read.problem.code).toBe(expected);
  });
  it('wait for a currency', () => {
    expect(refusal(parsePrice('12', null))).toBe('currency-missing');
    expect([isCurrency('EUR'), isCurrency('XQZ'), isCurrency('eur')]).toEqual([true, false, false]);
  });
});

describe('SHOP-OWN', () => {
  it('finds an item by our number and by the maker’s, and neither of two that share one', () => {
    const own = site(mug(), mug({ gtin: '6291041500213' }, OTHER));
    expect(itemsByNumber(own.items)).toEqual(
      new Map([
        [ownNumber(ITEM), ITEM],
        ['6291041500213', OTHER],
      ]),
    );
    const shared = site(mug({ gtin: '6291041500213' }), mug({ gtin: '6291041500213' }, OTHER));
    expect(itemsByNumber(shared.items).size).toBe(0);
  });
  it.each([
    ['036000291452', '0036000291452'],
    ['96385074', '0000096385074'],
    ['00012345600012', '0012345600012'],
    ['10012345600019', null],
  ])('reads %s as the thirteen digits %s', (gtin, number) => {
    expect(numberOf({ id: ITEM, gtin })).toBe(number);
  });
  it.each([
    ['with a wrong check digit', { gtin: '6291041500214' }, 'refused: gtin-check'],
    ['without a name', { name: ' ' }, 'refused: item-unnamed'],
    ['with another’s number', { gtin: '6291041500213' }, 'refused: number-taken'],
    ['as it should be', { gtin: '7300011000017' }, 'ware Mug made'],
  ])('takes a ware %s: %s', (_what, more, said) => {
    const facility = site(mug({ gtin: '6291041500213' }, OTHER));
    expect(outcome(setWare(facility, ITEM, { name: 'Mug', priceMinor: 900, ...more }, NOW))).toBe(said);
  });
  it.each(['', 'abc', '12345', '123456789012345'])('refuses “%s” as a number', (text) => {
    expect(refusal(readGtin(text))).toBe('gtin-malformed');
  });
});

describe('an item', () => {
  const sold = (count: number): Line => ['2026-03-03', 'item-sold', { count, priceMinor: 900 }, on(ITEM)];
  it.each<[string, ItemAction, string, readonly Line[]]>([
    ['sold while there is one', { do: 'sold', count: 1 }, 'sold', [stocked(2)]],
    ['sold though the book is empty', { do: 'sold', count: 3 }, 'asks: sold-out', [stocked(2)]],
    ['sold in half', { do: 'sold', count: 0.5 }, 'refused: not-whole', [stocked(2)]],
    ['counted as none', { do: 'counted', count: 0 }, 'counted 0, the book had 2', [stocked(2)]],
    [
      'made past its edition',
      { do: 'stocked', count: 4 },
      'refused: edition-passed',
      [mug({ edition: 5 }), stocked(2)],
    ],
    ['made up to its edition', { do: 'stocked', count: 3 }, 'stocked 3', [mug({ edition: 5 }), stocked(2)]],
    ['priced as before', { do: 'priced', priceMinor: 900 }, 'refused: price-same', []],
    [
      'sold after it was retired',
      { do: 'sold', count: 1 },
      'asks: item-retired',
      [stocked(2), ['2026-03-03', 'item-retired', {}, on(ITEM)]],
    ],
  ])('%s', (_what, action, said, lines) => {
    expect(outcome(decideItem(item(mug(), ...lines), action, NOW))).toBe(said);
  });
  it('of a limited edition counts down and is sold out when all are gone', () => {
    const limited = mug({ edition: 5 });
    expect(editionLeft(item(limited, stocked(2)))).toBe(3);
    expect(isSoldOut(item(limited, stocked(2), sold(2)))).toBe(false);
    expect(isSoldOut(item(limited, stocked(5), sold(5)))).toBe(true);
    expect(isSoldOut(item(mug(), stocked(5), sold(5)))).toBe(false);
  });
});

describe('SHOP-SHED', () => {
  const make = (facility: Facility, at = NOW): Decision => {
    const animal = facility.animals.get(REX);
    if (animal === undefined) throw new Error('no such animal');
    return makeShedItem(facility, ITEM, animal, { priceMinor: 500, count: 2 }, at);
  };
  it('keeps what the animal is called, its species and the day of the shed', () => {
    const decision = make(site(added({ name: 'Nora' }), shed));
    expect(decision.kind === 'accepted' && decision.drafts).toMatchObject([
      { subjects: [ITEM, REX], payload: { shown: 'Nora', species: 'Python regius', shedOn: '2026-03-04', count: 2 } },
    ]);
  });
  it.each<[string, string, readonly Line[]]>([
    ['without a shed', 'refused: shed-not-seen', []],
    ['of an old shed', 'refused: shed-old', [['2026-01-08', 'shed-seen', {}]]],
    [
      'a second time',
      'asks: shed-made-already',
      [
        shed,
        [
          '2026-03-05',
          'shed-item-made',
          { shown: 'Nora', species: 'Python regius', shedOn: '2026-03-04', priceMinor: 500, count: 1 },
          { subjects: [OTHER, REX] },
        ],
      ],
    ],
  ])('is not made %s: %s', (_what, said, lines) => {
    expect(outcome(make(site(added({ name: 'Nora' }), ...lines)))).toBe(said);
  });
});

describe('SHOP-OFFER', () => {
  const written = {
    drug: 'as the vet wrote',
    prescriber: 'Dr Test',
    amount: { by: 'volume' as const, ml: 0.3 },
    route: 'by mouth',
    everyHours: 24,
    count: 9,
    startsOn: '2026-03-09',
  };
  it.each<[string, string | undefined, readonly Line[]]>([
    ['that is well', undefined, []],
    ['that is opaque', undefined, [['2026-03-09', 'opaque-seen', {}]]],
    ['under treatment', 'offer-treated', [['2026-03-09', 'prescription-written', written]]],
    [
      'in quarantine',
      'offer-quarantine',
      [['2026-03-01', 'hold-placed', { reason: 'quarantine', until: '2026-05-01' }]],
    ],
    ['after quarantine', undefined, [['2026-01-01', 'hold-placed', { reason: 'quarantine', until: '2026-03-01' }]]],
    ['on the vet’s hold', 'offer-on-hold', [['2026-03-01', 'hold-placed', { reason: 'vet' }]]],
    ['that regurgitated', 'offer-on-hold', [['2026-03-08', 'regurgitation-seen', {}]]],
    ['not for sale', 'offer-not-for-sale', [['2026-03-01', 'animal-flagged', { flags: ['not-for-sale'] }]]],
    ['that died', 'animal-gone', [['2026-03-08', 'animal-left', { how: 'died' }]]],
  ])('judges an animal %s: %s', (_what, code, lines) => {
    expect(offerFault(rex({}, ...lines), NOW.day)?.code).toBe(code);
  });
  it('asks before a venomous animal is offered, and before none other', () => {
    const venomous = rex({}, ['2026-03-01', 'animal-flagged', { flags: ['venomous'] }]);
    expect(outcome(offerAnimal(venomous, { priceMinor: 1 }, NOW))).toBe('asks: offer-dangerous');
    expect(outcome(offerAnimal(rex({}), { priceMinor: 1 }, NOW))).toBe('on offer');
    expect(outcome(endOffer(rex({}), undefined, NOW))).toBe('refused: offer-none');
  });
  it('and SHOP-LONG: lists what is on offer with its days, says what has stood too long and what must come off', () => {
    const offered: Line = ['2025-12-01', 'animal-offered', { priceMinor: 12_000 }];
    const [one] = saleList(
      site(added({ name: 'Nora' }), offered, ['2026-03-09', 'hold-placed', { reason: 'vet' }]),
      NOW.day,
    );
    expect(one).toMatchObject({ days: 99, isLong: true, fault: { code: 'offer-on-hold' } });
    expect(LONG_OFFER_DAYS).toBe(90);
  });
});

describe('tables of the shop', () => {
  it('give the sale list with what a web shop needs, and nothing that must come off', () => {
    const lines: readonly Line[] = [
      added({ name: '=1+1', sex: 'female' }),
      weighed('2026-03-01', 850),
      ['2026-03-02', 'animal-offered', { priceMinor: 12_050, words: 'eats "well", daily' }],
    ];
    const csv = saleCsv(saleList(site(...lines), NOW.day), 'EUR');
    expect(csv.split('\r\n')[1]).toBe(
      `${REX},'=1+1,Python regius,0.1,,,,850,2026-03-01,120.50,EUR,2026-03-02,8,"eats ""well"", daily"`,
    );
    const held = site(...lines, ['2026-03-09', 'hold-placed', { reason: 'vet' }]);
    expect(saleCsv(saleList(held, NOW.day), 'EUR').split('\r\n')).toHaveLength(2);
  });
  it('give the stock and the sales of some days', () => {
    const sold: Line = ['2026-03-03', 'item-sold', { count: 2, priceMinor: 900 }, on(ITEM)];
    const lines = [mug(), stocked(5), sold];
    expect(stockCsv(site(...lines), 'EUR').split('\r\n')[1]).toBe(
      `${ITEM},ware,Mug,${ownNumber(ITEM)},9.00,EUR,3,5,2,0,,`,
    );
    const sales = salesCsv(site(...lines), log(...lines), { from: day('2026-03-01'), to: NOW.day, currency: 'EUR' });
    expect(sales.split('\r\n')[1]).toBe(`2026-03-03,08:00:02,${ITEM},Mug,2,9.00,18.00,EUR,Ada`);
    expect(sales.split('\r\n')).toHaveLength(3);
  });
});
