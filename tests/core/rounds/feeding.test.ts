import { describe, expect, it } from 'vitest';
import { allAsPlanned, foldFacility, type Id, offerAmended, parseEvent, summaryOf } from '../../../src/core/index.ts';
import { added, data, day, eventId, fed, id, type Line, log, RACK, TUB, value, weighed } from '../log.ts';

const D = '2026-03-09';
const [DUE, HELD, YOUNG, AWAY] = [id(50), id(51), id(52), id(53)];
const TUBS = [TUB, id(12), id(13)];
const place = (at: Id, name: string, kind: 'rack' | 'tub', parent?: Id): Line => [
  '2025-01-01',
  'place-added',
  { placeKind: kind, name, walk: 1, ...(parent && { parent }) },
  { subjects: [at] },
];
const on = (who: Id, line: Line): Line => [line[0], line[1], line[2], { subjects: [who] }] as Line;
const lives = (who: Id, tub: Id): readonly Line[] => [
  added({ name: `A${who.slice(0, 3)}` }, { subjects: [who] }),
  ['2025-01-02', 'animal-moved', { to: tub }, { subjects: [who] }],
  on(who, weighed('2026-03-01', 300)),
];
const lines: readonly Line[] = [
  place(RACK, 'Rack 1', 'rack'),
  ...TUBS.map((tub, at) => place(tub, `1-0${at + 1}`, 'tub', RACK)),
  ...lives(DUE, TUBS[0] ?? TUB),
  on(DUE, fed('2026-02-20')),
  ...lives(HELD, TUBS[1] ?? TUB),
  on(HELD, fed('2026-02-20')),
  ['2026-03-08', 'hold-placed', { reason: 'keeper' }, { subjects: [HELD] }],
  ...lives(YOUNG, TUBS[2] ?? TUB),
  on(YOUNG, fed('2026-03-08')),
  added({ name: 'Away' }, { subjects: [AWAY] }),
];
const moment = { day: day(D), today: day(D), nowMs: Date.parse(`${D}T18:00:00Z`) };
const facility = foldFacility(log(...lines));

describe('CARE-ROUND: a rack fed as planned', () => {
  const sweep = (at: Id, of = facility) => allAsPlanned(of, { place: at, task: 'feeding' }, moment);
  const round = sweep(RACK);
  it('feeds who is due there, and nobody else', () => {
    expect(round.done.map((line) => line.of)).toEqual([DUE]);
    expect(round.drafts).toMatchObject([
      { kind: 'prey-offered', subjects: [DUE], payload: { outcome: 'taken', asPlanned: true } },
    ]);
    expect(round.notDue).toBe(2);
  });
  it('is the same for the room of one tub', () => {
    expect(sweep(TUBS[2] ?? TUB).done).toEqual([]);
    expect(sweep(TUBS[0] ?? TUB).done).toHaveLength(1);
  });
  it('names who needs more than a touch', () => {
    const vet: Line = ['2026-03-08', 'animal-left', { how: 'sold' }, { subjects: [AWAY] }];
    expect(sweep(RACK, foldFacility(log(...lines, vet))).left).toEqual([]);
    const unweighed: readonly Line[] = [
      place(RACK, 'Rack 1', 'rack'),
      place(TUB, '1-01', 'tub', RACK),
      added({ name: 'New' }, { subjects: [DUE] }),
      ['2025-01-02', 'animal-moved', { to: TUB }, { subjects: [DUE] }],
    ];
    const { done: none, left } = sweep(RACK, foldFacility(log(...unweighed)));
    expect([none.length, left.map(({ line }) => line.of)]).toEqual([0, [DUE]]);
  });
  it('becomes a refusal by amending the one offer', () => {
    const [draft] = round.drafts;
    const animal = facility.animals.get(DUE);
    if (draft === undefined || animal === undefined) throw new Error('nothing was fed');
    const offer = { id: eventId(900), payload: draft.payload };
    const slip = offerAmended(animal, offer, 'refused', moment);
    const written = [draft, slip].map((one, at) => {
      const line = [one.day, one.kind, one.payload, { subjects: one.subjects, n: 900 + at }] as unknown as Line;
      return value(parseEvent(data(line, 900 + at)));
    });
    const after = foldFacility([...log(...lines), ...written]).animals.get(DUE);
    expect(after?.offers.at(-1)).toMatchObject({ day: D, taken: false });
    expect(after?.offers).toHaveLength(2);
  });
  it('passes over whoever was skipped on that day, and counts what was used', () => {
    const skip: Line = [D, 'task-skipped', { task: 'feeding', why: 'opaque' }, { subjects: [DUE] }];
    const skipped = foldFacility(log(...lines, skip));
    expect(sweep(RACK, skipped).done).toEqual([]);
    expect(summaryOf(skipped, { place: RACK, task: 'feeding' }, moment)).toMatchObject({ done: 0, left: [], used: [] });
    const offered: Line = [D, 'prey-offered', { prey: 'rat-pup', count: 2, outcome: 'taken' }, { subjects: [DUE] }];
    const summary = summaryOf(foldFacility(log(...lines, offered)), { place: RACK, task: 'feeding' }, moment);
    expect([summary.done, summary.used]).toEqual([1, [['rat-pup', 2]]]);
  });
});
