import { ok, type Result, refuse } from './problems.ts';

declare const dayBrand: unique symbol;

/** A calendar day of the site as ISO 8601 text, `2026-03-09`. Text order is time order. */
export type Day = string & { readonly [dayBrand]: true };

const ISO = /^\d{4}-\d{2}-\d{2}$/;
const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;
const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

/** Reads an ISO 8601 calendar date in the extended form (ISO 8601-1:2019, 5.2.2.1 b). */
export function parseDay(text: string): Result<Day> {
  return isDay(text) ? ok(text) : refuse('date-malformed', { text });
}

/** True for text that is a day; lets foreign data be narrowed without a copy. */
export function isDay(text: string): text is Day {
  if (!ISO.test(text)) return false;
  const [year, month, date] = [digitsAt(text, 0, 4), digitsAt(text, 5, 2), digitsAt(text, 8, 2)];
  return month >= 1 && month <= 12 && date >= 1 && date <= daysInMonth(year, month);
}

/** The days in a month of the Gregorian calendar; month 1 is January. */
export function daysInMonth(year: number, month: number): number {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return month === 2 && leap ? 29 : (MONTH_DAYS[month - 1] ?? 0);
}

/** Whole days since 1970-01-01; the years are counted from March, so that a leap day ends a year. */
export function dayNumber(day: Day): number {
  const month = digitsAt(day, 5, 2);
  const year = digitsAt(day, 0, 4) - (month <= 2 ? 1 : 0);
  const era = Math.floor(year / 400);
  const yearOfEra = year - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + digitsAt(day, 8, 2) - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}

/** Lists ask this of every offer of every animal, so it makes no new text. */
function digitsAt(day: string, from: number, count: number): number {
  let number = 0;
  for (let at = from; at < from + count; at++) number = number * 10 + day.charCodeAt(at) - 48;
  return number;
}

/** The day with that number; the inverse of {@link dayNumber} for the years 0000 to 9999. */
export function dayFromNumber(number: number): Day {
  const shifted = Math.min(Math.max(Math.trunc(number), -719528), 2932896) + 719468;
  const era = Math.floor(shifted / 146097);
  const dayOfEra = shifted - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const date = dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1;
  const month = monthFromMarch + (monthFromMarch < 10 ? 3 : -9);
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return `${pad(year, 4)}-${pad(month, 2)}-${pad(date, 2)}` as Day;
}

/** The day so many days later (or earlier, when negative). */
export function addDays(day: Day, days: number): Day {
  return dayFromNumber(dayNumber(day) + days);
}

/** How many days `to` lies after `from`. */
export function daysBetween(from: Day, to: Day): number {
  return dayNumber(to) - dayNumber(from);
}

/** The later of two days. */
export function laterDay(a: Day, b: Day): Day {
  return a < b ? b : a;
}

/** `Tue 1 Dec 2026`: no reader has to guess which number is the month. */
export function sayDay(day: Day): string {
  return `${WEEKDAYS[weekday(day)]} ${Number(day.slice(8))} ${monthName(day)} ${day.slice(0, 4)}`;
}

/** `1 Dec 2026`. */
export function sayDayShort(day: Day): string {
  return `${Number(day.slice(8))} ${monthName(day)} ${day.slice(0, 4)}`;
}

/** `today`, `in 6 days`, `3 days ago`. */
export function sayDistance(from: Day, to: Day): string {
  const days = daysBetween(from, to);
  if (days === 0) return 'today';
  const count = `${Math.abs(days)} ${Math.abs(days) === 1 ? 'day' : 'days'}`;
  return days > 0 ? `in ${count}` : `${count} ago`;
}

/** 0 is Monday (ISO 8601 counts it as 1). */
export function weekday(day: Day): number {
  return (((dayNumber(day) + 3) % 7) + 7) % 7;
}

function monthName(day: Day): string {
  return MONTHS[Number(day.slice(5, 7)) - 1] ?? '';
}

function pad(value: number, width: number): string {
  return String(value).padStart(width, '0');
}
