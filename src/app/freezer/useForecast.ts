import { useEffect, useRef, useState } from 'preact/hooks';
import type { Day, Facility, OrderQuestion, Problem } from '../../core/index.ts';
import type { ForecastAnswer, ForecastProgress } from '../workers/forecastMessages.ts';
import { startForecast } from './forecasting.ts';

/** Where a forecast stands. */
export type ForecastState =
  | { readonly at: 'none' }
  | { readonly at: 'working'; readonly progress: ForecastProgress | null }
  | { readonly at: 'done'; readonly question: OrderQuestion; readonly answer: ForecastAnswer }
  | { readonly at: 'failed'; readonly problem: Problem };

export interface UsedForecast {
  readonly state: ForecastState;
  begin(facility: Facility, question: OrderQuestion, on: Day): void;
  cancel(): void;
}

/** A forecast that is worked out in a worker; a new one ends the one before, and leaving the screen ends it. */
export function useForecast(): UsedForecast {
  const [state, setState] = useState<ForecastState>({ at: 'none' });
  const running = useRef<{ stop(): void } | null>(null);
  const stop = (): void => {
    running.current?.stop();
    running.current = null;
  };
  useEffect(() => stop, []);
  return {
    state,
    begin(facility, question, on) {
      stop();
      setState({ at: 'working', progress: null });
      const work = startForecast(facility, question, on, (progress) => setState({ at: 'working', progress }));
      running.current = work;
      void work.answer.then((answer) => {
        if (running.current !== work) return;
        running.current = null;
        setState(
          answer.ok ? { at: 'done', question, answer: answer.value } : { at: 'failed', problem: answer.problem },
        );
      });
    },
    cancel() {
      stop();
      setState({ at: 'none' });
    },
  };
}
