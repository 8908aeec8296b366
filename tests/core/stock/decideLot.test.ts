import { describe, expect, it } from 'vitest';
import { addDays, COUNT_OFF, type Decision, decideLot, type LotAct } from '../../../src/core/index.ts';
import { id, type Line, LOT, site, writtenAt } from '../log.ts';
import { lot, lotAfter, NOW, ON, short, thrown, used } from './freezer.ts';

function act(lines: readonly Line[], one: LotAct, moment = NOW): Decision {
  return decideLot(site(...lines), lotAfter(...lines), one, moment);
}
const use = (count: number): LotAct => ({ do: 'use', count });
const waste = (count: number, thawed = false, why = 'freezer burn'): LotAct => ({ do: 'waste', count, why, thawed });
/** A line that was written at that time of the day. */
const written = ([on, kind, payload, more]: Line, time: string) =>
  [on, kind, payload, { ...more, n: writtenAt(`${on}T${time}:00Z`) }] as Line;
const counted = (count: number): LotAct => ({ do: 'count', count });
const drafts = (decision: Decision) =>
  decision.kind === 'refused' ? [] : decision.drafts.map(({ kind, subjects, payload }) => [kind, subjects, payload]);

describe('CARE-LOT: what is taken out of a lot', () => {
  it('is written with its count, and the feeding day where that is another day', () => {
    expect(drafts(act([lot()], use(5)))).toEqual([['lot-used', [LOT], { count: 5 }]]);
    expect(drafts(act([lot()], { ...use(5), forDay: ON } as LotAct))).toEqual([['lot-used', [LOT], { count: 5 }]]);
    const tomorrow = addDays(ON, 1);
    expect(drafts(act([lot()], { ...use(5), forDay: tomorrow } as LotAct))).toEqual([
      ['lot-used', [LOT], { count: 5, forDay: tomorrow }],
    ]);
  });
  it.each<[string, readonly Line[], LotAct, string]>([
    ['all of it', [lot()], use(50), 'accepted'],
    ['more than the book has', [lot()], use(51), 'asks lot-short'],
    ['none', [lot()], use(0), 'refused not-whole'],
    ['part of an item', [lot()], use(0.5), 'refused not-whole'],
    ['past its day', [lot(LOT, { useBy: '2026-03-19' })], use(5), 'asks lot-past'],
    ['on its last day', [lot(LOT, { useBy: '2026-03-20' })], use(5), 'accepted'],
    ['after a year without a day of its own', [lot(LOT, {}, '2025-03-19')], use(5), 'asks lot-past'],
    ['while an older lot is there', [lot(), lot(id(21), {}, '2026-01-20')], use(5), 'asks lot-older'],
    ['while a newer lot is there', [lot(), lot(id(21), {}, '2026-02-02')], use(5), 'accepted'],
    [
      'while an older lot of another class is there',
      [lot(), lot(id(21), { prey: 'rat-small' }, '2026-01-20')],
      use(5),
      'accepted',
    ],
    ['while an older lot is empty', [lot(), lot(id(21), {}, '2026-01-20'), used(50, ON, id(21))], use(5), 'accepted'],
    [
      'while an older lot is past its day',
      [lot(), lot(id(21), { useBy: '2026-03-01' }, '2026-01-20')],
      use(5),
      'accepted',
    ],
    ['again after nine minutes', [lot(), written(used(5), '08:01')], use(5), 'asks lot-again'],
    ['again after ten minutes', [lot(), written(used(5), '08:00')], use(5), 'accepted'],
    ['again a day later', [lot(), used(5, '2026-03-19')], use(5), 'accepted'],
  ])('%s: %4$s', (_, lines, one, says) => {
    expect(short(act(lines, one))).toBe(says);
  });
  it('is asked about with every doubt at once', () => {
    const made = act([lot(LOT, { useBy: '2026-03-19' })], use(60));
    expect(made.kind === 'asks' && made.problem.message).toBe(
      'This lot of rat pup passed its day on 19 Mar 2026. By the book 50 are left in this lot, and 60 are to go.',
    );
  });
  it('does not lie ahead, nor before the lot came', () => {
    expect(short(act([lot()], use(5), { ...NOW, day: addDays(ON, 1) }))).toBe('refused date-future');
    expect(short(act([lot()], use(5), { ...NOW, day: addDays(ON, -60) }))).toBe('refused lot-before');
  });
});

