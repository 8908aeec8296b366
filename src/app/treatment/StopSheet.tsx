import { useSignal } from '@preact/signals';
import { type AnimalRecord, type PrescriptionRecord, type Problem, sayAnimal, sayId } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { stopOf } from './giving.ts';
import { TextLine } from './TextLine.tsx';

interface StopSheetProps {
  readonly animal: AnimalRecord;
  readonly record: PrescriptionRecord;
  readonly onClose: () => void;
}

/** The vet’s word that a prescription ends, with the vet’s name and reason. */
export function StopSheet({ animal, record, onClose }: StopSheetProps) {
  const app = useApp();
  const [by, reason] = [useSignal(''), useSignal('')];
  const why = useSignal<Problem | null>(null);
  function stop(event: Event): void {
    event.preventDefault();
    const decision = stopOf(app, animal, record.id, { by: by.value, why: reason.value });
    why.value = decision.kind === 'refused' ? decision.problem : null;
    if (decision.kind === 'refused') return;
    onClose();
    void app.desk.decided(animal.id, decision);
  }
  const isReason = why.value?.code === 'stop-unexplained';
  return (
    <Sheet title={`Stopped by the vet: ${record.written.drug}`} onClose={onClose}>
      <p class="slide-sheet-id">
        {sayAnimal(animal)}, {sayId(animal.id)}
      </p>
      <p>
        Only the vet ends a prescription before its last dose. From then on nothing more is worked out from it; what was
        given stays on the record.
      </p>
      <form onSubmit={stop} noValidate>
        <TextLine label="Name of the vet" value={by} most={80} fault={isReason ? null : why.value} />
        <TextLine
          label="Why the vet stopped it"
          value={reason}
          most={400}
          fault={isReason ? why.value : null}
          hint="In the vet’s words, such as: healed, or not taken well."
        />
        <FormAnswers writes="Write stopped" onClose={onClose} />
      </form>
    </Sheet>
  );
}
