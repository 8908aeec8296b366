import type { Day, Decision, Id, LotRecord, Moment, Payload } from '../../../src/core/index.ts';
import { day, type Line, LOT, site } from '../log.ts';

/** The day of the tests of the freezer. */
export const ON: Day = day('2026-03-20');
/** Eight in the morning of that day, a moment after the lines of a test. */
export const NOW: Moment = { day: ON, today: ON, nowMs: Date.parse('2026-03-20T08:10:00Z') };

/** A lot of fifty rat pups that came on 1 February. */
export function lot(at: Id = LOT, more: Partial<Payload<'lot-received'>> = {}, on = '2026-02-01'): Line {
  return [on, 'lot-received', { prey: 'rat-pup', eachG: [20, 35], count: 50, ...more }, { subjects: [at] }];
}

export function used(count: number, on: string = ON, at: Id = LOT, forDay?: string): Line {
  return [on, 'lot-used', { count, ...(forDay !== undefined && { forDay }) }, { subjects: [at] }];
}

export function thrown(count: number, on: string = ON, at: Id = LOT): Line {
  return [on, 'lot-wasted', { count, why: 'refused', thawed: true }, { subjects: [at] }];
}

/** The first lot after these lines. */
export function lotAfter(...lines: readonly Line[]): LotRecord {
  const found = site(...lines).lots.get(LOT);
  if (found === undefined) throw new Error('the lines leave no such lot');
  return found;
}

/** A decision in short: its kind, and the code of its problem where it has one. */
export function short(decision: { readonly kind: Decision['kind'] }): string {
  return 'problem' in decision ? `${decision.kind} ${(decision.problem as { code: string }).code}` : decision.kind;
}
