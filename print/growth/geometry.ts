import { scaleLinear, scaleUtc } from 'd3-scale';
import {
  addDays,
  type Day,
  dayNumber,
  daysBetween,
  type GrowthPlot,
  laterDay,
  type PlottedFeed,
  type PlottedMark,
  sayGrams,
  type Weighing,
} from '../../src/core/index.ts';

/** The field that a plot is drawn in, in any unit; y grows downwards from its top left corner. */
export interface PlotRoom {
  readonly width: number;
  readonly height: number;
  /** Left of the weights, for their axis; and what stays free at the right edge. */
  readonly axis: number;
  readonly edge: number;
  /** Above the weights for marks, below them for the feeds, and below those for the days. */
  readonly marks: number;
  readonly feeds: number;
  readonly foot: number;
  /** The least room of one tick’s words along the days, and along the weights. */
  readonly dayWords: number;
  readonly weightWords: number;
}

/** A place in the field. */
export interface PlotPoint {
  readonly x: number;
  readonly y: number;
}

/** Something to be drawn at a day. */
export interface AtDay<T> {
  readonly x: number;
  readonly of: T;
}

/** A peak with its line of the review, drawn as far as they are compared with. */
export interface PeakLine extends PlotPoint {
  readonly toX: number;
  readonly lineY: number;
  readonly of: Weighing;
  readonly tenPercentG: number;
}

/** A feed as a bar that stands on the feeds’ ground line. */
export interface FeedBar extends AtDay<PlottedFeed> {
  readonly height: number;
  readonly width: number;
}

/** A growth plot laid out: what stands where; how it looks is for screen and paper to say. */
export interface GrowthPicture {
  readonly left: number;
  readonly right: number;
  /** The weights’ part, and the ground line of the feeds. */
  readonly top: number;
  readonly bottom: number;
  readonly ground: number;
  readonly weightTicks: readonly { readonly y: number; readonly words: string }[];
  readonly dayTicks: readonly { readonly x: number; readonly words: string }[];
  readonly runs: readonly (readonly PlotPoint[])[];
  readonly dots: readonly (PlotPoint & { readonly of: Weighing })[];
  readonly peaks: readonly PeakLine[];
  readonly feeds: readonly FeedBar[];
  readonly sheds: readonly AtDay<Day>[];
  readonly layings: readonly AtDay<PlottedMark>[];
  readonly treatments: readonly AtDay<PlottedMark>[];
  /** The grams of the highest bar; null where nobody wrote any. */
  readonly mostFeedG: number | null;
}

const DAY_MS = 86_400_000;
/** The weights’ axis covers at least this share of the heaviest, or a few grams would look like a fall. */
const LEAST_SPAN = 0.25;
/** A feed without grams is drawn this high, so that it is seen. */
const UNWEIGHED = 0.3;
const LEAST_BAR = 0.12;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** Lays a plot out between two days. The scales are the same for screen and paper. */
export function growthPicture(plot: GrowthPlot, [from, on]: readonly [Day, Day], room: PlotRoom): GrowthPicture {
  const [left, right] = [room.axis, room.width - room.edge];
  const [top, ground] = [room.marks, room.height - room.foot];
  const bottom = ground - room.feeds;
  const days = scaleUtc([midday(from) - DAY_MS / 2, midday(on) + DAY_MS / 2], [left, right]);
  const x = (day: Day): number => days(Math.max(midday(day), midday(from)));
  const count = Math.max(2, Math.floor((bottom - top) / room.weightWords));
  const weights = scaleLinear(weightSpan(plot), [bottom, top]).nice(count);
  const at = ({ day, weightG }: Weighing): PlotPoint => ({ x: x(day), y: weights(weightG) });
  const dated = <T extends { readonly day: Day }>(all: readonly T[]) => all.map((of) => ({ x: x(of.day), of }));
  const tickCount = Math.max(2, Math.floor((right - left) / room.dayWords));
  return {
    ...{ left, right, top, bottom, ground },
    weightTicks: weights.ticks(count).map((g) => ({ y: weights(g), words: sayGrams(g) })),
    dayTicks: days.ticks(tickCount).map((date, at) => ({ x: days(date), words: tickWords(date, at === 0) })),
    runs: plot.runs.map((run) => run.map(at)),
    dots: plot.weights.map((of) => ({ ...at(of), of })),
    peaks: plot.stretches.map(({ to, peak, tenPercentG }) => ({
      ...at(peak),
      toX: to === null ? right : x(to),
      lineY: weights(tenPercentG),
      of: peak,
      tenPercentG,
    })),
    ...feedBars(plot.feeds, x, { most: room.feeds * 0.92, width: barWidth(right - left, daysBetween(from, on)) }),
    sheds: plot.sheds.map((of) => ({ x: x(of), of })),
    layings: dated(plot.layings),
    treatments: dated(plot.treatments),
  };
}

/** The first day worth drawing: that day, or the first thing that happened after it; a plot of a few days is all edge. */
export function firstDayOf({ weights, feeds, sheds, layings, treatments }: GrowthPlot, from: Day, on: Day): Day {
  const all = [...weights, ...feeds, ...layings, ...treatments].map(({ day }) => day).concat(sheds);
  const [first = on] = [...all, addDays(on, -LEAST_DAYS)].sort();
  return laterDay(first, from);
}

const LEAST_DAYS = 60;

function feedBars(
  feeds: readonly PlottedFeed[],
  x: (day: Day) => number,
  { most, width }: { readonly most: number; readonly width: number },
): Pick<GrowthPicture, 'feeds' | 'mostFeedG'> {
  const mostG = Math.max(0, ...feeds.map(({ grams }) => grams ?? 0));
  const height = scaleLinear([0, mostG === 0 ? 1 : mostG], [0, most]);
  const highOf = (grams: number | null): number =>
    grams === null ? UNWEIGHED * most : Math.max(height(grams), LEAST_BAR * most);
  const bars = feeds.map((of) => ({ x: x(of.day), of, width, height: highOf(of.grams) }));
  return { feeds: bars, mostFeedG: mostG === 0 ? null : mostG };
}

/** Bars of meals a week apart do not touch, and no bar is too thin to see or so wide that it looks like days. */
function barWidth(width: number, days: number): number {
  const week = (7 * width) / Math.max(days, 1);
  return Math.min(Math.max(week * 0.5, width / 300), width / 60);
}

function weightSpan({ weights, stretches }: GrowthPlot): [number, number] {
  const all = [
    ...weights.map(({ weightG }) => weightG),
    ...stretches.flatMap(({ peak, tenPercentG }) => [peak.weightG, tenPercentG]),
  ];
  if (all.length === 0) return [0, 100];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const least = Math.min(low, high * (1 - LEAST_SPAN));
  const margin = (high - least) * 0.06;
  return [Math.max(0, least - margin), high + margin];
}

/** `2026` at a new year, else the month, else the day; the first one says its year too. */
function tickWords(date: Date, isFirst: boolean): string {
  const [year = '', month = '', day = ''] = date.toISOString().slice(0, 10).split('-');
  const name = MONTHS[Number(month) - 1] ?? '';
  if (day === '01' && month === '01') return year;
  const words = day === '01' ? name : `${Number(day)} ${name}`;
  return isFirst ? `${words} ${year}` : words;
}

function midday(day: Day): number {
  return dayNumber(day) * DAY_MS + DAY_MS / 2;
}
