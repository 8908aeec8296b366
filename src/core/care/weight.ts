import { type AnimalRecord, KEPT_OFFERS, lastWeight } from '../animal/index.ts';
import { type Day, daysBetween, sayDayShort } from '../days.ts';
import { type Problem, problem } from '../problems.ts';
import { roundTo, sayGrams } from '../units.ts';
import { speciesOf } from './species.ts';

/** Rule CARE-ENTRY: a gain above the food since the last weighing plus 5 % of the last mass is asked about (D: flags one of 77 pairs of an open log). */
export const ENTRY_MARGIN = 0.05;
/** Rule CARE-LOSS: note, review and urgent, in percent since the last reset (S 10 and 20; C 5 and 15). */
export const LOSS_PERCENT = { note: 5, review: 10, urgent: 15 } as const;
/** Below this share of the last weight a figure was likely mistyped (common practice, no source). */
const LEAST_SHARE = 0.5;

/** How a weight stands against the highest since the last reset. */
export interface Loss {
  readonly level: 'none' | 'note' | 'review' | 'urgent';
  readonly percent: number;
  /** Loses more than twice what a fasting animal of its species loses; null where that is not known. */
  readonly rapid: boolean | null;
  readonly words: string;
}

/** Rule CARE-ENTRY: asks about a weighing that food cannot explain, or that is less than half of the last; null if all is well. */
export function checkWeighing(animal: AnimalRecord, weightG: number, day: Day): Problem | null {
  const last = lastWeight(animal);
  if (last === null || day < last.day) return null;
  const gain = weightG - last.weightG;
  const food = foodSince(animal, last.day);
  const explained = food === null || gain <= food + ENTRY_MARGIN * last.weightG;
  const likely = explained && (weightG >= LEAST_SHARE * last.weightG || laidSince(animal, last.day));
  const times = roundTo(weightG / last.weightG, 2);
  return likely ? null : problem('weight-unlikely', { weight: sayGrams(weightG), times, last: sayGrams(last.weightG) });
}

/** Rule CARE-LOSS: the loss since the last reset; laying is a reset, so it never raises an alarm (CARE-LAYING). */
export function lossSinceReset(animal: AnimalRecord): Loss {
  const [now, peak] = [lastWeight(animal), animal.peak];
  if (now === null || peak === null || now.weightG >= peak.weightG)
    return { level: 'none', percent: 0, rapid: null, words: 'no loss' };
  const percent = roundTo((100 * (peak.weightG - now.weightG)) / peak.weightG, 1);
  const rapid = isRapid(animal, peak.weightG, now.weightG, daysBetween(peak.day, now.day));
  const level =
    percent >= LOSS_PERCENT.urgent
      ? 'urgent'
      : percent >= LOSS_PERCENT.review
        ? 'review'
        : percent >= LOSS_PERCENT.note
          ? 'note'
          : 'none';
  return { level, percent, rapid, words: lossWords(level, percent, peak.day, rapid) };
}

/** `+12 g since 3 May 2026`: the change against the weighing before; null for the first. */
export function sayChange(animal: AnimalRecord): string | null {
  const [before, now] = animal.weights.slice(-2);
  if (before === undefined || now === undefined) return null;
  const change = now.weightG - before.weightG;
  return `${change < 0 ? '−' : '+'}${sayGrams(Math.abs(change))} since ${sayDayShort(before.day)}`;
}

/** Compound loss in percent a day. Source of the formula: McCue 2007 as 18.3 % in 168 days = 0.1202 %/day. */
export function lossPercentPerDay(fromG: number, toG: number, days: number): number {
  return days <= 0 || fromG <= 0 ? 0 : 100 * (1 - (toG / fromG) ** (1 / days));
}

function isRapid(animal: AnimalRecord, fromG: number, toG: number, days: number): boolean | null {
  const expected = speciesOf(animal.species)?.fastingLossPercentPerDay;
  return expected ? lossPercentPerDay(fromG, toG, Math.max(days, 1)) > 2 * expected.adult : null;
}

function lossWords(level: Loss['level'], percent: number, since: Day, rapid: boolean | null): string {
  const down = `down ${percent} % since ${sayDayShort(since)}${rapid ? ', faster than a fast explains' : ''}`;
  if (level === 'none') return down;
  if (level === 'note') return `${down}: keep an eye on it`;
  const urgent = level === 'urgent' ? ' without delay' : '';
  return `${down}: weigh again empty; if it stands, speak to a reptile vet${urgent}`;
}

/** Grams taken since that day; null where the offers that are kept do not reach back to it. */
function foodSince(animal: AnimalRecord, since: Day): number | null {
  const [oldest] = animal.offers;
  if (animal.offers.length >= KEPT_OFFERS && oldest !== undefined && oldest.day > since) return null;
  return animal.offers
    .filter((offer) => offer.taken && offer.day >= since)
    .reduce((sum, offer) => sum + (offer.totalG ?? 0), 0);
}

function laidSince(animal: AnimalRecord, since: Day): boolean {
  return animal.laidOn !== null && animal.laidOn >= since;
}
