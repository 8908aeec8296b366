import { describe, expect, it } from 'vitest';
import { addressOf, find, findIndex } from '../../src/app/find/findIndex.ts';
import { numberOf } from '../../src/core/index.ts';
import { added, id, type Line, LOT, RACK, REX, site } from '../core/log.ts';

const MUG = id(41);
const LINES: readonly Line[] = [
  ['2025-01-01', 'place-added', { placeKind: 'rack', name: 'Rack 6', walk: 1 }, { subjects: [RACK] }],
  added({ name: 'Żubrówka', sex: 'female' }),
  ['2026-04-01', 'lot-received', { prey: 'rat-weaned', eachG: [35, 60], count: 250 }, { subjects: [LOT] }],
  ['2026-04-01', 'ware-set', { name: 'Mug', priceMinor: 900 }, { subjects: [MUG] }],
];
const FACILITY = site(...LINES);
const INDEX = findIndex(FACILITY);

describe('what is found', () => {
  it.each([
    ['zubrowka', REX, 'animal'],
    ['rack 6', RACK, 'place'],
    ['weaned', LOT, 'lot'],
    ['mug', MUG, 'item'],
    [numberOf({ id: MUG, gtin: null }) ?? '', MUG, 'item'],
  ] as const)('by %j is %s', (typed, wanted, kind) => {
    expect(find(INDEX, typed)[0]).toMatchObject({ id: wanted, kind });
  });
  it.each([
    [REX, 'animal'],
    [RACK, 'place'],
    [LOT, 'lot'],
    [MUG, 'item'],
  ])('by its id %s opens its page', (typed, kind) => {
    expect(addressOf(FACILITY, typed)).toEqual({ ok: true, value: `/${kind}/${typed}` });
  });
  it('is nothing for words that nothing has', () => {
    expect(find(INDEX, 'mug rack')).toEqual([]);
  });
});
