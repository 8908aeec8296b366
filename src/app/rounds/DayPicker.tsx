import type { Day } from '../../core/index.ts';
import { SpokenDay } from '../look/SpokenDay.tsx';

interface DayPickerProps {
  readonly day: Day;
  readonly today: Day;
  pick(text: string): void;
  step(days: number): void;
}

/** The day that is looked at; another day than today is for reading only, and says so. */
export function DayPicker({ day, today, pick, step }: DayPickerProps) {
  return (
    <div class="day-picker">
      <button type="button" class="step" aria-label="Day before" onClick={() => step(-1)}>
        ‹
      </button>
      <label class="day-said">
        <SpokenDay day={day} today={today} />
        <input type="date" aria-label="Day" value={day} onChange={(event) => pick(event.currentTarget.value)} />
      </label>
      <button type="button" class="step" aria-label="Day after" onClick={() => step(1)}>
        ›
      </button>
      {day === today ? null : (
        <p class="day-only" role="status">
          For reading only.{' '}
          <button type="button" class="link" onClick={() => pick(today)}>
            Back to today
          </button>
        </p>
      )}
    </div>
  );
}
