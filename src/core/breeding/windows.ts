import { addDays, type Day, daysBetween } from '../days.ts';
import type { Step } from './calendar.ts';

/** When the next milestone is to be expected, and from what: the species' range, the site's own dates and hers. */
export interface Window {
  readonly step: Step;
  readonly from: Day;
  readonly to: Day;
  readonly days: readonly [number, number];
  /** How many of the site's own spans went into it, hers included. */
  readonly siteSpans: number;
  readonly herSpans: readonly number[];
}

/** Rule BREED-WINDOW: the species' range counts as so many dates against the site's own. */
export const PRIOR_DATES = 4;
/** The site's range counts as so many dates against her own. */
export const SITE_DATES = 2;
/** A range is taken as two standard deviations to either side of its middle. */
const DEVIATIONS = 2;
/** Nobody looks more often than once a day, so no window is narrower than a day to either side. */
const LEAST_HALF_DAYS = 1;

interface Spread {
  readonly mean: number;
  readonly variance: number;
}

/**
 * Narrows a step's range by own dates: the species' middle and spread count as {@link PRIOR_DATES} dates, the other
 * females' spans are added to them, and the outcome counts as {@link SITE_DATES} dates against her own. So a site with few
 * dates stays near the published range, and a female with many has her own window (partial pooling, as in any textbook
 * of hierarchical models). Spans in days; those beyond three times the range are writing mistakes and left out.
 */
export function narrowed(
  step: Step,
  siteSpans: readonly number[],
  herSpans: readonly number[],
): readonly [number, number] {
  const prior = spreadOf(step);
  const sound = (span: number): boolean => span > 0 && span <= 3 * step.days[1];
  const site = pooled(prior, PRIOR_DATES, siteSpans.filter(sound));
  const hers = pooled(site, SITE_DATES, herSpans.filter(sound));
  const half = Math.max(LEAST_HALF_DAYS, DEVIATIONS * Math.sqrt(hers.variance));
  return [Math.max(1, Math.round(hers.mean - half)), Math.round(hers.mean + half)];
}

/** The window of a step that began on a day. */
export function windowOf(step: Step, began: Day, siteSpans: readonly number[], herSpans: readonly number[]): Window {
  const days = narrowed(step, siteSpans, herSpans);
  return {
    step,
    from: addDays(began, days[0]),
    to: addDays(began, days[1]),
    days,
    siteSpans: siteSpans.length + herSpans.length,
    herSpans,
  };
}

/** `usually 28–32 d, hers 30, 31`: where a window comes from. */
export function sayWindow({ step, days, siteSpans, herSpans }: Window): string {
  const usually = `usually ${step.days[0]}–${step.days[1]} d${step.weak ? ' (weak)' : ''}`;
  const hers = herSpans.length === 0 ? '' : `, hers ${herSpans.join(', ')}`;
  const others = siteSpans - herSpans.length;
  const here = others === 0 ? '' : `, here ${others} more ${others === 1 ? 'date' : 'dates'}`;
  return `${usually}${hers}${here}: taken as ${days[0]}–${days[1]} d`;
}

/** Days between two milestones, or null if the second did not follow. */
export function spanBetween(from: Day | null, to: Day | null): number | null {
  if (from === null || to === null) return null;
  const days = daysBetween(from, to);
  return days > 0 ? days : null;
}

function spreadOf({ days: [low, high] }: Step): Spread {
  const deviation = (high - low) / (2 * DEVIATIONS);
  return { mean: (low + high) / 2, variance: deviation * deviation };
}

/** A prior worth `weight` dates together with dates that were seen. */
function pooled(prior: Spread, weight: number, seen: readonly number[]): Spread {
  if (seen.length === 0) return prior;
  const count = weight + seen.length;
  const mean = (weight * prior.mean + seen.reduce((sum, one) => sum + one, 0)) / count;
  const off = (value: number): number => (value - mean) * (value - mean);
  // How far the prior lies off is in the middle already; counted here again it would keep every window wide.
  const squares = weight * prior.variance + seen.reduce((sum, one) => sum + off(one), 0);
  return { mean, variance: squares / count };
}
