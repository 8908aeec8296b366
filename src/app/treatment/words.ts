import { type Day, type Drawn, type Payload, type Strength, sayDay, sayMl } from '../../core/index.ts';

type Written = Payload<'prescription-written'>;

/** `5 mg per kg, at 10 mg per mL`; `0.3 mL each time`: how much, as the vet wrote it. */
export function sayAmount({ amount }: Written): string {
  switch (amount.by) {
    case 'mass':
      return `${amount.dose.mgPerKg} mg per kg, at ${sayStrength(amount.strength)}`;
    case 'volume':
      return `${sayMl(amount.ml)} each time`;
    default:
      return amount satisfies never;
  }
}

/** The strength in the unit in which the bottle gives it. */
function sayStrength({ mgPerMl, percentWv }: Strength): string {
  return percentWv === undefined ? `${mgPerMl} mg per mL` : `${percentWv} % w/v`;
}

/** `every 12 hours`, `every 48 hours (2 days)`. */
export function sayEvery({ everyHours }: Written): string {
  if (everyHours === 1) return 'every hour';
  const days = everyHours / 24;
  if (!Number.isInteger(days)) return `every ${everyHours} hours`;
  return `every ${everyHours} hours (${days === 1 ? 'once a day' : `${days} days`})`;
}

/** `3 doses`, `until Fri 13 Mar 2026`, or both. */
export function sayCourse({ count, endsOn }: Written): string {
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
export function sayDifference({ differencePercent }: Drawn): string {
  const share = Number(Math.abs(differencePercent).toFixed(2));
  if (share === 0) return 'exactly on the mark';
  return `${share} % ${differencePercent > 0 ? 'more' : 'less'} than exact`;
}
