import { useId } from 'preact/hooks';
import { addDays, type Day, isDay, sayDay } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

interface FirstDayProps {
  readonly day: Day;
  readonly why: string;
  set(day: Day): void;
}

/** A season begins a year away from today at most. */
const MOST_DAYS = 365;

/** From which day on a pairing of the plan counts as made; what is proposed can be changed. */
export function FirstDay({ day, why, set }: FirstDayProps) {
  const today = useApp().clock.today.value;
  const id = useId();
  return (
    <details class="plan-first">
      <summary>
        Pairings count from {sayDay(day)} on: {why}
      </summary>
      <p class="field">
        <label for={id}>The season’s first day</label>
        <input
          id={id}
          type="date"
          min={addDays(today, -MOST_DAYS)}
          max={addDays(today, MOST_DAYS)}
          value={day}
          onInput={(event) => {
            const chosen = event.currentTarget.value;
            if (isDay(chosen)) set(chosen);
          }}
        />
      </p>
    </details>
  );
}
