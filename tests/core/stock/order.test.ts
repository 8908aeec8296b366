import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Facility,
  type Id,
  keptRules,
  needCsv,
  type OnAnimals,
  type OrderLine,
  type OrderList,
  type OrderQuestion,
  orderCsv,
  orderList,
  type Payload,
  preyForecast,
  RESERVE_SHARE,
  SPARE_SHARE,
  wholeNeed,
} from '../../../src/core/index.ts';
import { added, id, type Line, refusal, site, value } from '../log.ts';
import { ON } from './sites.ts';

/** A corn snake whose plan is one prey item every 7 days, last fed five days before the day. */
const eater = (n: number, prey = 'mouse-jumbo', massG = 600): readonly Line[] =>
  [
    added({ species: 'Pantherophis guttatus' }),
    ['2026-02-20', 'animal-weighed', { weightG: massG }] as const,
    ['2026-02-20', 'feed-plan-set', { prey, count: 1, everyDays: [7, 7] }] as const,
    ['2026-02-25', 'prey-offered', { prey, count: 1, outcome: 'taken' }] as const,
  ].map(([on, kind, payload]) => [on, kind, payload, { subjects: [id(100 + n)] }] as Line);
const many = (count: number, prey?: string, from = 0): readonly Line[] =>
  Array.from({ length: count }, (_, n) => eater(from + n, prey)).flat();
const lot = (at: Id, count: number, more: Partial<Payload<'lot-received'>> = {}, on = '2026-01-01'): Line => [
  on,
  'lot-received',
  { prey: 'mouse-jumbo', eachG: [35, 50], count, ...more },
  { subjects: [at] },
];
const order = (facility: Facility, more: Partial<OrderQuestion> = {}, tell?: OnAnimals): OrderList =>
  value(orderList(facility, { weeks: 8, leadDays: 14, reserveShare: RESERVE_SHARE, ...more }, ON, tell));
const line = (list: OrderList, prey = 'mouse-jumbo'): OrderLine => {
  const found = list.lines.find((one) => one.prey === prey);
  if (found === undefined) throw new Error(`no line for ${prey}`);
  return found;
};

describe('CARE-ORDER: what to order', () => {
  const HUNGRY = many(30);
  it('is the 90 % figure of the wait and the weeks together, and the reserve', () => {
    const facility = site(...HUNGRY);
    const list = order(facility);
    const [need] = wholeNeed(facility, ON, 14 + 56).classes;
    expect(line(list).need).toEqual({ mean: need?.mean, most: need?.most });
    expect(line(list).toOrder).toBe(Math.ceil((need?.most ?? 0) * 1.05));
    expect([list.comesOn, list.lastsUntil]).toEqual(['2026-03-16', '2026-05-10']);
    expect(RESERVE_SHARE).toBe(SPARE_SHARE);
  });
  it('is less by what is there, and nothing where enough is there', () => {
    const without = line(order(site(...HUNGRY))).toOrder;
    expect(line(order(site(...HUNGRY, lot(id(21), 100)))).toOrder).toBe(without - 100);
    expect(line(order(site(...HUNGRY, lot(id(21), 1000))))).toMatchObject({ toOrder: 0, endsOn: null });
  });
  it('does not count on what will pass its day before it is needed', () => {
    // Thirty eat about thirty a week: of two hundred that end on Sunday of the first week, most are lost.
    const found = line(order(site(...HUNGRY, lot(id(21), 200, { useBy: '2026-03-08' }))));
    expect(found.expiring).toBeGreaterThan(140);
    expect(found.toOrder).toBe(line(order(site(...HUNGRY))).toOrder - 200 + found.expiring);
    expect(found.why.join('\n')).toMatch(/of 200 will pass their day first/);
  });
  it('uses a lot that ends later after one that is older, so that neither is lost without need', () => {
    const lots = [lot(id(21), 60, { useBy: '2026-03-22' }), lot(id(22), 100, { useBy: '2026-12-31' }, '2026-02-01')];
    expect(line(order(site(...HUNGRY, ...lots))).expiring).toBe(0);
  });
  it('has past prey thrown away and counts nothing of it', () => {
    const found = line(order(site(...HUNGRY, lot(id(21), 40, { useBy: '2026-03-01' }))));
    expect(found).toMatchObject({ inStock: 0, past: 40, toOrder: line(order(site(...HUNGRY))).toOrder });
    expect(found.why.join('\n')).toMatch(/40 past their day: throw them away/);
  });
  it('says when the stock ends, and that it is before the order comes', () => {
    const found = line(order(site(...HUNGRY, lot(id(21), 40))));
    expect(found.endsOn).toBe('2026-03-11');
    expect(found.why.join('\n')).toMatch(/ends about 11 Mar 2026, before an order comes on 16 Mar 2026/);
    expect(line(order(site(...HUNGRY, lot(id(21), 40)), { leadDays: 3 })).why.join('\n')).not.toMatch(
      /before an order/,
    );
  });
  it('says that a day of use is assumed, and that nobody is planned to get a class', () => {
    const found = order(site(...HUNGRY, lot(id(21), 40), lot(id(22), 9, { prey: 'rat-pup', useBy: '2026-09-01' })));
    expect(line(found).why.join('\n')).toMatch(/1 lot without a use-by day: 365 days from receipt are assumed/);
    expect(line(found, 'rat-pup')).toMatchObject({
      animals: 0,
      toOrder: 0,
      inStock: 9,
      why: ['no animal is planned to get it'],
    });
  });
  it('names the animals that it does not count', () => {
    const cooled: Line = ['2026-02-26', 'cooling-started', {}, { subjects: [id(100)] }];
    const { uncounted, lines } = order(site(...many(2), cooled));
    expect([uncounted.map((one) => one.animal), lines[0]?.animals]).toEqual([[id(100)], 1]);
  });
});

