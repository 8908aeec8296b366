import { describe, expect, it } from 'vitest';
import {
  type Day,
  dueLine,
  dueList,
  type Id,
  isToFeed,
  type Payload,
  preyAtHand,
  SPARE_SHARE,
  thawList,
} from '../../src/core/index.ts';
import { added, day, fed, id, type Line, LOT, rex, site } from './log.ts';

const ON = day('2026-03-20');
/** A corn snake of 600 g, fed on that day; the plan gives one jumbo mouse every 10-21 days. */
const corn = (n: number, fedOn: string, number?: string): readonly Line[] => [
  added(number === undefined ? { species: 'Pantherophis guttatus' } : { species: 'Pantherophis guttatus', number }, {
    subjects: [id(n)],
  }),
  ['2026-03-01', 'animal-weighed', { weightG: 600 }, { subjects: [id(n)] }],
  [fedOn, 'prey-offered', { prey: 'mouse-jumbo', count: 1, outcome: 'taken' }, { subjects: [id(n)] }],
];
const many = (count: number, fedOn: string): readonly Line[] =>
  Array.from({ length: count }, (_, n) => corn(100 + n, fedOn)).flat();
const lot = (at: Id, more: Partial<Payload<'lot-received'>> = {}, on = '2026-01-01'): Line => [
  on,
  'lot-received',
  { prey: 'mouse-jumbo', eachG: [35, 50], count: 50, ...more },
  { subjects: [at] },
];

describe('the list of the day', () => {
  it('has every animal that is here, with what is due and what it gets', () => {
    const facility = site(
      ...corn(1, '2026-03-01'),
      ...corn(2, '2026-03-19'),
      added({ species: 'Lampropeltis getula' }, { subjects: [id(3)] }),
    );
    const lines = new Map(dueList(facility, ON).map((line) => [line.animal.id, line]));
    expect(lines.get(id(1))).toMatchObject({
      due: { state: 'due' },
      meal: { prey: 'mouse-jumbo', count: 1 },
      problem: null,
    });
    expect(lines.get(id(2))).toMatchObject({ due: { state: 'soon' } });
    expect(lines.get(id(3))).toMatchObject({ due: null, meal: null, problem: { code: 'species-unknown' } });
    expect([...lines.values()].filter(isToFeed)).toHaveLength(1);
  });
  it('leaves out those that left', () => {
    expect(
      dueList(
        site(...corn(1, '2026-03-01'), ['2026-03-02', 'animal-left', { how: 'sold' }, { subjects: [id(1)] }]),
        ON,
      ),
    ).toEqual([]);
  });
  it('gives no meal to an animal that needs the vet', () => {
    const ill = rex({}, ['2026-03-01', 'regurgitation-seen', {}], ['2026-03-05', 'regurgitation-seen', {}]);
    expect(dueLine(site(), ill, ON)).toMatchObject({ due: { state: 'vet' }, meal: null, problem: null, place: null });
  });
  it('keeps the reason where there is a date but no weight', () => {
    expect(dueLine(site(), rex({}, fed('2026-03-01')), ON)).toMatchObject({
      due: { state: 'due' },
      meal: null,
      problem: { code: 'weight-missing' },
    });
  });
});

describe('CARE-THAW: five in a hundred more than is due, rounded up', () => {
  const thaw = (count: number): number | undefined => thawList(site(...many(count, '2026-03-01')), ON)[0]?.thaw;
  it('is one more for 1 to 20, two more for 21', () => {
    expect([1, 20, 21, 40].map(thaw)).toEqual([2, 21, 23, 42]);
    expect(SPARE_SHARE).toBe(0.05);
  });
  it('leaves out what is not due, held or without a meal', () => {
    const held: Line = ['2026-03-19', 'hold-placed', { reason: 'keeper' }, { subjects: [id(2)] }];
    const facility = site(...corn(1, '2026-03-01'), ...corn(2, '2026-03-01'), held, ...corn(3, '2026-03-19'));
    expect(thawList(facility, ON)).toEqual([{ prey: 'mouse-jumbo', needed: 1, thaw: 2, inFreezer: null, animals: 1 }]);
  });
  it('says what the freezer holds by the last count, of all lots together', () => {
    const counted: Line = ['2026-02-01', 'stock-counted', { count: 7 }, { subjects: [LOT] }];
    const facility = site(
      ...corn(1, '2026-03-01'),
      lot(LOT),
      counted,
      lot(id(21), { count: 5 }),
      lot(id(22), { prey: 'rat-pup' }),
    );
    expect(thawList(facility, ON)[0]?.inFreezer).toBe(12);
  });
  it('is empty on a day without meals', () => {
    expect(thawList(site(), ON)).toEqual([]);
  });
});

describe('prey at hand', () => {
  const hand = (on: Day, ...lines: readonly Line[]): readonly (number | null)[] =>
    preyAtHand(site(...lines), on).map((one) => one.count);
  it('is what is left of lots that are not past their day, the oldest first', () => {
    const lots = [
      lot(id(21), { count: 1, useBy: '2026-03-19' }),
      lot(id(22), { count: 2, useBy: '2026-03-20' }),
      lot(id(23), { count: 3 }, '2025-06-01'),
    ];
    expect(hand(ON, ...lots)).toEqual([3, 2]);
  });
  it('does not count an empty lot', () => {
    expect(hand(ON, lot(LOT), ['2026-02-01', 'stock-counted', { count: 0 }, { subjects: [LOT] }])).toEqual([]);
  });
  it('has the same order for lots of one day, whatever arrived first', () => {
    const lots = Array.from({ length: 30 }, (_, n) => lot(id(200 + n), { count: n + 1 }));
    expect(hand(ON, ...lots)).toEqual(hand(ON, ...[...lots].reverse()));
  });
});
