import { describe, expect, it } from 'vitest';
import {
  DEFAULT_INTERVALS,
  type Id,
  intervalOf,
  learnedDays,
  type RoundTask,
  sayInterval,
  shortened,
} from '../../../src/core/index.ts';
import type { Line } from '../log.ts';
import { clean, EXHIBITS, HALL, houseOf, MOSS, RACK, ROOM, TANSY, TUBS, water } from './house.ts';

const [TUB] = TUBS;
const every = (days: readonly number[], at: Id = TUB): readonly Line[] =>
  days.map((date) => clean(`2026-02-${String(date).padStart(2, '0')}`, at));
const own = (at: Id, task: RoundTask, everyDays?: [number, number], on = '2026-03-01'): Line => [
  on,
  'interval-set',
  everyDays === undefined ? { task } : { task, everyDays },
  { subjects: [at] },
];
function interval(task: RoundTask, lines: readonly Line[], at: Id = TUB) {
  const facility = houseOf(...lines);
  const place = facility.places.get(at);
  const animals = [...facility.animals.values()].filter((animal) => animal.place === at);
  return place === undefined ? null : intervalOf(facility, { place, animals }, task);
}

describe('CARE-INTERVAL: the default of a place', () => {
  it.each<[RoundTask, Id, readonly [number, number] | null]>([
    ['look', TUB, [1, 1]],
    ['water', TUB, [1, 3]],
    ['water', EXHIBITS[0], [1, 3]],
    ['clean', TUB, [14, 28]],
    ['clean', EXHIBITS[0], [30, 90]],
    ['spot', TUB, null],
    ['pool-part', TUB, null],
    ['weigh', TUB, null],
  ])('%s', (task, at, days) => {
    expect(interval(task, [], at)?.everyDays ?? null).toEqual(days);
  });
  const pool = (filtered: boolean): Line => [
    '2026-03-01',
    'place-set',
    { name: 'Exhibit 1', parent: HALL, walk: 1, pool: { litres: 240, filtered } },
    { subjects: [EXHIBITS[0]] },
  ];
  it.each<[RoundTask, boolean, readonly [number, number] | null]>([
    ['pool-part', true, [7, 7]],
    ['pool-part', false, null],
    ['pool-drain', true, null],
    ['pool-drain', false, [1, 3]],
    ['pool-filter', true, null],
  ])('of a pool: %s where it is filtered %s', (task, filtered, days) => {
    expect(interval(task, [pool(filtered)], EXHIBITS[0])?.everyDays ?? null).toEqual(days);
  });
  it('each is common practice and says so', () => {
    for (const one of Object.values(DEFAULT_INTERVALS))
      expect([one.mark, one.source]).toEqual(['C', 'common practice, no source']);
  });
});

describe('CARE-INTERVAL: what a place’s own log says', () => {
  // The formula by hand: middle (4 × 21 + n × median) ÷ (4 + n), half width (4 × 7 + n × spread) ÷ (4 + n).
  it.each<[string, readonly number[], readonly [number, number] | null]>([
    ['no gap says nothing', [], null],
    ['one gap moves little: (84 + 10) ÷ 5 ± 28 ÷ 5', [10], [13, 24]],
    ['six gaps move much: (84 + 60) ÷ 10 ± 28 ÷ 10', [10, 10, 10, 10, 10, 10], [12, 17]],
    ['one odd gap among six changes only the width', [10, 10, 10, 10, 10, 60], [12, 17]],
    ['spread gaps keep it wide: 144 ÷ 10 ± (28 + 6 × 2) ÷ 10', [6, 8, 10, 10, 12, 14], [10, 18]],
    ['late cleaning does not become the rule', [40, 40, 40, 40, 40, 40], [28, 28]],
    ['a gap beyond three times the default is no habit', [85, 200], null],
    ['no gap is negative or of no day', [0, -4], null],
  ])('%s', (_what, gaps, days) => {
    expect(learnedDays(gaps, [14, 28])?.everyDays ?? null).toEqual(days);
  });
  it.each<[readonly number[], readonly [number, number] | null]>([
    [[30, 30], null],
    [
      [28, 30, 34],
      [28, 32],
    ],
    [
      [5, 5, 5, 5],
      [5, 5],
    ],
  ])('without a default %j gives %j: the median and its spread, from three gaps on', (gaps, days) => {
    expect(learnedDays(gaps, null)?.everyDays ?? null).toEqual(days);
  });
  it('learns from the deeds of the place, the latest six gaps', () => {
    const found = interval('clean', every([1, 11, 21]));
    expect(found).toMatchObject({ from: 'learned', learned: { gaps: 2, everyDays: [13, 22] } });
    const often = ['2025-12-01', '2025-12-03', '2025-12-05', '2025-12-07'];
    const seldom = ['2025-12-17', '2025-12-27', '2026-01-06', '2026-01-16', '2026-01-26', '2026-02-05'];
    const all = [...often, ...seldom].map((on) => clean(on, TUB));
    expect(interval('clean', all)).toMatchObject({ learned: { gaps: 6, everyDays: [12, 17] } });
  });
  it('counts only gaps with those who live there now', () => {
    const moved: Line = ['2026-02-15', 'animal-moved', { to: TUB }, { subjects: [TANSY] }];
    const before = every([1, 4, 7, 10, 13]);
    expect(interval('clean', before)?.from).toBe('learned');
    expect(interval('clean', [...before, moved])?.from).toBe('default');
  });
  it('never learns how often to look: that is daily', () => {
    const looks = [1, 5, 9, 13].map(
      (at): Line => [`2026-03-${at + 10}`, 'health-looked', { well: true }, { subjects: [TUB] }],
    );
    expect(interval('look', looks)).toMatchObject({ from: 'default', learned: null });
  });
});

