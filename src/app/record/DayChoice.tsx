import type { Signal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { type Day, isDay, sayDay, sayDistance } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

interface DayChoiceProps {
  readonly day: Signal<Day | null>;
  /** What the field is called, where a page has more than one. */
  readonly words?: string;
}

/** For which day the next actions are written; today unless another one was chosen. */
export function DayChoice({ day, words = 'On another day' }: DayChoiceProps) {
  const { clock } = useApp();
  const fieldId = useId();
  const today = clock.today.value;
  return (
    <div class="day-choice">
      <label for={fieldId}>{words}</label>
      <input
        id={fieldId}
        type="date"
        max={today}
        value={day.value ?? today}
        onInput={(event) => {
          const chosen = event.currentTarget.value;
          day.value = isDay(chosen) && chosen !== today ? chosen : null;
        }}
      />
      {day.value !== null && (
        <p class="day-chosen" role="status">
          Writing for <strong>{sayDay(day.value)}</strong>, {sayDistance(today, day.value)}.{' '}
          <button
            type="button"
            onClick={() => {
              day.value = null;
            }}
          >
            Back to today
          </button>
        </p>
      )}
    </div>
  );
}
