import { describe, expect, it } from 'vitest';
import { isDay, parseEvent, weekday } from '../../src/core/index.ts';
import { data, day, weighed } from '../core/log.ts';

describe('ISO 8601 calendar dates, extended form', () => {
  // The rule of the Gregorian calendar as RFC 3339, appendix C, gives it (from memory).
  const leaps: readonly [number, boolean][] = [
    [1600, true],
    [1700, false],
    [1900, false],
    [2000, true],
    [2023, false],
    [2024, true],
    [2100, false],
  ];
  it.each(leaps)('%d has a 29 February: %s', (year, has) => {
    expect(isDay(`${year}-02-29`)).toBe(has);
  });
  // ISO 8601 counts Monday as 1; ours counts it as 0. Weekdays of well-known dates, from memory.
  const weekdays: readonly [string, number][] = [
    ['1969-07-20', 7],
    ['1970-01-01', 4],
    ['2000-01-01', 6],
    ['1985-04-12', 5],
  ];
  it.each(weekdays)('%s is the ISO weekday %d', (text, number) => {
    expect(weekday(day(text)) + 1).toBe(number);
  });
});

describe('RFC 3339, 5.8: examples of instants (from memory)', () => {
  const instants: readonly [string, boolean][] = [
    ['1985-04-12T23:20:50.52Z', true],
    ['1990-12-31T23:59:60Z', true],
    // An offset is right by the RFC; here every instant is written in UTC.
    ['1996-12-19T16:39:57-08:00', false],
  ];
  it.each(instants)('%s is taken as an event’s instant: %s', (at, taken) => {
    expect(parseEvent({ ...data(weighed('2026-03-09', 5), 1), at }).ok).toBe(taken);
  });
});
