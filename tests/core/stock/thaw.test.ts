import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  decideThaw,
  decideThrow,
  type Facility,
  foldFacility,
  type Id,
  KEPT_SESSIONS,
  parseEvent,
  sessionOf,
  thawTaking,
} from '../../../src/core/index.ts';
import { added, data, day, id, type Line, LOT, log, site, undo, value } from '../log.ts';
import { lot, lotAfter, NOW, ON, short, thrown, used } from './freezer.ts';

const [A, B, C] = [id(21), id(22), id(23)] as const;
const TOMORROW = addDays(ON, 1);
const pups = (count: number) => [{ prey: 'rat-pup', count }];
const offered = (n: number, outcome: 'taken' | 'refused', on: string = ON, count = 1): readonly Line[] => [
  added({}, { subjects: [id(100 + n)] }),
  [on, 'prey-offered', { prey: 'rat-pup', count, outcome }, { subjects: [id(100 + n)] }],
];
const stock = [
  lot(A, { count: 4 }, '2026-01-01'),
  lot(B, { count: 10 }),
  lot(C, { prey: 'rat-small', eachG: [60, 100] }),
];
const taken = (facility: Facility, wants = pups(9), forDay = ON) =>
  thawTaking(facility, wants, forDay, ON).flatMap(({ take }) => take.map((one) => [one.lot, one.count]));

describe('CARE-LOT: the whole thaw list in one go', () => {
  it('comes from the oldest lot first, and from the next one when that is empty', () => {
    expect(taken(site(...stock))).toEqual([
      [A, 4],
      [B, 5],
    ]);
    const made = decideThaw(site(...stock), [...pups(9), { prey: 'rat-small', count: 2 }], ON, NOW);
    expect(made.kind === 'accepted' && made.said).toBe('thawed 9 × rat pup, 2 × small rat');
    expect(made.kind === 'accepted' && made.drafts.map((one) => [one.kind, one.subjects, one.payload])).toEqual([
      ['lot-used', [A], { count: 4 }],
      ['lot-used', [B], { count: 5 }],
      ['lot-used', [C], { count: 2 }],
    ]);
  });
  it('leaves lots alone that are past their day, and names them', () => {
    const facility = site(lot(A, { useBy: '2026-03-19' }, '2026-01-01'), lot(B));
    expect(taken(facility)).toEqual([[B, 9]]);
    expect(thawTaking(facility, pups(9), ON, ON)[0]?.past.map((one) => one.id)).toEqual([A]);
  });
  it('is less by what is out already, so a second touch takes nothing', () => {
    const first = site(...stock, used(9, ON, B));
    expect(thawTaking(first, pups(9), ON, ON)).toMatchObject([{ out: 9, take: [], short: 0 }]);
    expect(short(decideThaw(first, pups(9), ON, NOW))).toBe('refused thaw-nothing');
    expect(taken(first, pups(11))).toEqual([[A, 2]]);
  });
  it('takes out anew for what was eaten or thrown away', () => {
    expect(taken(site(...stock, used(3, ON, B), ...offered(1, 'taken'), thrown(1, ON, B)), pups(3))).toEqual([[A, 2]]);
  });
  it('may be for the day after: then it says so, and today’s is none of it', () => {
    const facility = site(...stock, used(9, ON, B));
    expect(taken(facility, pups(5), TOMORROW)).toEqual([
      [A, 4],
      [B, 1],
    ]);
    const made = decideThaw(facility, pups(4), TOMORROW, NOW);
    expect(made.kind === 'accepted' && made.drafts[0]?.payload).toEqual({ count: 4, forDay: TOMORROW });
  });
  it('is asked about where the freezer has too little, and then takes what is there', () => {
    const made = decideThaw(site(...stock), pups(20), ON, NOW);
    expect(made.kind === 'asks' && [made.problem.code, made.problem.message]).toEqual([
      'thaw-short',
      'The freezer has too little by the book: 6 × rat pup.',
    ]);
    expect(made.kind === 'asks' && made.drafts.map((one) => one.payload)).toEqual([{ count: 4 }, { count: 10 }]);
  });
  it('is refused where nothing is wanted, and where nothing of it is there', () => {
    expect(short(decideThaw(site(...stock), [], ON, NOW))).toBe('refused thaw-nothing');
    expect(short(decideThaw(site(), pups(3), ON, NOW))).toBe('refused freezer-empty');
  });
  it('never takes more than a lot has, nor more than is wanted, from any stock', () => {
    const lots = fc.array(fc.tuple(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 0, max: 78 })), { maxLength: 6 });
    fc.assert(
      fc.property(lots, fc.integer({ min: 1, max: 120 }), (held, wanted) => {
        const lines = held.map(([count, age], n) => lot(id(40 + n), { count }, addDays(ON, -age)));
        const facility = site(...lines);
        const [found] = thawTaking(facility, pups(wanted), ON, ON);
        const takes = found?.take ?? [];
        const all = takes.reduce((sum, one) => sum + one.count, 0);
        expect(all + (found?.short ?? 0)).toBe(wanted);
        for (const { lot: one, count } of takes) expect(count).toBeLessThanOrEqual(facility.lots.get(one)?.left ?? 0);
        // Whatever is younger than the last lot that was touched is whole.
        const oldest = takes.map((one) => facility.lots.get(one.lot)?.receivedOn ?? '');
        expect([...oldest].sort()).toEqual(oldest);
      }),
    );
  });
});