describe('CARE-GROWING: a growing animal shortens what was learned from a smaller one', () => {
  it('by the power 0.80 of its mass: twice as heavy, 0.574 times as long', () => {
    expect(shortened([14, 28], { times: 2, factor: 0.5 ** 0.8 })).toEqual([8, 16]);
    expect(shortened([1, 1], { times: 8, factor: 8 ** -0.8 })).toEqual([1, 1]);
  });
  const weighed = (on: string, weightG: number): Line => [on, 'animal-weighed', { weightG }, { subjects: [MOSS] }];
  const cleans = ['2025-11-01', '2025-11-15', '2025-11-29', '2025-12-13'].map((on) => clean(on, TUB));
  it('takes the weight at the middle of the learned days and the last one', () => {
    const grown = interval('clean', [...cleans, weighed('2025-11-20', 150)]);
    expect(grown?.learned?.grown?.times).toBe(2);
    expect(grown).toMatchObject({ everyDays: [8, 13] });
    expect(interval('clean', cleans)?.learned).toMatchObject({ everyDays: [14, 22], grown: null });
  });
  it('a loss of weight lengthens nothing', () => {
    expect(interval('clean', [...cleans, weighed('2025-11-20', 900)])?.everyDays).toEqual([14, 22]);
  });
});

describe('CARE-INTERVAL: the keeper’s own days', () => {
  it('hold before what was learned', () => {
    expect(interval('clean', [...every([1, 11, 21]), own(TUB, 'clean', [40, 60])])).toMatchObject({
      from: 'own',
      everyDays: [40, 60],
      learned: { everyDays: [13, 22] },
    });
  });
  it('hold for all below, the nearest place first', () => {
    const atRoom = own(ROOM, 'water', [2, 4]);
    expect(interval('water', [atRoom])?.own).toEqual({ everyDays: [2, 4], at: ROOM });
    expect(interval('water', [atRoom, own(RACK, 'water', [1, 2])])?.own?.at).toBe(RACK);
    expect(interval('water', [atRoom], EXHIBITS[0])?.from).toBe('default');
  });
  it('are learned again when the days are taken off', () => {
    expect(interval('water', [own(TUB, 'water', [5, 6]), own(TUB, 'water', undefined, '2026-03-02')])?.from).toBe(
      'default',
    );
  });
  it('give spot cleaning days that it has not by default', () => {
    expect(interval('spot', [own(RACK, 'spot', [3, 4])])?.everyDays).toEqual([3, 4]);
  });
  it('mean the same when they run from high to low', () => {
    expect(interval('water', [own(TUB, 'water', [6, 2])])?.everyDays).toEqual([2, 6]);
  });
});

describe('an interval in words', () => {
  it('says what holds first, how it was learned, and the mark of the default', () => {
    const facility = houseOf(...every([1, 11, 21]), own(RACK, 'clean', [40, 60]), water('2026-03-01', TUB));
    const place = facility.places.get(TUB);
    const found = place && intervalOf(facility, { place, animals: [] }, 'clean');
    expect(found && sayInterval(facility, found)).toEqual([
      'every 40–60 days, set at Rack 1 (own)',
      'every 13–22 days, learned from 2 gaps here, the default counted in as 4 (C: ours)',
      'default 14–28 days, tub (C: common practice, no source)',
    ]);
  });
});
