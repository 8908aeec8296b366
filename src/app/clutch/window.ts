import {
  breedingOf,
  type ClutchRecord,
  type Day,
  daysBetween,
  type Facility,
  sayDay,
  sayWindow,
  siteSpans,
  type Window,
  windowOf,
} from '../../core/index.ts';

/** When a clutch is expected to hatch; null where nobody says how long its species takes, or where it has hatched. */
export function hatchWindow(facility: Facility, clutch: ClutchRecord): Window | null {
  if (clutch.bears === 'live young' || clutch.hatchedOn !== null) return null;
  const species = facility.animals.get(clutch.dam)?.species ?? '';
  const step = breedingOf(species)?.steps.find((one) => one.from === 'laid' && one.to === 'hatched');
  if (step === undefined) return null;
  const spans = siteSpans(facility)(species, step);
  const others = [...spans].flatMap(([female, days]) => (female === clutch.dam ? [] : days));
  return windowOf(step, clutch.laidOn, others, spans.get(clutch.dam) ?? []);
}

/** The reasons behind a window: its range, the dates that narrowed it, its mark and source. */
export function whyWindow(window: Window): readonly string[] {
  const { from, to, mark, source } = window.step;
  return [
    `${capital(to)} after ${from === 'lock' ? 'the last lock' : from}: ${sayWindow(window)}.`,
    `${mark}: ${source}.`,
  ];
}

/** `in 6 to 11 days`, `now, 3 days left`, `2 days past its end`. */
export function sayAhead({ from, to }: Pick<Window, 'from' | 'to'>, today: Day): string {
  const [first, last] = [daysBetween(today, from), daysBetween(today, to)];
  if (last < 0) return `${days(-last)} past its end`;
  if (first <= 0) return last === 0 ? 'now, today is its last day' : `now, ${days(last)} left`;
  return first === last ? `in ${days(first)}` : `in ${first} to ${days(last)}`;
}

/** `Tue 1 – Sun 6 Dec`, with the month and the year only where they differ or are others than today’s. */
export function sayRange({ from, to }: Pick<Window, 'from' | 'to'>, today: Day): string {
  const year = from.slice(0, 4) === to.slice(0, 4) && to.slice(0, 4) === today.slice(0, 4) ? / \d{4}$/ : /$^/;
  const last = sayDay(to).replace(year, '');
  if (from === to) return last;
  const first = sayDay(from).replace(year, '');
  return `${from.slice(0, 7) === to.slice(0, 7) ? first.split(' ').slice(0, 2).join(' ') : first} – ${last}`;
}

function days(count: number): string {
  return count === 1 ? '1 day' : `${count} days`;
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
