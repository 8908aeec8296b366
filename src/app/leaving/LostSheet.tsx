import { useSignal } from '@preact/signals';
import { type AnimalRecord, lostCaution, peopleFor, sayAnimal, sayId } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { TextLine } from '../treatment/TextLine.tsx';
import { DayLine, Notes } from './parts.tsx';
import { textOf, useLeaving } from './useLeaving.ts';

interface LostSheetProps {
  readonly animal: AnimalRecord;
  readonly onClose: () => void;
}

/** One that is gone and nobody knows where: first what to do, then what to write. */
export function LostSheet({ animal, onClose }: LostSheetProps) {
  const { site } = useApp();
  const form = useLeaving(animal, 'lost');
  const note = useSignal('');
  const { rules, safetyLine } = site.facility.value.site;
  const caution = lostCaution(animal, peopleFor(animal, rules.twoPeopleFromM)?.people ?? 1);
  async function write(event: Event): Promise<void> {
    event.preventDefault();
    if ((await form.write({ how: 'lost', note: textOf(note) })) !== 'refused') onClose();
  }
  return (
    <Sheet title={`${sayAnimal(animal)} is lost`} onClose={onClose}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
      {caution !== null && (
        <div class="lost-caution" role="alert">
          <p>{caution}</p>
          {animal.flags.includes('venomous') && safetyLine !== null && <p>{safetyLine}</p>}
        </div>
      )}
      <form onSubmit={(event) => void write(event)} noValidate>
        <Notes notes={form.notes} />
        <DayLine day={form.day} />
        <TextLine label="Where it was seen last, and a note" value={note} most={400} />
        {form.why.value !== null && <ProblemLine problem={form.why.value} />}
        <FormAnswers writes="Write lost" onClose={onClose} />
      </form>
    </Sheet>
  );
}
