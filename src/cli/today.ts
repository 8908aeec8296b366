import { type Day, parseDay } from '../core/index.ts';
import { orRefuse, refusal } from './refused.ts';

/** The calendar day of an instant in a time zone. Refusals: `zone-unknown`. */
export function dayIn(zone: string, ms: number): Day {
  const parts = partsIn(zone, ms);
  const of = (type: string) => parts.find((part) => part.type === type)?.value ?? '';
  return orRefuse(parseDay(`${of('year').padStart(4, '0')}-${of('month')}-${of('day')}`));
}

function partsIn(zone: string, ms: number): readonly Intl.DateTimeFormatPart[] {
  try {
    const format = new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
    });
    return format.formatToParts(ms);
  } catch {
    throw refusal('zone-unknown', { zone });
  }
}
