import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import { lessBox, type Problem, parseWeight, sayLessBox, sayNumber } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';

interface WeighBoxProps {
  /** What stands in the field of the weight. */
  readonly typed: string;
  onDone(): void;
}

/** The box that animals are weighed in on this device: set once, typed or from the scale, and taken off each weight in sight. */
export function WeighBox({ typed, onDone }: WeighBoxProps) {
  const { scale } = useApp();
  const open = useSignal(false);
  const boxG = scale.boxG.value;
  if (boxG !== null)
    return (
      <div class="weigh-box">
        <p role="status">{sayTakenOff(typed, boxG)}</p>
        <button
          type="button"
          class="secondary"
          onClick={() => {
            scale.noBox();
            onDone();
          }}
        >
          No box
        </button>
      </div>
    );
  if (!open.value)
    return (
      <button
        type="button"
        class="link weigh-box-open"
        onClick={() => {
          open.value = true;
        }}
      >
        Weighed in a box?
      </button>
    );
  return <BoxForm onDone={onDone} />;
}

function BoxForm({ onDone }: { onDone(): void }) {
  const { scale } = useApp();
  const [fieldId, hintId] = [useId(), useId()];
  const field = useRef<HTMLInputElement>(null);
  const typed = useSignal('');
  const why = useSignal<Problem | null>(null);
  useEffect(() => {
    field.current?.focus();
    return () => {
      scale.awaitBox(false);
      onDone();
    };
  }, []);
  return (
    <form
      class="weigh-box-form"
      onSubmit={(event) => {
        event.preventDefault();
        const kept = scale.setBox(typed.value);
        why.value = kept.ok ? null : kept.problem;
      }}
    >
      <label for={fieldId}>Weight of the empty box</label>
      <input
        ref={field}
        id={fieldId}
        inputMode="decimal"
        autoComplete="off"
        value={typed}
        aria-describedby={hintId}
        onFocus={() => scale.awaitBox(true)}
        onBlur={() => scale.awaitBox(false)}
        onInput={(event) => {
          typed.value = event.currentTarget.value;
        }}
      />
      <p id={hintId} class="hint">
        It is taken off every weight on this device until you say “No box”. While this field is open, a scale that types
        gives the box.
      </p>
      {why.value !== null && <ProblemLine problem={why.value} />}
      <button type="submit" class="secondary">
        Take the box off
      </button>
    </form>
  );
}

function sayTakenOff(typed: string, boxG: number): string {
  const box = `The box of ${sayNumber(boxG)} g is taken off.`;
  const shown = parseWeight(typed);
  const isWhole = shown.ok && lessBox(shown.value, boxG).ok;
  return isWhole ? `Writes ${sayLessBox(shown.value, boxG)}.` : box;
}
