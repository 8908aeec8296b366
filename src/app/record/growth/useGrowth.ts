import { useSignal, useSignalEffect } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import {
  type AnimalRecord,
  addDays,
  type Day,
  type GrowthPlot,
  growthPlot,
  growthWithin,
  type LogEvent,
  SEASON_DAYS,
} from '../../../core/index.ts';
import { useApp } from '../../model/app.ts';

/** How far back the plot goes. */
export type Span = 'season' | 'year' | 'all';
export const SPANS: readonly Span[] = ['season', 'year', 'all'];

/** What is shown of an animal’s growth, and up to which day. */
export interface ShownGrowth {
  readonly plot: GrowthPlot;
  readonly from: Day;
  readonly on: Day;
}

const YEAR_DAYS = 365;
const BEFORE_ALL = '0000-01-01' as Day;

/** An animal’s growth in a span, from its whole history; null until that is read. */
export function useGrowth(animal: AnimalRecord, span: Span): ShownGrowth | null {
  const { site, clock } = useApp();
  const history = useSignal<readonly LogEvent[] | null>(null);
  useSignalEffect(() => {
    if (site.revision.value < 0) return;
    void site.history(animal.id).then((events) => {
      history.value = events;
    });
  });
  const on = animal.left?.day ?? clock.today.value;
  const events = history.value;
  const whole = useMemo(
    () => (events === null ? null : growthPlot(animal, events, on)),
    [events, animal.id, animal.species, on],
  );
  if (whole === null) return null;
  const from = { season: addDays(on, -SEASON_DAYS), year: addDays(on, -YEAR_DAYS), all: BEFORE_ALL }[span];
  return { plot: growthWithin(whole, from), from, on };
}
