import { useSignal } from '@preact/signals';
import { type AnimalRecord, sayAnimal, sayId } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { TextLine } from '../treatment/TextLine.tsx';
import { DayLine, Notes } from './parts.tsx';
import { textOf, useLeaving } from './useLeaving.ts';

interface DiedSheetProps {
  readonly animal: AnimalRecord;
  readonly onClose: () => void;
}

/** A death: the day, the cause as far as it is known, and what to do about it. */
export function DiedSheet({ animal, onClose }: DiedSheetProps) {
  const form = useLeaving(animal, 'died');
  const [cause, note] = [useSignal(''), useSignal('')];
  async function write(event: Event): Promise<void> {
    event.preventDefault();
    if ((await form.write({ how: 'died', cause: textOf(cause), note: textOf(note) })) !== 'refused') onClose();
  }
  return (
    <Sheet title={`${sayAnimal(animal)} died`} onClose={onClose}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
      <form onSubmit={(event) => void write(event)} noValidate>
        <DayLine day={form.day} />
        <TextLine
          label="Cause"
          value={cause}
          most={200}
          hint="As the vet found it. Empty: it is written as not known."
        />
        <TextLine label="Note (may stay empty)" value={note} most={400} />
        <Notes notes={form.notes} />
        {form.why.value !== null && <ProblemLine problem={form.why.value} />}
        <FormAnswers writes="Write died" onClose={onClose} />
      </form>
    </Sheet>
  );
}
