import { useSignal } from '@preact/signals';
import { type AnimalRecord, type PrescriptionRecord, type Problem, sayAnimal, sayId } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { outcomeOf } from './giving.ts';
import { TextLine } from './TextLine.tsx';

interface OutcomeSheetProps {
  readonly animal: AnimalRecord;
  readonly record: PrescriptionRecord;
  readonly onClose: () => void;
}

/** How a treatment went; earlier words stay, and these stand beside them with their day. */
export function OutcomeSheet({ animal, record, onClose }: OutcomeSheetProps) {
  const app = useApp();
  const [words, by] = [useSignal(''), useSignal('')];
  const why = useSignal<Problem | null>(null);
  function write(event: Event): void {
    event.preventDefault();
    const decision = outcomeOf(app, animal, record.id, { words: words.value, by: by.value });
    why.value = decision.kind === 'refused' ? decision.problem : null;
    if (decision.kind === 'refused') return;
    onClose();
    void app.desk.decided(animal.id, decision);
  }
  return (
    <Sheet title={`How it went: ${record.written.drug}`} onClose={onClose}>
      <p class="slide-sheet-id">
        {sayAnimal(animal)}, {sayId(animal.id)}
      </p>
      <form onSubmit={write} noValidate>
        <TextLine
          label="How it went"
          value={words}
          most={400}
          fault={why.value}
          hint="Such as: eats again; or: no change, back to the vet."
        />
        <TextLine label="Who says so (may stay empty)" value={by} most={80} />
        <FormAnswers writes="Write it" onClose={onClose} />
      </form>
    </Sheet>
  );
}