describe('CARE-ORDER: the room in the freezer', () => {
  const facility = site(...many(30), ...many(10, 'rat-pup', 50), lot(id(21), 50, { useBy: '2026-12-31' }));
  it('is what the freezer holds, less what will still be there when the order comes', () => {
    expect(order(facility).room).toBeNull();
    const { room } = order(facility, { spaceItems: 100, leadDays: 0 });
    expect(room).toBe(50);
    expect(order(facility, { spaceItems: 100 }).room).toBe(100);
    expect(order(facility, { spaceItems: 20, leadDays: 0 }).room).toBe(0);
  });
  it('cuts each class in proportion, to whole items that fill it', () => {
    const whole = order(facility);
    const cut = order(facility, { spaceItems: 151 });
    const all = whole.lines.reduce((sum, one) => sum + one.toOrder, 0);
    expect(cut.lines.reduce((sum, one) => sum + one.toOrder, 0)).toBe(151);
    for (const [at, one] of cut.lines.entries()) {
      expect(one.wanted).toBe(whole.lines[at]?.toOrder);
      expect(Math.abs(one.toOrder - (one.wanted * 151) / all)).toBeLessThan(1);
      expect(one.why.join('\n')).toMatch(/the freezer has no room for more: order again in between/);
    }
  });
  it('cuts nothing where it is large enough', () => {
    expect(order(facility, { spaceItems: 5000 }).lines.map((one) => one.toOrder)).toEqual(
      order(facility).lines.map((one) => one.toOrder),
    );
  });
});

