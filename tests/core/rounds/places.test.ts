import { describe, expect, it } from 'vitest';
import {
  effectOf,
  type Facility,
  type Id,
  intervalAt,
  type PlaceRecord,
  parseDays,
  partLitres,
  servePool,
  setInterval,
  setPlaceFacts,
  tasksAt,
} from '../../../src/core/index.ts';
import { day, type Line, refusal, value } from '../log.ts';
import { AT, EXHIBITS, HALL, houseOf, ON, RACK, TUBS, water } from './house.ts';

const [EXHIBIT] = EXHIBITS;
const [TUB] = TUBS;
const sizeMm = { length: 3200, width: 1800, height: 2200 };
const set = (pool: object, at: Id = EXHIBIT): Line =>
  [
    '2026-03-01',
    'place-set',
    { name: 'Exhibit Heron', parent: HALL, walk: 1, sizeMm, ...pool },
    { subjects: [at] },
  ] as Line;
const FILTERED = set({ pool: { litres: 240, filtered: true } });
const UNFILTERED = set({ pool: { litres: 60, filtered: false } });
function placeOf(facility: Facility, id: Id = EXHIBIT): PlaceRecord {
  const found = facility.places.get(id);
  if (found === undefined) throw new Error('no place');
  return found;
}

describe('CARE-POOL: work on a pool', () => {
  it.each([
    [240, 25, 60],
    [240, 33, 79],
    [60, 10, 6],
    [33, 10, 3.3],
    [7, 100, 7],
  ])('a part-change of %d L by %d %% is %d L', (litres, percent, out) => {
    expect(partLitres(litres, percent)).toBe(out);
  });
  it('writes the part, the filter and the draining, with the litres in words', () => {
    const place = placeOf(houseOf(FILTERED));
    expect(servePool(place, { do: 'part', percent: 25 }, AT)).toEqual({
      kind: 'accepted',
      said: 'pool changed in part: 25 %, 60 L',
      drafts: [{ kind: 'pool-served', subjects: [EXHIBIT], payload: { work: 'part', percent: 25 }, day: ON }],
    });
    expect(servePool(place, { do: 'filter' }, AT)).toMatchObject({
      said: 'pool filter cleaned',
      drafts: [{ payload: { work: 'filter' } }],
    });
    expect(servePool(place, { do: 'drain' }, AT)).toMatchObject({ said: 'pool drained, 240 L' });
  });
  it.each<[string, Line | null, Parameters<typeof servePool>[1], string]>([
    ['a place without a pool', null, { do: 'drain' }, 'pool-none'],
    ['the filter of a pool without one', UNFILTERED, { do: 'filter' }, 'pool-no-filter'],
    ['no part', FILTERED, { do: 'part', percent: 0 }, 'pool-percent'],
    ['more than all', FILTERED, { do: 'part', percent: 101 }, 'pool-percent'],
    ['what is no number', FILTERED, { do: 'part', percent: Number.NaN }, 'pool-percent'],
  ])('refuses %s', (_what, line, work, code) => {
    const decision = servePool(placeOf(houseOf(...(line === null ? [] : [line]))), work, AT);
    expect(decision.kind === 'refused' && decision.problem.code).toBe(code);
  });
  it('a day that lies ahead is refused', () => {
    const decision = servePool(placeOf(houseOf(FILTERED)), { do: 'drain' }, { ...AT, day: day('2026-03-21') });
    expect(decision.kind === 'refused' && decision.problem.code).toBe('date-future');
  });
  it('makes rounds of its own', () => {
    expect(tasksAt(houseOf(FILTERED), HALL)).toEqual([
      'look',
      'water',
      'spot',
      'clean',
      'weigh',
      'pool-part',
      'pool-filter',
      'pool-drain',
    ]);
    expect(tasksAt(houseOf(UNFILTERED), EXHIBIT)).toEqual(['look', 'water', 'spot', 'clean', 'weigh', 'pool-drain']);
    expect(tasksAt(houseOf(FILTERED), RACK)).toEqual(['look', 'water', 'spot', 'clean', 'weigh']);
  });
});