describe('CARE-LOT: what is thrown away', () => {
  it('has its reason, and says whether it was thawed before', () => {
    expect(drafts(act([lot()], waste(2)))).toEqual([['lot-wasted', [LOT], { count: 2, why: 'freezer burn' }]]);
    expect(drafts(act([lot(), used(5)], waste(2, true, ' refused ')))).toEqual([
      ['lot-wasted', [LOT], { count: 2, why: 'refused', thawed: true }],
    ]);
  });
  it.each<[string, readonly Line[], LotAct, string]>([
    ['without a reason', [lot()], waste(2, false, '  '), 'refused waste-why'],
    ['none', [lot()], waste(0), 'refused not-whole'],
    ['more than the book has', [lot()], waste(51), 'asks lot-short'],
    ['past its day, which is what throwing away is for', [lot(LOT, { useBy: '2026-03-01' })], waste(50), 'accepted'],
    ['thawed, as many as were thawed today', [lot(), used(5)], waste(5, true), 'accepted'],
    ['thawed, more than were thawed today', [lot(), used(5)], waste(6, true), 'asks waste-thawed'],
    ['thawed, more than is still out', [lot(), used(5), thrown(4)], waste(2, true), 'asks waste-thawed'],
    [
      'thawed, of what was thawed yesterday for that day',
      [lot(), used(5, '2026-03-19')],
      waste(1, true),
      'asks waste-thawed',
    ],
    [
      'thawed, of what was thawed yesterday for today',
      [lot(), used(5, '2026-03-19', LOT, ON)],
      waste(5, true),
      'accepted',
    ],
  ])('%s: %4$s', (_, lines, one, says) => {
    expect(short(act(lines, one))).toBe(says);
  });
  it('leaves the book as it is where it was thawed before', () => {
    expect(lotAfter(lot(), used(5), thrown(3))).toMatchObject({ left: 45, used: 5, wasted: 3 });
    const frozen: Line = [ON, 'lot-wasted', { count: 3, why: 'burst' }, { subjects: [LOT] }];
    expect(lotAfter(lot(), used(5), frozen)).toMatchObject({ left: 42, used: 5, wasted: 3 });
  });
});

describe('CARE-COUNT: what was counted', () => {
  it('is asked about when it is off by more than a tenth and more than five items', () => {
    expect(COUNT_OFF).toEqual({ share: 0.1, items: 5 });
    const says = (items: number) =>
      [44, 45, 50, 55, 56].map((n) => short(act([lot(LOT, { count: items })], counted(n))));
    expect(says(50)).toEqual(['asks count-differs', 'accepted', 'accepted', 'accepted', 'asks count-differs']);
    expect(short(act([lot(LOT, { count: 1000 })], counted(901)))).toBe('accepted');
    expect(short(act([lot(LOT, { count: 1000 })], counted(899)))).toBe('asks count-differs');
    expect(short(act([lot(LOT, { count: 5 })], counted(0)))).toBe('accepted');
  });
  it('may be nothing, but no part of an item and not less than nothing', () => {
    expect(drafts(act([lot(LOT, { count: 4 })], counted(0)))).toEqual([['stock-counted', [LOT], { count: 0 }]]);
    expect([-1, 2.5, Number.NaN].map((n) => short(act([lot()], counted(n))))).toEqual([
      'refused not-whole',
      'refused not-whole',
      'refused not-whole',
    ]);
  });
  it('says what the book had', () => {
    const made = act([lot(), used(5)], counted(44));
    expect(made.kind === 'accepted' && made.said).toBe('counted 44 × rat pup, 45 by the book');
  });
});
