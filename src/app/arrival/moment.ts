import type { Day, Moment } from '../../core/index.ts';
import type { App } from '../model/app.ts';

/** The moment of something written now, for another day than today if one was chosen. */
export function momentNow({ clock }: App, day: Day | null = null): Moment {
  const today = clock.today.peek();
  return { day: day ?? today, today, nowMs: clock.nowMs() };
}