describe('the facts of a place', () => {
  it('keep what the form does not ask for: the name, where it stands, its size', () => {
    const decision = setPlaceFacts(
      placeOf(houseOf(FILTERED)),
      { pool: { litres: 300, filtered: true }, twoPeople: true },
      ON,
    );
    expect(decision).toMatchObject({
      said: 'pool of 300 L, filtered, two people',
      drafts: [
        {
          kind: 'place-set',
          payload: {
            name: 'Exhibit Heron',
            parent: HALL,
            walk: 1,
            sizeMm,
            pool: { litres: 300, filtered: true },
            twoPeople: true,
          },
        },
      ],
    });
  });
  it('lose the pool when it is taken off', () => {
    const decision = setPlaceFacts(placeOf(houseOf(FILTERED)), { pool: null, twoPeople: false }, ON);
    expect(decision.kind === 'accepted' && decision.drafts[0]?.payload).toEqual({
      name: 'Exhibit Heron',
      parent: HALL,
      walk: 1,
      sizeMm,
    });
  });
  it.each([
    [{ pool: { litres: 0, filtered: false }, twoPeople: false }, 'pool-litres'],
    [{ pool: { litres: Number.NaN, filtered: false }, twoPeople: false }, 'pool-litres'],
    [{ pool: { litres: 240, filtered: true }, twoPeople: false }, 'place-same'],
  ])('%j is refused: %s', (facts, code) => {
    const decision = setPlaceFacts(placeOf(houseOf(FILTERED)), facts, ON);
    expect(decision.kind === 'refused' && decision.problem.code).toBe(code);
  });
});

describe('days that a keeper writes', () => {
  it.each([
    ['3', [3, 3]],
    ['2-3', [2, 3]],
    [' 14 – 28 ', [14, 28]],
    ['14 to 28', [14, 28]],
  ])('%j is %j', (text, days) => {
    expect(value(parseDays(text))).toEqual(days);
  });
  it.each(['', '0', '3-2', '1-401', 'weekly', '1.5', '2-3-4'])('%j is refused', (text) => {
    expect(refusal(parseDays(text))).toBe('days-malformed');
  });
  it('are written for the place, and taken off again', () => {
    const rack = placeOf(houseOf(), RACK);
    const written = setInterval(rack, 'water', [2, 4], ON);
    expect(written).toMatchObject({
      said: 'interval: every 2–4 days',
      drafts: [{ subjects: [RACK], payload: { task: 'water', everyDays: [2, 4] } }],
    });
    const known = placeOf(
      houseOf(['2026-03-01', 'interval-set', { task: 'water', everyDays: [2, 4] }, { subjects: [RACK] }]),
      RACK,
    );
    expect(setInterval(known, 'water', null, ON)).toMatchObject({ drafts: [{ payload: { task: 'water' } }] });
    expect(setInterval(known, 'water', [2, 4], ON)).toMatchObject({ kind: 'refused', problem: { code: 'days-same' } });
    expect(setInterval(rack, 'water', [4, 2], ON)).toMatchObject({
      kind: 'refused',
      problem: { code: 'days-malformed' },
    });
  });
  it('show their effect before they are written', () => {
    const facility = houseOf(water('2026-03-17', ...TUBS));
    const effect = effectOf(facility, placeOf(facility, RACK), { task: 'water', everyDays: [5, 6], on: ON });
    expect([effect.before.left, effect.after.left, effect.first.after?.next]).toEqual([3, 0, '2026-03-22']);
    expect(facility.places.get(RACK)?.intervals).toEqual({});
    const alone = effectOf(facility, placeOf(facility, TUB), { task: 'water', everyDays: [1, 1], on: ON });
    expect([alone.before.overdue, alone.after.overdue]).toEqual([0, 1]);
  });
  it('are asked of one home, or of none', () => {
    expect(intervalAt(houseOf(), TUB, 'water')?.everyDays).toEqual([1, 3]);
    expect(intervalAt(houseOf(), EXHIBITS[1], 'pool-drain')).toBeNull();
  });
});
