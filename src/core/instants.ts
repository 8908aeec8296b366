import { type Day, dayFromNumber, dayNumber, isDay } from './days.ts';

const DAY_MS = 86_400_000;
const SECOND_MS = 1000;

/** The milliseconds since 1970 of an RFC 3339 instant in UTC; core has no clock, so they are worked out from the text. */
export function instantMs(at: string, day: Day): number {
  const date = at.slice(0, 10);
  const [hours = 0, minutes = 0, seconds = 0] = at.slice(11, 19).split(':').map(Number);
  const days = dayNumber(isDay(date) ? date : day);
  return days * DAY_MS + ((hours * 60 + minutes) * 60 + seconds) * SECOND_MS;
}

/** The RFC 3339 instant in UTC of milliseconds since 1970, to the second; its inverse is {@link instantMs}. */
export function instantOf(ms: number): string {
  const days = Math.floor(ms / DAY_MS);
  const second = Math.floor((ms - days * DAY_MS) / SECOND_MS);
  const [hours, minutes, seconds] = [Math.floor(second / 3600), Math.floor(second / 60) % 60, second % 60];
  return `${dayFromNumber(days)}T${two(hours)}:${two(minutes)}:${two(seconds)}Z`;
}

/** The instant that stands for a whole day where nobody said the hour: noon of it in UTC. */
export function noonOf(day: Day): number {
  return dayNumber(day) * DAY_MS + DAY_MS / 2;
}

function two(number: number): string {
  return String(number).padStart(2, '0');
}