describe('CARE-ORDER: a question that makes no sense', () => {
  it.each<[string, Partial<OrderQuestion>]>([
    ['no weeks', { weeks: 0 }],
    ['more weeks than prey keeps', { weeks: 27 }],
    ['half a week', { weeks: 1.5 }],
    ['days before today', { leadDays: -1 }],
    ['a wait of four months', { leadDays: 120 }],
    ['no number', { weeks: Number.NaN }],
    ['less room than none', { spaceItems: -5 }],
    ['a reserve that is no share', { reserveShare: 5 }],
    ['a reserve that is no number', { reserveShare: Number.NaN }],
  ])('is refused: %s', (_, more) => {
    const question = { weeks: 8, leadDays: 14, reserveShare: RESERVE_SHARE, ...more };
    expect(refusal(orderList(site(), question, ON))).toBe('order-malformed');
  });
  it('is none for an empty site: the list is empty', () => {
    expect(order(site()).lines).toEqual([]);
  });
  it('never orders less than nothing, nor more than what is enough with its reserve', () => {
    const facts = fc.record({
      weeks: fc.integer({ min: 1, max: 26 }),
      leadDays: fc.integer({ min: 0, max: 90 }),
      spaceItems: fc.integer({ min: 0, max: 400 }),
      stock: fc.integer({ min: 1, max: 300 }),
      useBy: fc.constantFrom('2026-03-01', '2026-03-02', '2026-04-01', '2026-12-31'),
    });
    fc.assert(
      fc.property(facts, ({ stock, useBy, ...question }) => {
        const found = line(order(site(...many(3), lot(id(21), stock, { useBy })), question));
        expect(found.toOrder).toBeGreaterThanOrEqual(0);
        expect(found.toOrder).toBeLessThanOrEqual(Math.min(found.wanted, question.spaceItems));
        expect(found.wanted).toBeLessThanOrEqual(Math.ceil(found.need.most * 1.05));
        expect(found.expiring).toBeLessThanOrEqual(found.inStock);
        expect(found.inStock + found.past).toBe(stock);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the order as a file', () => {
  const facility = site(...many(3), lot(id(21), 5), lot(id(22), 4, { prey: '=1+1' }));
  const list = order(facility);
  it('has one class of prey a row, and the reasons in one cell', () => {
    const [heads = '', ...rows] = orderCsv(list).trim().split('\r\n');
    expect(heads.split(',').slice(0, 5)).toEqual(['prey', 'name', 'animals', 'order', 'wanted']);
    expect(rows).toHaveLength(2);
    const jumbo = rows.find((row) => row.startsWith('mouse-jumbo,'));
    expect(jumbo?.split(',').slice(0, 5)).toEqual([
      'mouse-jumbo',
      'jumbo mouse',
      '3',
      ...[line(list).toOrder, line(list).wanted].map(String),
    ]);
    expect(jumbo).toContain('"3 animals: about');
  });
  it('has no cell that a spreadsheet takes for a formula', () => {
    expect(orderCsv(list)).toContain("'=1+1,'=1+1,0,");
    expect(orderCsv(list)).not.toMatch(/(^|,|")=/m);
  });
  it('of the weeks has a row for each class and week', () => {
    const [heads, ...rows] = needCsv(preyForecast(facility, ON, 4))
      .trim()
      .split('\r\n');
    expect(heads).toBe('prey,name,animals,week_from,need_mean,need_90_percent');
    expect(rows.map((row) => row.split(',').slice(0, 4))).toEqual(
      ['2026-03-02', '2026-03-09', '2026-03-16', '2026-03-23'].map((from) => ['mouse-jumbo', 'jumbo mouse', '3', from]),
    );
  });
});

describe('how far it is', () => {
  it('is told after each class of prey, from none to all that are counted', () => {
    const facility = site(...many(3), ...many(2, 'rat-pup', 10));
    for (const work of [
      (tell: OnAnimals) => preyForecast(facility, ON, 2, tell),
      (tell: OnAnimals) => order(facility, {}, tell),
    ]) {
      const told: (readonly [number, number])[] = [];
      work((done, of) => told.push([done, of]));
      expect(told).toEqual([
        [0, 5],
        [3, 5],
        [5, 5],
      ]);
    }
  });
});

describe('the site’s own figures', () => {
  it('are kept with the other rules', () => {
    const rules = { orderWeeks: 6, leadDays: 10, freezerItems: 3200, reservePercent: 7.5 };
    const said: Line = ['2026-01-01', 'site-rules-set', { ...rules, secondAtDoses: true }, { subjects: [] }];
    const kept = site(said).site.rules;
    expect(kept).toMatchObject(rules);
    expect(keptRules(kept)).toEqual({ ...rules, secondAtDoses: true });
    expect(site().site.rules).toMatchObject({
      orderWeeks: null,
      leadDays: null,
      freezerItems: null,
      reservePercent: null,
    });
  });
});
