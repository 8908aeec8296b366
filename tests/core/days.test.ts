import { describe, expect, it } from 'vitest';
import {
  addDays,
  dayFromNumber,
  dayNumber,
  daysBetween,
  daysInMonth,
  isDay,
  laterDay,
  parseDay,
  sayDay,
  sayDayShort,
  sayDistance,
  weekday,
} from '../../src/core/index.ts';
import { day, refusal } from './log.ts';

describe('reading a day', () => {
  it('takes days that the calendar has', () => {
    for (const text of ['2026-03-09', '2024-02-29', '2000-02-29', '1999-12-31', '0000-01-01', '9999-12-31'])
      expect(isDay(text), text).toBe(true);
  });
  it('refuses days that the calendar does not have', () => {
    for (const text of ['2026-02-29', '1900-02-29', '2026-04-31', '2026-13-01', '2026-00-10', '2026-01-00'])
      expect(refusal(parseDay(text)), text).toBe('date-malformed');
  });
  it('refuses other ways to write a day', () => {
    for (const text of [
      '',
      '9.3.2026',
      '2026-3-9',
      '20260309',
      '2026-03-09T00:00Z',
      ' 2026-03-09',
      '2026-03-09\n',
      '+12026-03-09',
    ])
      expect(refusal(parseDay(text)), text).toBe('date-malformed');
  });
});

describe('counting days', () => {
  it('agrees with the day numbers of the platform over 400 years', () => {
    for (let number = -146_097; number < 146_097; number += 1) {
      const text = new Date(number * 86_400_000).toISOString().slice(0, 10);
      if (dayFromNumber(number) !== text || dayNumber(day(text)) !== number) expect(dayFromNumber(number)).toBe(text);
    }
    expect(dayFromNumber(20_521)).toBe('2026-03-09');
  });
  it('adds over the ends of months and years', () => {
    expect(addDays(day('2024-02-28'), 1)).toBe('2024-02-29');
    expect(addDays(day('2023-12-31'), 1)).toBe('2024-01-01');
    expect(addDays(day('2024-03-01'), -1)).toBe('2024-02-29');
  });
  it('counts between days in both directions', () => {
    expect(daysBetween(day('2026-03-09'), day('2026-03-16'))).toBe(7);
    expect(daysBetween(day('2026-03-16'), day('2026-03-09'))).toBe(-7);
  });
  it('stops at the ends of the years that can be written', () => {
    expect(addDays(day('9999-12-31'), 1)).toBe('9999-12-31');
    expect(addDays(day('0000-01-01'), -1)).toBe('0000-01-01');
  });
  it('knows the leap years', () => {
    expect([1900, 2000, 2023, 2024].map((year) => daysInMonth(year, 2))).toEqual([28, 29, 28, 29]);
    expect([0, 13].map((month) => daysInMonth(2026, month))).toEqual([0, 0]);
  });
  it('finds the later of two', () => {
    expect(laterDay(day('2026-03-09'), day('2026-02-10'))).toBe('2026-03-09');
  });
});

describe('saying a day', () => {
  it('names weekday and month, so that no number can be read as the month', () => {
    expect(sayDay(day('2026-12-01'))).toBe('Tue 1 Dec 2026');
    expect(sayDayShort(day('2026-12-01'))).toBe('1 Dec 2026');
  });
  it('counts Monday as 0, before 1970 as well', () => {
    expect([weekday(day('1970-01-01')), weekday(day('1969-12-29')), weekday(day('1600-01-01'))]).toEqual([3, 0, 5]);
  });
  it('tells how far off it is', () => {
    const from = day('2026-03-09');
    expect([0, 1, 6, -1, -3].map((days) => sayDistance(from, addDays(from, days)))).toEqual([
      'today',
      'in 1 day',
      'in 6 days',
      '1 day ago',
      '3 days ago',
    ]);
  });
});
