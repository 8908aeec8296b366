import { useSignal } from '@preact/signals';
import { type AnimalRecord, decideQuarantineEnd, type Problem, sayAnimal, sayId } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { TextLine } from '../treatment/TextLine.tsx';
import { momentNow } from './moment.ts';

interface EndSheetProps {
  readonly animal: AnimalRecord;
  readonly onClose: () => void;
}

/** The end of a quarantine by word: the vet’s, or the keeper’s who answers for it. */
export function EndSheet({ animal, onClose }: EndSheetProps) {
  const app = useApp();
  const by = useSignal('');
  const why = useSignal<Problem | null>(null);
  function end(event: Event): void {
    event.preventDefault();
    const decision = decideQuarantineEnd(animal, by.value, momentNow(app));
    why.value = decision.kind === 'refused' ? decision.problem : null;
    if (decision.kind === 'refused') return;
    onClose();
    void app.desk.decided(animal.id, decision);
  }
  return (
    <Sheet title={`End of the quarantine of ${sayAnimal(animal)}`} onClose={onClose}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
      <p>Where tests were sent in, wait for them. Afterwards clean its place in full before another animal goes in.</p>
      <form onSubmit={end} noValidate>
        <TextLine label="By whose word (vet or keeper)" value={by} most={80} fault={why.value} />
        <FormAnswers writes="Write the end" onClose={onClose} />
      </form>
    </Sheet>
  );
}
