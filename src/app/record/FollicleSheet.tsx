import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import {
  type AnimalRecord,
  type FemaleAct,
  LARGE_FOLLICLE_MM,
  type Problem,
  sayAnimal,
  sayDayShort,
  sayId,
} from '../../core/index.ts';
import { readCount, readMm } from '../clutch/typed.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';

interface FollicleSheetProps {
  readonly animal: AnimalRecord;
  write(act: FemaleAct): void;
  readonly onClose: () => void;
}

/** The largest follicle as it was measured, and how many were seen. */
export function FollicleSheet({ animal, write, onClose }: FollicleSheetProps) {
  const [size, many] = [useSignal(''), useSignal('')];
  const why = useSignal<Problem | null>(null);
  const [sizeId, manyId] = [useId(), useId()];
  const last = animal.season.findLast((mark) => mark.kind === 'follicles');
  function submit(event: Event): void {
    event.preventDefault();
    const [largest, count] = [readMm(size.value), readCount(many.value)];
    why.value = largest.ok ? (count.ok ? null : count.problem) : largest.problem;
    if (!largest.ok || !count.ok) return;
    onClose();
    write({ do: 'follicles', largestMm: largest.value, ...(count.value > 0 && { count: count.value }) });
  }
  return (
    <Sheet title={`Follicles of ${sayAnimal(animal)}`} onClose={onClose}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
      <form onSubmit={submit}>
        <label for={sizeId}>Largest, mm</label>
        <input
          id={sizeId}
          class="number-field"
          inputMode="decimal"
          autoComplete="off"
          onInput={(event) => {
            size.value = event.currentTarget.value;
          }}
        />
        <p class="hint">
          {last !== undefined && `Last ${last.largestMm} mm, ${sayDayShort(last.day)}. `}
          From {LARGE_FOLLICLE_MM} mm on ovulation is near (published, seen as a figure).
        </p>
        <label for={manyId}>How many were seen (may stay empty)</label>
        <input
          id={manyId}
          inputMode="numeric"
          autoComplete="off"
          onInput={(event) => {
            many.value = event.currentTarget.value;
          }}
        />
        {why.value !== null && <ProblemLine problem={why.value} />}
        <FormAnswers writes="Write follicles" onClose={onClose} />
      </form>
    </Sheet>
  );
}
