import { describe, expect, it } from 'vitest';
import { type Course, type DoseSchedule, doseSchedule, doseTimeFault } from '../../../src/core/index.ts';
import { value } from '../log.ts';

const HOUR = 3_600_000;
const START = 1_780_000_000_000;
/** Times are written as hours after the start. */
const at = (hours: number): number => START + hours * HOUR;
const COURSE: Course = { everyHours: 48, startsMs: START, count: 4 };
const stands = (given: readonly number[], now: number, course: Partial<Course> = {}): DoseSchedule =>
  value(doseSchedule({ ...COURSE, ...course }, given.map(at), at(now)));
const next = (schedule: DoseSchedule): number | null =>
  schedule.nextMs === null ? null : (schedule.nextMs - START) / HOUR;

describe('CARE-COURSE: when the next dose is due', () => {
  it.each<readonly [string, readonly number[], number, DoseSchedule['state'], number | null, number, number | null]>([
    ['before the first', [], -5, 'before', 0, 0, 4],
    ['the first', [], 0, 'due', 0, 0, 4],
    ['the first, late', [], 23, 'due', 0, 0, 4],
    ['the first, missed', [], 24, 'missed', 0, 1, 4],
    ['after the first', [0], 10, 'waiting', 48, 0, 3],
    ['the second', [0], 48, 'due', 48, 0, 3],
    ['counts from the last one given', [0, 50], 60, 'waiting', 98, 0, 2],
    ['the second missed', [0], 80, 'missed', 48, 1, 3],
    ['two missed', [0], 122, 'missed', 48, 2, 3],
    ['one missed on the way', [0, 96], 100, 'waiting', 144, 1, 2],
    ['all given', [0, 48, 96, 144], 150, 'done', null, 0, 0],
    ['never more missed than are left', [0, 48, 96], 9000, 'missed', 144, 1, 1],
  ])('%s', (_name, given, now, state, due, missed, left) => {
    const found = stands(given, now);
    expect([found.state, next(found), found.missed, found.left]).toEqual([state, due, missed, left]);
  });
  it('takes what was given in any order', () => {
    expect(stands([96, 0, 48], 100)).toEqual(stands([0, 48, 96], 100));
  });
  it('ends with the number or with the end, whichever comes first', () => {
    const ends = (course: Partial<Course>) => (stands([], 0, course).endsMs - START) / HOUR;
    expect(ends({})).toBe(144);
    expect(ends({ count: undefined, endsMs: at(100) })).toBe(96);
    expect(ends({ endsMs: at(100) })).toBe(96);
    expect(stands([0, 48, 96], 100, { count: undefined, endsMs: at(100) })).toMatchObject({
      state: 'done',
      left: null,
    });
    expect(stands([0], 500, { count: undefined, endsMs: at(100) }).missed).toBe(2);
  });
  it('finds what was doubled, and what was given beyond the number', () => {
    const doubled = stands([0, 1, 48], 50);
    expect(doubled.doubledMs).toEqual([at(1)]);
    expect(doubled.warnings.join()).toMatch(/less than half an interval apart: call the vet now/);
    expect(stands([0, 48, 96, 144, 192], 200).warnings.join()).toMatch(/1 more than the vet wrote was given/);
  });
  it('never proposes to catch up', () => {
    expect(stands([0], 122).warnings.join()).toMatch(/2 doses were missed. Never give two at once/);
  });
  it.each<readonly [string, Partial<Course>, readonly number[], string]>([
    ['no interval', { everyHours: 0 }, [], 'not-positive'],
    ['an interval that is no number', { everyHours: Number.NaN }, [], 'not-finite'],
    ['half a dose', { count: 1.5 }, [], 'not-whole'],
    ['no doses', { count: 0 }, [], 'not-positive'],
    ['days written as ms', { everyHours: 86_400_000 }, [], 'course-impossible'],
    ['too many doses', { count: 1001 }, [], 'course-impossible'],
    ['no end', { count: undefined }, [], 'course-open'],
    ['an end before the start', { endsMs: at(-1) }, [], 'course-backwards'],
    ['a dose of tomorrow', {}, [24], 'date-future'],
    ['a time that is none', {}, [Number.NaN], 'not-finite'],
  ])('is refused for %s', (_name, course, given, code) => {
    expect(doseSchedule({ ...COURSE, ...course }, given.map(at), at(1))).toMatchObject({ problem: { code } });
  });
});

describe('CARE-COURSE: whether a dose may be given now', () => {
  const fault = (given: readonly number[], now: number) => doseTimeFault(COURSE, given.map(at), at(now));
  it('may a quarter of the interval early and any time later', () => {
    expect([fault([0], 36), fault([0], 48), fault([0], 90), fault([], 0), fault([], -12)]).toEqual(Array(5).fill(null));
  });
  it('may not sooner', () => {
    expect(fault([0], 35.9)).toMatchObject({ code: 'dose-too-early' });
    expect(fault([0], 1)?.message).toContain('The last one was given 1 h ago; the next is due in 47 h.');
    expect(fault([], -13)?.message).toContain('None was given yet; the next is due in 13 h.');
  });
  it('may not once all were given', () => {
    expect(fault([0, 48, 96, 144], 200)).toMatchObject({ code: 'course-done' });
  });
  it('may not where the course itself is unclear', () => {
    expect(doseTimeFault({ ...COURSE, count: undefined }, [], START)?.code).toBe('course-open');
  });
});
