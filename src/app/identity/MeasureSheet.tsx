import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import {
  type AnimalRecord,
  decideMeasured,
  LENGTHS_OF,
  type Problem,
  parseLength,
  sayAnimal,
  sayId,
  sayKindOf,
} from '../../core/index.ts';
import { momentNow } from '../arrival/moment.ts';
import { useApp } from '../model/app.ts';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { TextLine } from '../treatment/TextLine.tsx';

interface MeasureSheetProps {
  readonly animal: AnimalRecord;
  readonly onClose: () => void;
}

/** A length as the tape shows it: which of the two, and whether it was guessed. */
export function MeasureSheet({ animal, onClose }: MeasureSheetProps) {
  const app = useApp();
  const group = useId();
  const typed = useSignal('');
  const of = useSignal<(typeof LENGTHS_OF)[number]>('total');
  const guessed = useSignal(false);
  const why = useSignal<Problem | null>(null);
  function write(event: Event): void {
    event.preventDefault();
    const read = parseLength(typed.value);
    if (!read.ok) {
      why.value = read.problem;
      return;
    }
    const measuring = { lengthMm: read.value, of: of.value, guessed: guessed.value };
    const decision = decideMeasured(animal, measuring, momentNow(app));
    why.value = decision.kind === 'refused' ? decision.problem : null;
    if (decision.kind === 'refused') return;
    onClose();
    void app.desk.decided(animal.id, decision);
  }
  return (
    <Sheet title={`Measure ${sayAnimal(animal)}`} onClose={onClose}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
      <p>
        Never stretch it by force. A string laid along its back, or a guess beside the tub’s length, is better than a
        fight; a large constrictor is never measured alone.
      </p>
      <form onSubmit={write} noValidate>
        <TextLine
          label="Length"
          value={typed}
          most={12}
          inputMode="decimal"
          fault={why.value}
          hint="152.5, 1.52 m, 60 in; without a unit it is cm."
        />
        <fieldset class="measure-choice">
          <legend class="unseen">Which length</legend>
          {LENGTHS_OF.map((one) => (
            <label key={one} class="check-line">
              <input
                type="radio"
                name={group}
                checked={of.value === one}
                onChange={() => {
                  of.value = one;
                }}
              />
              <span>{sayKindOf(one)}</span>
            </label>
          ))}
          <label class="check-line">
            <input
              type="checkbox"
              checked={guessed.value}
              onChange={(event) => {
                guessed.value = event.currentTarget.checked;
              }}
            />
            <span>guessed, not measured</span>
          </label>
        </fieldset>
        <FormAnswers writes="Write length" onClose={onClose} />
      </form>
    </Sheet>
  );
}
