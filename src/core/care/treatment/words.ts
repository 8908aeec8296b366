import { type Day, sayDay } from '../../days.ts';
import type { Payload } from '../../events/index.ts';
import { sayGrams } from '../../units.ts';
import type { Strength } from './amount.ts';
import { FLUIDS_ML_PER_KG, fluidsPerDay } from './fluids.ts';
import { type Drawn, sayMl } from './syringe.ts';

type Written = Payload<'prescription-written'>;

/** `5 mg per kg, at 10 mg per mL`; `0.3 mL each time`: how much, as the vet wrote it. */
export function sayAmount({ amount }: Written): string {
  switch (amount.by) {
    case 'mass':
      return `${amount.dose.mgPerKg} mg per kg, at ${sayStrength(amount.strength)}`;
    case 'volume': {
      const at = amount.strength === undefined ? '' : `, at ${sayStrength(amount.strength)}`;
      return `${sayMl(amount.ml)} each time${at}`;
    }
    default:
      return amount satisfies never;
  }
}

/** The strength in the unit in which the bottle gives it. */
function sayStrength({ mgPerMl, percentWv }: Strength): string {
  return percentWv === undefined ? `${mgPerMl} mg per mL` : `${percentWv} % w/v`;
}

/** `every 12 hours`, `every 48 hours (2 days)`. */
export function sayEvery({ everyHours }: Pick<Written, 'everyHours'>): string {
  if (everyHours === 1) return 'every hour';
  const days = everyHours / 24;
  if (!Number.isInteger(days)) return `every ${everyHours} hours`;
  return `every ${everyHours} hours (${days === 1 ? 'once a day' : `${days} days`})`;
}

/** `3 doses`, `until Fri 13 Mar 2026`, or both. */
export function sayCourse({ count, endsOn }: Pick<Written, 'count' | 'endsOn'>): string {
  const doses = count === undefined ? [] : [`${count} ${count === 1 ? 'dose' : 'doses'}`];
  return [...doses, ...(endsOn === undefined ? [] : [`until ${sayDay(endsOn as Day)}`])].join(', ');
}

/** The dose as the vet wrote it, on one line. */
export function sayWritten(written: Written): string {
  return `${sayAmount(written)}, ${written.route}, ${sayEvery(written)}, ${sayCourse(written)}`;
}

/** The days that stand on the paper beside the course, each as its own words. */
export function sayPaperDays({ validUntil, drugExpiresOn, recheckOn }: Written): readonly string[] {
  return [
    ...(validUntil === undefined ? [] : [`paper valid until ${sayDay(validUntil as Day)}`]),
    ...(drugExpiresOn === undefined ? [] : [`drug expires ${sayDay(drugExpiresOn as Day)}`]),
    ...(recheckOn === undefined ? [] : [`recheck ${sayDay(recheckOn as Day)}`]),
  ];
}

/** `0.44 % less than exact`: what the mark of the syringe changes. */
export function sayDifference({ differencePercent }: Pick<Drawn, 'differencePercent'>): string {
  const share = Number(Math.abs(differencePercent).toFixed(2));
  if (share === 0) return 'exactly on the mark';
  return `${share} % ${differencePercent > 0 ? 'more' : 'less'} than exact`;
}

/** `1 mL syringe, one mark is 0.01 mL`. */
export function saySyringe({ syringeMl, markMl }: Pick<Drawn, 'syringeMl' | 'markMl'>): string {
  return `${sayMl(syringeMl)} syringe, one mark is ${sayMl(markMl)}`;
}

/** `1, 3 and 5 mL`: which syringes are at hand. */
export function saySyringes(sizesMl: readonly number[]): string {
  const sorted = [...sizesMl].sort((a, b) => a - b);
  const [last] = sorted.slice(-1);
  if (last === undefined) return 'none';
  return sorted.length === 1 ? `${last} mL` : `${sorted.slice(0, -1).join(', ')} and ${last} mL`;
}

/**
 * `Fluids, to compare with: 5–15 mL a day for 500 g (10–30 mL per kg and day, S: LafeberVet)`; the range alone, since whether, what
 * and how much is the vet’s. Empty for a weight that cannot be.
 */
export function sayFluids(massG: number): string {
  const fluids = fluidsPerDay(massG);
  if (!fluids.ok) return '';
  const [low, high] = fluids.value.ml;
  const range = FLUIDS_ML_PER_KG.join('–');
  return `Fluids, to compare with: ${low}–${sayMl(high)} a day for ${sayGrams(massG)} (${range} mL per kg and day, ${fluids.value.mark}: LafeberVet).`;
}

/** `as written, 21 mL a day`: what a volume comes to in a day, where it is given daily or more often. */
export function sayDaily(ml: number, everyHours: number): string | null {
  return everyHours > 24 ? null : `As written: ${sayMl((ml * 24) / everyHours)} a day.`;
}
