import type { AnimalRecord, Weighing } from '../animal/index.ts';
import { type Day, daysBetween } from '../days.ts';
import { standing } from '../events/effective.ts';
import type { LogEvent, SiteEvent } from '../events/index.ts';
import { gramsOfPrey } from '../stock/index.ts';
import { speciesOf, weighEveryDays } from './species.ts';
import { LOSS_PERCENT } from './weight.ts';

/** Rule CARE-GAP: two weighings further apart than so many weighing intervals (CARE-WEIGH) are not joined on the plot (common practice, no source). */
export const GAP_INTERVALS = 2;

/** A meal that was offered; `grams` is null where nobody wrote them and the prey is not in the list. */
export interface PlottedFeed {
  readonly day: Day;
  readonly grams: number | null;
  readonly taken: boolean;
}

/** Something that stands on the plot by its day, with its words. */
export interface PlottedMark {
  readonly day: Day;
  readonly words: string;
}

/** Days between two weighings that are too many to be joined, and how many would have been joined. */
export interface WeightGap {
  readonly from: Day;
  readonly to: Day;
  readonly days: number;
  readonly mostDays: number;
}

/** Weighings that are compared with each other: from the first one, or a laying, to the next laying. */
export interface WeightStretch {
  readonly from: Day;
  /** The laying that ended it; null while it lasts. */
  readonly to: Day | null;
  readonly peak: Weighing;
  /** The line of the review: the peak less 10 % (CARE-LOSS). */
  readonly tenPercentG: number;
}

/** An animal’s growth from its whole history, oldest first; nothing in it is guessed. */
export interface GrowthPlot {
  readonly weights: readonly Weighing[];
  /** The weighings that a line joins, run by run; a lone one is a run by itself. */
  readonly runs: readonly (readonly Weighing[])[];
  readonly gaps: readonly WeightGap[];
  readonly feeds: readonly PlottedFeed[];
  readonly sheds: readonly Day[];
  readonly layings: readonly PlottedMark[];
  /** Prescriptions, their doses and ends, and the vet’s words. */
  readonly treatments: readonly PlottedMark[];
  readonly stretches: readonly WeightStretch[];
  /** The highest weight since the last reset, as in the animal’s record. */
  readonly peak: Weighing | null;
  /** The peak less 10 %, from the day of the peak on. */
  readonly tenPercentLine: { readonly from: Day; readonly weightG: number } | null;
}

interface Draft {
  readonly species: string;
  readonly weights: Weighing[];
  readonly runs: Weighing[][];
  readonly gaps: WeightGap[];
  readonly feeds: PlottedFeed[];
  readonly sheds: Day[];
  readonly layings: PlottedMark[];
  readonly treatments: PlottedMark[];
  readonly stretches: { from: Day; to: Day | null; peak: Weighing }[];
  readonly drugs: Map<string, string>;
  isReset: boolean;
}

/**
 * The growth of an animal up to a day, from its whole history in any order: a record keeps the last weighings only.
 * A line joins weighings that lie at most {@link GAP_INTERVALS} weighing intervals apart and on the same side of a laying.
 */
export function growthPlot(
  animal: Pick<AnimalRecord, 'id' | 'species'>,
  history: readonly LogEvent[],
  on: Day,
): GrowthPlot {
  const draft = emptyDraft(animal.species);
  for (const event of standing(history.filter(({ day }) => day <= on)))
    if (event.subjects[0] === animal.id) take(draft, event);
  const { weights, runs, gaps, feeds, sheds, layings, treatments } = draft;
  const stretches = draft.stretches.map((one) => ({ ...one, tenPercentG: tenPercentBelow(one.peak) }));
  const last = stretches.at(-1);
  const open = last !== undefined && last.to === null ? last : null;
  return {
    ...{ weights, runs, gaps, feeds, sheds, layings, treatments, stretches },
    peak: open?.peak ?? null,
    tenPercentLine: open === null ? null : { from: open.peak.day, weightG: open.tenPercentG },
  };
}

