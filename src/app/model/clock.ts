import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { addDays, type Day, daysBetween, parseDay } from '../../core/index.ts';

/** The app's only look at the time. Everything below it gets the day and the milliseconds as values. */
export interface Clock {
  readonly today: ReadonlySignal<Day>;
  /** The site’s time zone, by its IANA name. */
  readonly timeZone: ReadonlySignal<string>;
  nowMs(): number;
  /** The instant of something that happened on that day: now if it is today, else noon of it. */
  instantOn(day: Day): string;
  setTimeZone(timeZone: string): void;
  /** Lets the demo stand on its own day; null goes back to the real one. */
  standOn(day: Day | null): void;
  /** Looks at the time again; called each minute and when the page comes back. */
  look(): void;
}

const DAY_MS = 86_400_000;

export function createClock(wallMs: () => number = Date.now): Clock {
  const timeZone = signal('UTC');
  const shiftDays = signal(0);
  const wall = signal(wallMs());
  const today = computed(() => dayIn(timeZone.value, wall.value + shiftDays.value * DAY_MS));
  const nowMs = (): number => wallMs() + shiftDays.value * DAY_MS;
  return {
    today,
    timeZone,
    nowMs,
    instantOn: (day) => (day === today.value ? new Date(nowMs()).toISOString() : `${day}T12:00:00Z`),
    setTimeZone: (zone) => {
      timeZone.value = isTimeZone(zone) ? zone : 'UTC';
    },
    standOn: (day) => {
      shiftDays.value = day === null ? 0 : daysBetween(dayIn(timeZone.value, wallMs()), day);
    },
    look: () => {
      wall.value = wallMs();
    },
  };
}

function dayIn(timeZone: string, ms: number): Day {
  const parts = new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  const read = parseDay(parts.format(ms));
  return read.ok ? read.value : addDays('1970-01-01' as Day, Math.floor(ms / DAY_MS));
}

function isTimeZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }) !== null;
  } catch {
    return false;
  }
}
