import {
  addDays,
  type Day,
  daysBetween,
  daysInMonth,
  type FemaleSeason,
  type Id,
  laterDay,
  type Milestone,
} from '../../core/index.ts';
import type { Shape } from './words.ts';

/** A mark of a female's season; `at` in days from the left edge of the chart. */
export interface ChartMark {
  readonly shape: Shape;
  readonly day: Day;
  readonly at: number;
  readonly with: Id | null;
}

/** A window that is waited for, from the beginning of its first day to the end of its last. */
export interface ChartWindow {
  readonly what: Milestone;
  readonly from: Day;
  readonly to: Day;
  readonly at: number;
  readonly until: number;
  readonly lateDays: number;
}

/** Days that something went on: an incubation, or a male in her tub. */
export interface ChartSpan {
  readonly at: number;
  readonly until: number;
}

export interface ChartRow {
  readonly season: FemaleSeason;
  readonly marks: readonly ChartMark[];
  /** The nearest first. */
  readonly windows: readonly ChartWindow[];
  readonly incubation: ChartSpan | null;
  readonly together: readonly ChartSpan[];
}

export interface ChartMonth {
  readonly at: number;
  readonly days: number;
  readonly words: string;
  /** Said where a year begins, and at the left edge. */
  readonly year: string | null;
}

/** The board laid out over whole months; everything counts in days, and what a day measures is not said here. */
export interface SeasonChart {
  readonly from: Day;
  readonly days: number;
  readonly today: number;
  readonly months: readonly ChartMonth[];
  readonly rows: readonly ChartRow[];
}

/** A chart looks back so far at most: longer than any season is drawn too small to read. */
const MOST_DAYS_BACK = 270;
const MOST_DAYS_AHEAD = 300;
/** So far ahead it always goes, so that today never stands at its edge. */
const LEAST_DAYS_AHEAD = 40;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** Lays the board out, a row each in its order. Marks that lie before the chart are left out; the record has them. */
export function chartOf(board: readonly FemaleSeason[], today: Day): SeasonChart {
  const [from, end] = edgesOf(board, today);
  const at = (day: Day): number => daysBetween(from, day);
  return {
    from,
    days: daysBetween(from, end),
    today: at(today) + HALF_DAY,
    months: monthsFrom(from, end),
    rows: board.map((season) => rowOf(season, { today, at, end: daysBetween(from, end) })),
  };
}

/** A mark stands in the middle of its day. */
const HALF_DAY = 0.5;

interface Scale {
  readonly today: Day;
  readonly end: number;
  at(day: Day): number;
}

function rowOf(season: FemaleSeason, { today, at, end }: Scale): ChartRow {
  const { clutch, marks, next, animal } = season;
  const hatched = clutch?.bears === 'eggs' ? clutch.hatchedOn : null;
  const all = [
    ...marks.map(({ kind, day, with: mate }) => ({ shape: kind as Shape, day, with: mate })),
    ...(hatched === null ? [] : [{ shape: 'hatched' as const, day: hatched, with: null }]),
  ];
  const within = (day: Day): number => Math.min(Math.max(at(day) + HALF_DAY, 0), end);
  return {
    season,
    marks: all.filter(({ day }) => at(day) >= 0).map((one) => ({ ...one, at: at(one.day) + HALF_DAY })),
    windows: next.map(({ step, from, to }) => ({
      what: step.to,
      from,
      to,
      at: Math.max(0, at(from)),
      until: Math.min(end, at(to) + 1),
      lateDays: Math.max(0, daysBetween(to, today)),
    })),
    incubation:
      clutch === null || clutch.bears !== 'eggs' || clutch.eggs === 0
        ? null
        : { at: within(clutch.laidOn), until: within(hatched ?? today) },
    together: animal.together.map(({ since }) => ({ at: within(since), until: within(today) })),
  };
}

function edgesOf(board: readonly FemaleSeason[], today: Day): readonly [Day, Day] {
  const marks = board.flatMap((one) => [...one.marks.map(({ day }) => day), one.clutch?.laidOn ?? today]);
  const ends = board.flatMap((one) => one.next.map(({ to }) => to));
  const first = least([today, ...marks]);
  const last = most([addDays(today, LEAST_DAYS_AHEAD), ...ends]);
  const from = most([first, addDays(today, -MOST_DAYS_BACK)]);
  const to = least([last, addDays(today, MOST_DAYS_AHEAD)]);
  return [firstOfMonth(from), addDays(firstOfMonth(to), monthDays(to))];
}

function monthsFrom(from: Day, end: Day): readonly ChartMonth[] {
  const months: ChartMonth[] = [];
  for (let day = from; day < end; day = addDays(day, monthDays(day))) {
    const month = Number(day.slice(5, 7));
    const isNamed = months.length === 0 || month === 1;
    months.push({
      at: daysBetween(from, day),
      days: monthDays(day),
      words: MONTHS[month - 1] ?? '',
      year: isNamed ? day.slice(0, 4) : null,
    });
  }
  return months;
}

function firstOfMonth(day: Day): Day {
  return addDays(day, 1 - Number(day.slice(8)));
}

function monthDays(day: Day): number {
  return daysInMonth(Number(day.slice(0, 4)), Number(day.slice(5, 7)));
}

function least(days: readonly Day[]): Day {
  return days.reduce((a, b) => (laterDay(a, b) === a ? b : a));
}

function most(days: readonly Day[]): Day {
  return days.reduce(laterDay);
}