/** What of a plot lies in those days; lines, peaks and gaps keep the words they had. */
export function growthWithin(plot: GrowthPlot, from: Day): GrowthPlot {
  const since = <T extends { readonly day: Day }>(all: readonly T[]): readonly T[] =>
    all.filter(({ day }) => day >= from);
  return {
    ...plot,
    weights: since(plot.weights),
    runs: plot.runs.map(since).filter((run) => run.length > 0),
    gaps: plot.gaps.filter(({ to }) => to >= from),
    feeds: since(plot.feeds),
    sheds: plot.sheds.filter((day) => day >= from),
    layings: since(plot.layings),
    treatments: since(plot.treatments),
    stretches: plot.stretches.filter(({ to }) => to === null || to >= from),
  };
}

function take(draft: Draft, event: SiteEvent): void {
  const { day } = event;
  switch (event.kind) {
    case 'animal-weighed':
      addWeight(draft, {
        day,
        weightG: event.payload.weightG,
        ...(event.payload.confirmed === true && { doubted: true }),
      });
      return;
    case 'prey-offered': {
      const { prey, count, totalG, outcome } = event.payload;
      draft.feeds.push({ day, grams: totalG ?? gramsOfPrey(prey, count), taken: outcome === 'taken' });
      return;
    }
    case 'shed-seen':
      draft.sheds.push(day);
      return;
    case 'clutch-laid':
    case 'young-born':
      addLaying(draft, day, event.kind === 'clutch-laid' ? 'laid' : 'gave birth', event.payload.damG);
      return;
    default:
      takeTreatment(draft, event);
  }
}

function takeTreatment(draft: Draft, event: SiteEvent): void {
  const mark = (words: string): unknown => draft.treatments.push({ day: event.day, words });
  const drugOf = (prescription: string): string => draft.drugs.get(prescription) ?? 'on a prescription';
  if (event.kind === 'prescription-written') {
    draft.drugs.set(event.id, event.payload.drug);
    mark(`prescribed: ${event.payload.drug}`);
  } else if (event.kind === 'dose-given') mark(`dose: ${drugOf(event.payload.prescription)}`);
  else if (event.kind === 'prescription-stopped') mark(`stopped: ${drugOf(event.payload.prescription)}`);
  else if (event.kind === 'vet-cleared') mark('the vet’s word');
}

/** Laying takes a quarter to a third of her mass, so the line breaks and the peak begins anew (CARE-LAYING). */
function addLaying(draft: Draft, day: Day, words: string, damG: number | undefined): void {
  draft.layings.push({ day, words });
  const last = draft.stretches.at(-1);
  if (last !== undefined && last.to === null) last.to = day;
  draft.isReset = true;
  if (damG !== undefined) addWeight(draft, { day, weightG: damG });
}

function addWeight(draft: Draft, weighing: Weighing): void {
  const before = draft.weights.at(-1);
  const run = draft.runs.at(-1);
  const gap = before === undefined || draft.isReset ? null : gapBetween(draft.species, before, weighing);
  if (gap !== null) draft.gaps.push(gap);
  if (run === undefined || draft.isReset || gap !== null) draft.runs.push([weighing]);
  else run.push(weighing);
  draft.weights.push(weighing);
  const stretch = draft.stretches.at(-1);
  if (stretch === undefined || draft.isReset) draft.stretches.push({ from: weighing.day, to: null, peak: weighing });
  else if (weighing.weightG >= stretch.peak.weightG) stretch.peak = weighing;
  draft.isReset = false;
}

function gapBetween(species: string, before: Weighing, after: Weighing): WeightGap | null {
  const mostDays = GAP_INTERVALS * weighEveryDays(speciesOf(species), before.weightG);
  const days = daysBetween(before.day, after.day);
  return days > mostDays ? { from: before.day, to: after.day, days, mostDays } : null;
}

function tenPercentBelow(peak: Weighing): number {
  return (peak.weightG * (100 - LOSS_PERCENT.review)) / 100;
}

function emptyDraft(species: string): Draft {
  return {
    species,
    weights: [],
    runs: [],
    gaps: [],
    feeds: [],
    sheds: [],
    layings: [],
    treatments: [],
    stretches: [],
    drugs: new Map(),
    isReset: false,
  };
}
