import { type Day, dayNumber, daysBetween, isDay, sayDay } from '../../core/index.ts';

/** The moment at which treatments are looked at, on the site’s own clock. */
export interface Now {
  readonly today: Day;
  readonly nowMs: number;
  /** The site’s IANA time zone. */
  readonly timeZone: string;
  /** How far the site’s clock is ahead of UTC. */
  readonly aheadMs: number;
}

/** A day and `14:05` on the site’s clock. */
export interface SiteTime {
  readonly day: Day;
  readonly clock: string;
}

const MINUTE_MS = 60_000;
const DAY_MS = 1440 * MINUTE_MS;

/** The site’s day and clock at a moment, in milliseconds since 1970. */
export function siteTime(ms: number, timeZone: string): SiteTime {
  // The Swedish form is ISO 8601 with a blank: 2026-03-09 14:05.
  const text = new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'short' }).format(ms);
  const day = text.slice(0, 10);
  return { day: isDay(day) ? day : ('1970-01-01' as Day), clock: text.slice(11, 16) };
}

/** How far the site’s clock is ahead of UTC at a moment, to the minute. */
export function aheadOfUtcMs(ms: number, timeZone: string): number {
  const { day, clock } = siteTime(ms, timeZone);
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  const local = dayNumber(day) * DAY_MS + (hours * 60 + minutes) * MINUTE_MS;
  return local - Math.floor(ms / MINUTE_MS) * MINUTE_MS;
}

/** The moment of `14:05` on a day of the site’s clock, in milliseconds since 1970; null for what is no time. */
export function atSiteTime(day: Day, clock: string, timeZone: string): number | null {
  const found = /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(clock.trim());
  if (found === null) return null;
  const local = dayNumber(day) * DAY_MS + (Number(found[1]) * 60 + Number(found[2])) * MINUTE_MS;
  // The clock’s lead is asked for twice: the first answer may lie on the other side of a change of the clocks.
  const guess = local - aheadOfUtcMs(local, timeZone);
  return local - aheadOfUtcMs(guess, timeZone);
}

/** `today 14:05`, `tomorrow 08:00`, `Fri 13 Mar 08:00`: a moment on the site’s clock. */
export function sayMoment(ms: number, { today, timeZone }: Now): string {
  const { day, clock } = siteTime(ms, timeZone);
  return `${sayNear(day, today)} ${clock}`;
}

/** `in 2 h`, `40 min ago`, `in 3 days`: how far off a moment is. */
export function sayAway(ms: number, { nowMs }: Now): string {
  const minutes = Math.round(Math.abs(ms - nowMs) / MINUTE_MS);
  if (minutes === 0) return 'now';
  const hours = Math.round(minutes / 60);
  const away = minutes < 90 ? `${minutes} min` : hours < 48 ? `${hours} h` : `${Math.round(hours / 24)} days`;
  return ms > nowMs ? `in ${away}` : `${away} ago`;
}

/** `today`, `tomorrow`, `yesterday`, else `Fri 13 Mar`, with the year where it is another one. */
export function sayNear(day: Day, today: Day): string {
  const near = { '-1': 'yesterday', '0': 'today', '1': 'tomorrow' }[String(daysBetween(today, day))];
  if (near !== undefined) return near;
  return day.slice(0, 4) === today.slice(0, 4) ? sayDay(day).replace(/ \d{4}$/, '') : sayDay(day);
}
