import { type Signal, useSignal } from '@preact/signals';
import {
  type AnimalRecord,
  type Day,
  decideLeaving,
  isDay,
  type Leaving,
  leavingNotes,
  type Problem,
} from '../../core/index.ts';
import { momentNow } from '../arrival/moment.ts';
import { useApp } from '../model/app.ts';

/** A leaving on its way: its day, what was refused, what follows of it. */
export interface LeavingForm {
  /** As typed; today at first. */
  readonly day: Signal<string>;
  readonly why: Signal<Problem | null>;
  readonly notes: readonly string[];
  /** Writes it, asks about it, or says why not; true once the sheet can close, with what became of it. */
  write(leaving: Leaving): Promise<'accepted' | 'asks' | 'refused'>;
}

/** The one way by which a sheet writes that an animal leaves. */
export function useLeaving(animal: AnimalRecord, how: Leaving['how']): LeavingForm {
  const app = useApp();
  const today = app.clock.today.value;
  const day = useSignal<string>(today);
  const why = useSignal<Problem | null>(null);
  return {
    day,
    why,
    notes: leavingNotes(app.site.facility.value, animal, how, today),
    async write(leaving) {
      const on: Day = isDay(day.value) ? day.value : today;
      const decision = decideLeaving(animal, leaving, momentNow(app, on));
      why.value = decision.kind === 'refused' ? decision.problem : null;
      if (decision.kind === 'refused') {
        app.signs.give('refused');
        return 'refused';
      }
      return app.desk.decided(animal.id, decision);
    },
  };
}

/** A line of a sheet; null where nobody wrote anything. */
export function textOf({ value }: Signal<string>): string | null {
  return value.trim() === '' ? null : value.trim();
}
