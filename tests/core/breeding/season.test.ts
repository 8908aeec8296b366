import { describe, expect, it } from 'vitest';
import {
  candidateSires,
  type Facility,
  type Id,
  maleRota,
  nextPairings,
  seasonBoard,
  seasonOf,
  seasonTasks,
} from '../../../src/core/index.ts';
import { added, CLUTCH, DAM, day, id, type Line, SIRE, site } from '../log.ts';

const OTHER = id(3);
const both = (male: Id = SIRE) => ({ subjects: [DAM, male] });
const paired = (on: string, male: Id = SIRE): Line => [on, 'pairing-started', {}, both(male)];
const apart = (on: string, male: Id = SIRE): Line => [on, 'pairing-ended', {}, both(male)];
const lock = (on: string, male: Id = SIRE): Line => [on, 'lock-seen', {}, both(male)];
const her = (on: string, kind: 'ovulation-seen' | 'pre-lay-shed-seen'): Line => [on, kind, {}, { subjects: [DAM] }];
const follicles = (on: string, largestMm: number): Line => [
  on,
  'follicles-measured',
  { largestMm },
  { subjects: [DAM] },
];
const laid = (on: string, clutch: Id = CLUTCH, eggs = 6): Line => [
  on,
  'clutch-laid',
  { clutch, eggs, sire: SIRE },
  { subjects: [DAM, clutch] },
];
const hatched = (on: string, count = 5, clutch: Id = CLUTCH): Line => [
  on,
  'clutch-hatched',
  { hatched: count },
  { subjects: [clutch] },
];
const PAIR: readonly Line[] = [
  added({ name: 'Dam', sex: 'female' }, { subjects: [DAM] }),
  added({ name: 'Sire', sex: 'male' }, { subjects: [SIRE] }),
  added({ name: 'Other', sex: 'male' }, { subjects: [OTHER] }),
];
const damIn = (facility: Facility) => {
  const found = facility.animals.get(DAM);
  if (found === undefined) throw new Error('no dam');
  return found;
};
const seen = (on: string, ...lines: readonly Line[]) => {
  const facility = site(...PAIR, ...lines);
  return seasonOf(facility, damIn(facility), day(on));
};

describe('a female’s season', () => {
  it.each<[string, string, readonly Line[]]>([
    ['resting', '2026-01-01', []],
    ['paired', '2025-12-01', [paired('2025-11-20')]],
    ['locked', '2025-12-01', [paired('2025-11-20'), lock('2025-11-21')]],
    ['locked', '2026-01-10', [lock('2025-11-21'), follicles('2026-01-05', 14)]],
    ['follicles', '2026-01-10', [lock('2025-11-21'), follicles('2026-01-05', 22)]],
    ['ovulated', '2026-02-20', [lock('2025-11-21'), her('2026-02-15', 'ovulation-seen'), paired('2026-02-18')]],
    ['pre-lay shed', '2026-03-10', [her('2026-02-15', 'ovulation-seen'), her('2026-03-04', 'pre-lay-shed-seen')]],
    ['laid', '2026-04-10', [lock('2025-11-21'), laid('2026-04-03')]],
    ['hatched', '2026-06-10', [laid('2026-04-03'), hatched('2026-06-05')]],
    ['resting', '2026-09-10', [laid('2026-04-03'), hatched('2026-06-05')]],
  ])('is %s on %s', (stage, on, lines) => {
    expect(seen(on, ...lines).stage).toBe(stage);
  });
  it('expects the next stage by the calendar, from the last milestone', () => {
    const { next } = seen('2026-02-20', her('2026-02-15', 'ovulation-seen'));
    expect(next.map((one) => [one.step.to, one.from, one.to])).toEqual([['pre-lay shed', '2026-03-01', '2026-03-09']]);
  });
  it('does not wait for a shed that was missed once she has laid', () => {
    const { next } = seen('2026-04-10', her('2026-02-15', 'ovulation-seen'), laid('2026-04-03'));
    expect(next.map((one) => one.step.to)).toEqual(['hatched']);
  });
  it('narrows the window by her own dates of other years', () => {
    const early = id(31);
    const { next } = seen(
      '2026-03-10',
      her('2025-03-01', 'pre-lay-shed-seen'),
      laid('2025-04-08', early),
      hatched('2025-06-08', 5, early),
      her('2026-03-04', 'pre-lay-shed-seen'),
    );
    expect(next[0]?.herSpans).toEqual([38]);
    expect(next[0]?.days[1]).toBeGreaterThan(32);
  });
  it('names who was with her, and who is', () => {
    const season = seen('2025-12-20', paired('2025-11-20'), apart('2025-11-22'), paired('2025-12-18', OTHER));
    expect(season.mates).toEqual([OTHER, SIRE]);
    expect(season.with).toEqual([OTHER]);
  });
  it('says what her stage asks for, with its rule', () => {
    expect(seen('2026-02-20', her('2026-02-15', 'ovulation-seen')).care.join()).toContain('CARE-GRAVID');
    expect(seen('2026-04-10', laid('2026-04-03')).care.join()).toContain('CARE-LAYING');
    const small = seen('2026-01-10', paired('2025-11-20'), follicles('2026-01-05', 14));
    expect(small.care.join()).toContain('14 mm');
  });
});

describe('the season board', () => {
  const facility = site(...PAIR, her('2026-02-15', 'ovulation-seen'));
  const board = seasonBoard(facility, day('2026-02-20'));
  it('shows females with a season, and no males', () => {
    expect(board.map((one) => one.animal.id)).toEqual([DAM]);
  });
  it.each([
    ['2026-02-20', '2026-02-26', 0, undefined],
    ['2026-02-24', '2026-03-02', 1, 0],
    ['2026-03-12', '2026-03-18', 1, 3],
  ])('of %s to %s has %i things to look for, %s days late', (on, until, count, late) => {
    const tasks = seasonTasks(seasonBoard(facility, day(on)), day(on), day(until));
    expect([tasks.length, tasks[0]?.lateDays]).toEqual([count, late]);
  });
});

describe('candidate sires', () => {
  it('are this season’s males, then last season’s, since females store sperm', () => {
    const facility = site(...PAIR, paired('2025-02-01', OTHER), laid('2025-04-20', id(31)), paired('2026-01-20'));
    const found = candidateSires(facility, damIn(facility), day('2026-04-03'));
    expect(found.map((one) => [one.id, one.season])).toEqual([
      [SIRE, 'this'],
      [OTHER, 'last'],
    ]);
  });
  it('are nobody where no pairing was written, or one too long ago', () => {
    const facility = site(...PAIR, paired('2023-01-01'));
    expect(candidateSires(facility, damIn(facility), day('2026-04-03'))).toEqual([]);
  });
});

describe('the rota of males (BREED-REST)', () => {
  const facility = site(...PAIR, paired('2025-12-01'), apart('2025-12-03'), paired('2025-12-10', OTHER));
  const rota = maleRota(facility, 'Python regius', day('2025-12-12'));
  it('rests a male after a pairing, and one that is with a female is not ready', () => {
    expect(rota.map((one) => [one.animal.id, one.readyOn])).toEqual([
      [SIRE, '2025-12-08'],
      [OTHER, null],
    ]);
  });
  it('proposes only partners of this season that still wait', () => {
    expect(nextPairings(facility, rota, () => true).map((one) => [one.male, one.female])).toEqual([[SIRE, DAM]]);
    expect(nextPairings(facility, rota, () => false)).toEqual([]);
  });
});
