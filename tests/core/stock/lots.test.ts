import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  foldFacility,
  type Id,
  LOT_LIFE_DAYS,
  lastDayOf,
  lotsInFreezer,
  type Payload,
  STOCK_CAUTION,
  type StockLot,
  useFirst,
} from '../../../src/core/index.ts';
import { shuffled } from '../../laws/histories.ts';
import { day, id, type Line, LOT, log, refusal, site, undo, value } from '../log.ts';

const ON = day('2026-07-20');
const lot = (at: Id, more: Partial<Payload<'lot-received'>> = {}, on = '2026-02-01'): Line => [
  on,
  'lot-received',
  { prey: 'rat-pup', eachG: [20, 35], count: 50, ...more },
  { subjects: [at] },
];
const used = (on: string, count: number, at = LOT): Line => [on, 'lot-used', { count }, { subjects: [at] }];
const wasted = (on: string, count: number): Line => [on, 'lot-wasted', { count, why: 'burst' }, { subjects: [LOT] }];
const counted = (on: string, count: number): Line => [on, 'stock-counted', { count }, { subjects: [LOT] }];
const left = (...lines: readonly Line[]) => site(lot(LOT), ...lines).lots.get(LOT)?.left;
const inFreezer = (...lines: readonly Line[]): readonly StockLot[] =>
  [...lotsInFreezer(site(...lines), ON).values()].flat();

describe('CARE-LOT: what is left of a lot', () => {
  it.each<[string, number, readonly Line[]]>([
    ['all of it at first', 50, []],
    ['less what was thawed and what was thrown away', 37, [used('2026-02-05', 12), wasted('2026-02-06', 1)]],
    ['what somebody counted', 41, [used('2026-02-05', 12), counted('2026-02-07', 41)]],
    ['the count less what was thawed since', 36, [counted('2026-02-07', 41), used('2026-02-09', 5)]],
    ['the count for what was written later but thawed before', 41, [counted('2026-02-07', 41), used('2026-02-06', 5)]],
    ['never less than nothing', 0, [used('2026-02-05', 60)]],
    ['a new count after too much was thawed', 3, [used('2026-02-05', 60), counted('2026-02-06', 3)]],
    ['all of it when the slip says so', 50, [used('2026-02-05', 60), undo('2026-02-05', 1, { subjects: [LOT] })]],
  ])('is %s: %d', (_, items, lines) => {
    expect(left(...lines)).toBe(items);
  });
  it('keeps the totals, the source and the treatment on the outside', () => {
    const facts = { source: 'Saltpan', topical: 'dusted with calcium' };
    const lines = [lot(LOT, facts), used('2026-02-05', 4), used('2026-02-09', 5), wasted('2026-02-10', 2)];
    expect(site(...lines).lots.get(LOT)).toMatchObject({ ...facts, used: 9, wasted: 2, countedOn: null });
  });
  it('is not changed by what is about another lot first', () => {
    expect(left(['2026-02-05', 'lot-used', { count: 4 }, { subjects: [id(21), LOT] }])).toBe(50);
  });
  it('is the same for any order of the events', () => {
    const events = log(lot(LOT), used('2026-02-05', 12), counted('2026-02-07', 30), wasted('2026-02-09', 2));
    fc.assert(
      fc.property(shuffled(events), (mixed) => {
        expect(foldFacility(mixed).lots.get(LOT)).toMatchObject({ left: 28, used: 12, wasted: 2 });
      }),
    );
  });
});

describe('CARE-LOT: what is in the freezer', () => {
  it('is by class, the oldest lot first, and of one day the one that ends first', () => {
    const lines = [
      lot(id(21), { useBy: '2026-12-01' }),
      lot(id(22), {}, '2026-01-01'),
      lot(id(23), { useBy: '2026-10-01' }),
      lot(id(24), { prey: 'mouse-adult' }),
      lot(id(25)),
    ];
    const found = [...lotsInFreezer(site(...lines, used('2026-02-02', 50, id(25))), ON)];
    expect(found.map(([prey, lots]) => [prey, lots.map((one) => one.id)])).toEqual([
      ['mouse-adult', [id(24)]],
      ['rat-pup', [id(22), id(23), id(21)]],
    ]);
  });
  it('is good for 6 months, then old, and past its day after 12 months or the day on it', () => {
    expect(LOT_LIFE_DAYS).toEqual([183, 365]);
    const states = (on: string, useBy?: string) =>
      inFreezer(lot(LOT, useBy === undefined ? {} : { useBy }, on)).map((one) => [one.state, one.isAssumed]);
    expect(states('2026-01-19')).toEqual([['good', true]]);
    expect(states('2026-01-18')).toEqual([['old', true]]);
    expect(states('2025-07-20')).toEqual([['old', true]]);
    expect(states('2025-07-19')).toEqual([['past', true]]);
    expect(states('2026-07-01', '2026-07-20')).toEqual([['good', false]]);
    expect(states('2026-07-01', '2026-07-19')).toEqual([['past', false]]);
  });
  it('ends on the day written on it, or a year after it came', () => {
    const lots = site(lot(LOT, { useBy: '2026-09-09' }), lot(id(21))).lots;
    expect([LOT, id(21)].map((one) => lots.get(one)).map((one) => one && lastDayOf(one))).toEqual([
      '2026-09-09',
      '2027-02-01',
    ]);
  });
});

describe('CARE-LOT: what to take first', () => {
  const lots = inFreezer(
    lot(id(21), { count: 3, useBy: '2026-07-19' }, '2026-01-01'),
    lot(id(22), { count: 5 }, '2026-01-20'),
    lot(id(23), { count: 50 }),
    lot(id(24), { prey: 'mouse-adult' }),
  );
  it.each<[number, readonly (readonly [Id, number])[], number]>([
    [4, [[id(22), 4]], 0],
    [5, [[id(22), 5]], 0],
    [
      9,
      [
        [id(22), 5],
        [id(23), 4],
      ],
      0,
    ],
    [
      60,
      [
        [id(22), 5],
        [id(23), 50],
      ],
      5,
    ],
  ])('%d items come from the oldest lots that are not past their day', (count, take, short) => {
    const found = value(useFirst([...lots].reverse(), 'rat-pup', count));
    expect([found.take.map((one) => [one.lot, one.count]), found.short]).toEqual([take, short]);
    expect(found.past.map((one) => one.id)).toEqual([id(21)]);
  });
  it('are missing where no lot has the class', () => {
    expect(value(useFirst(lots, 'rat-large', 2))).toEqual({ take: [], short: 2, past: [] });
  });
  it.each([0, -1, 2.5, Number.NaN])('%d items are no count', (count) => {
    expect(refusal(useFirst(lots, 'rat-pup', count))).toBe('not-whole');
  });
  it('never come back: refused prey is not frozen again', () => {
    expect(STOCK_CAUTION).toMatch(/same session only, never refrozen/);
  });
});
