import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import { lastWeight, type Problem, sayAnimal, sayDayShort, sayGrams, sayId } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import type { NumberWanted } from '../model/weighing.ts';
import { Sheet } from './Sheet.tsx';
import { WeighBox } from './WeighBox.tsx';

/** Asks for the number that a stamp wants for this card. */
export function NumberSheet() {
  const { desk } = useApp();
  const wanted = desk.numberWanted.value;
  return wanted === null ? null : <Weight key={wanted.animal.id} wanted={wanted} />;
}

function Weight({ wanted }: { readonly wanted: NumberWanted }) {
  const { animal } = wanted;
  const typed = useSignal('');
  const why = useSignal<Problem | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const [fieldId, hintId] = [useId(), useId()];
  const last = lastWeight(animal);
  useEffect(() => field.current?.focus(), []);
  async function give(event: Event): Promise<void> {
    event.preventDefault();
    why.value = await wanted.give(typed.value);
  }
  const wrong = wanted.unread.value ?? why.value;
  return (
    <Sheet title={`Weight of ${sayAnimal(animal)}`} onClose={() => wanted.leave()}>
      <form onSubmit={(event) => void give(event)}>
        <p class="slide-sheet-id">{sayId(animal.id)}</p>
        <label for={fieldId}>Weight as the scale shows it</label>
        <input
          ref={field}
          id={fieldId}
          class="number-field"
          inputMode="decimal"
          autoComplete="off"
          enterKeyHint="done"
          value={typed}
          aria-describedby={hintId}
          aria-invalid={why.value !== null}
          onInput={(event) => {
            typed.value = event.currentTarget.value;
            why.value = null;
          }}
        />
        <p id={hintId} class="hint">
          {last === null ? 'The first weight.' : `Last ${sayGrams(last.weightG)}, ${sayDayShort(last.day)}.`} Grams
          unless you write the unit: 900, 1.2kg, 2 lb. A scale that types is heard by itself.
        </p>
        {wrong !== null && <ProblemLine problem={wrong} />}
        <div class="answers">
          <button type="button" class="answer" onClick={() => wanted.leave()}>
            No weight
          </button>
          <button type="submit" class="answer answer-yes">
            Write weight
          </button>
        </div>
      </form>
      <WeighBox typed={typed.value} onDone={() => field.current?.focus()} />
    </Sheet>
  );
}
