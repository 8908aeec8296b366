import type { Signal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { useApp } from '../model/app.ts';

/** The day on which it left: today, or an earlier one. */
export function DayLine({ day }: { readonly day: Signal<string> }) {
  const id = useId();
  const today = useApp().clock.today.value;
  return (
    <div class="field">
      <label for={id}>On</label>
      <input
        id={id}
        type="date"
        max={today}
        value={day}
        onInput={(event) => {
          day.value = event.currentTarget.value;
        }}
      />
    </div>
  );
}

/** What follows when it leaves, before it is written. */
export function Notes({ notes }: { readonly notes: readonly string[] }) {
  if (notes.length === 0) return null;
  return (
    <ul class="leaving-notes" aria-label="What follows">
      {notes.map((note) => (
        <li key={note}>{note}</li>
      ))}
    </ul>
  );
}