describe('CARE-SESSION: what was thawed for a day', () => {
  it('is counted by class: thawed, eaten, thrown away, left', () => {
    const lines = [
      ...stock,
      used(4, ON, A),
      used(3, ON, B),
      ...offered(1, 'taken', ON, 2),
      ...offered(2, 'refused'),
      thrown(1, ON, A),
    ];
    expect(sessionOf(site(...lines), ON)).toEqual([{ prey: 'rat-pup', used: 7, eaten: 2, thrown: 1, left: 4 }]);
  });
  it('belongs to the day of feeding, whenever it was taken out', () => {
    const facility = site(lot(), used(5, '2026-03-19', LOT, ON), used(2));
    expect(sessionOf(facility, ON)).toMatchObject([{ used: 7 }]);
    expect(sessionOf(facility, day('2026-03-19'))).toEqual([]);
  });
  it('is never less than nothing where more was eaten than anybody wrote down as thawed', () => {
    expect(sessionOf(site(lot(), used(1), ...offered(1, 'taken', ON, 3)), ON)).toMatchObject([{ left: 0 }]);
  });
  it('counts what a slip took back as not thawed', () => {
    const lines = [lot(), used(5)];
    expect(sessionOf(site(...lines, undo(ON, 1, { subjects: [LOT] })), ON)).toEqual([]);
  });
  it('is kept for the latest feeding days alone', () => {
    const days = Array.from({ length: 9 }, (_, n) => addDays(ON, -n));
    const { sessions } = lotAfter(lot(), ...days.map((on) => used(1, on)));
    expect(sessions.map((one) => one.day)).toEqual(days.slice(0, KEPT_SESSIONS).reverse());
  });
  it('is the same for any order of the events', () => {
    const events = log(lot(), used(5), thrown(1), used(2, '2026-03-19', LOT, ON));
    expect(foldFacility([...events].reverse()).lots.get(LOT)).toEqual(foldFacility(events).lots.get(LOT));
  });
});

describe('CARE-SESSION: what nobody ate', () => {
  const lines = [...stock, used(4, ON, A), used(3, ON, B), ...offered(1, 'taken', ON, 2)];
  const thrownOf = (facility: Facility, on = NOW) => decideThrow(facility, ON, [], on);
  it('is thrown away in one go, of the newest lot first, and is then gone', () => {
    const made = thrownOf(site(...lines));
    expect(made.kind === 'accepted' && made.said).toBe('thrown away thawed: 5 × rat pup');
    if (made.kind !== 'accepted') throw new Error(short(made));
    expect(made.drafts.map((one) => [one.subjects, one.payload])).toEqual([
      [[B], { count: 3, why: 'not eaten', thawed: true }],
      [[A], { count: 2, why: 'not eaten', thawed: true }],
    ]);
    const after = foldFacility([...log(...lines), ...made.drafts.map((draft, at) => written(draft, at))]);
    expect(sessionOf(after, ON)).toMatchObject([{ left: 0 }]);
    expect([A, B].map((one) => after.lots.get(one)?.left)).toEqual([0, 7]);
    expect(short(decideThrow(after, ON, [], NOW))).toBe('refused throw-nothing');
  });
  it('may be thrown away the day after: then it says of which day it is', () => {
    const made = thrownOf(site(...lines), { ...NOW, day: TOMORROW, today: TOMORROW });
    expect(made.kind === 'accepted' && made.drafts.map((one) => [one.day, one.payload])).toMatchObject([
      [TOMORROW, { forDay: ON }],
      [TOMORROW, { forDay: ON }],
    ]);
  });
  it('is asked about while animals still wait for it', () => {
    const made = decideThrow(
      site(...lines),
      ON,
      [
        { prey: 'rat-pup', count: 3 },
        { prey: 'rat-small', count: 1 },
      ],
      NOW,
    );
    expect(made.kind === 'asks' && made.problem.message).toBe('It is still to be fed: 3 × rat pup.');
  });
  function written(
    draft: { readonly day: string; readonly kind: string; readonly subjects: readonly Id[]; readonly payload: object },
    at: number,
  ) {
    const line = [draft.day, draft.kind, draft.payload, { subjects: draft.subjects, n: 900 + at }] as unknown as Line;
    return value(parseEvent(data(line, 900 + at)));
  }
});
