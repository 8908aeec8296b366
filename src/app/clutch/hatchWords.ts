import { type ClutchRecord, type Day, eggsOpen, HATCH_SPAN, stillToCome } from '../../core/index.ts';
import { sayDayIn } from '../season/words.ts';
import { counted } from './sayClutch.ts';

/** `6 of 8 out, 2 still to come`; of what nobody waits for any more, `1 not accounted for`. */
export function sayOut(clutch: ClutchRecord, today: Day): string {
  const out = `${clutch.hatched ?? 0} of ${clutch.eggs} out`;
  const toCome = stillToCome(clutch, today);
  if (toCome > 0) return `${out}, ${toCome} still to come`;
  const open = eggsOpen(clutch);
  return open > 0 ? `${out}, ${open} not accounted for` : out;
}

/** `3 on Fri 5 Jun, 2 on Sat 6 Jun`; null where all came on one day. */
export function sayHatchDays({ hatchings }: ClutchRecord, today: Day): string | null {
  const days = new Map<Day, number>();
  for (const { day, count } of hatchings) days.set(day, (days.get(day) ?? 0) + count);
  if (days.size < 2) return null;
  return [...days].map(([day, count]) => `${count} on ${sayDayIn(day, today)}`).join(', ');
}

/** How long it usually takes until all are out, and how long it took here (BREED-HATCH). */
export function sayHatchSpan(own: readonly number[]): string {
  const [low, high] = HATCH_SPAN.usualDays;
  const here = own.length === 0 ? '' : `; here ${own.join(', ')} d`;
  return `Usual span: all out within ${low}–${high} d of the first (C: common practice, no source)${here}.`;
}

/** `2 eggs are left`. */
export function sayLeft(count: number): string {
  return `${counted(count, 'egg')} ${count === 1 ? 'is' : 'are'} left`;
}
