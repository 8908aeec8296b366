import { type Signal, useSignal } from '@preact/signals';
import { type AnimalRecord, decideOrigin, type Problem, sayAnimal, sayId } from '../../core/index.ts';
import { momentNow } from '../arrival/moment.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { TextLine } from '../treatment/TextLine.tsx';

interface OriginSheetProps {
  readonly animal: AnimalRecord;
  readonly onClose: () => void;
}

/** Where it came from, written anew: what is emptied here is taken off the record. */
export function OriginSheet({ animal, onClose }: OriginSheetProps) {
  const app = useApp();
  const source = useSignal(animal.source ?? '');
  const licence = useSignal(animal.licence ?? '');
  const papers = useSignal(animal.originPapers ?? '');
  const why = useSignal<Problem | null>(null);
  function write(event: Event): void {
    event.preventDefault();
    const origin = { source: textOf(source), licence: textOf(licence), papers: textOf(papers) };
    const decision = decideOrigin(animal, origin, momentNow(app));
    why.value = decision.kind === 'refused' ? decision.problem : null;
    if (decision.kind === 'refused') return;
    onClose();
    void app.desk.decided(animal.id, decision);
  }
  return (
    <Sheet title={`Origin of ${sayAnimal(animal)}`} onClose={onClose}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
      <form onSubmit={write} noValidate>
        <TextLine label="Acquired from, full name" value={source} most={80} />
        <TextLine label="Supplier’s licence" value={licence} most={120} />
        <TextLine
          label="Papers that came with it"
          value={papers}
          most={400}
          hint="What they are and their numbers; photos go under Papers."
        />
        {why.value !== null && <ProblemLine problem={why.value} />}
        <FormAnswers writes="Write origin" onClose={onClose} />
      </form>
    </Sheet>
  );
}

function textOf({ value }: Signal<string>): string | null {
  return value.trim() === '' ? null : value.trim();
}
