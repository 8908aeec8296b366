import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import {
  type AnimalRecord,
  decideQuarantine,
  isDay,
  type Problem,
  QUARANTINE_DAYS,
  sayAnimal,
  sayId,
  usualArrival,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { momentNow } from './moment.ts';

interface StartSheetProps {
  readonly animal: AnimalRecord;
  readonly onClose: () => void;
}

/** Puts an animal in quarantine that is here already: until a day, or until somebody ends it. */
export function StartSheet({ animal, onClose }: StartSheetProps) {
  const app = useApp();
  const id = useId();
  const until = useSignal<string>(usualArrival(app.clock.today.value).quarantineUntil);
  const why = useSignal<Problem | null>(null);
  function begin(event: Event): void {
    event.preventDefault();
    const day = isDay(until.value) ? until.value : null;
    const decision = decideQuarantine(app.site.facility.value, animal, { until: day, words: null }, momentNow(app));
    why.value = decision.kind === 'refused' ? decision.problem : null;
    if (decision.kind === 'refused') return;
    onClose();
    void app.desk.decided(animal.id, decision);
  }
  return (
    <Sheet title={`${sayAnimal(animal)} in quarantine`} onClose={onClose}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
      <form onSubmit={begin} noValidate>
        <div class="field">
          <label for={id}>Until (empty: until somebody ends it)</label>
          <input
            id={id}
            type="date"
            value={until}
            onInput={(event) => {
              until.value = event.currentTarget.value;
            }}
          />
          <small>
            {QUARANTINE_DAYS.join('–')} days at least (S: a veterinary web page), longer where certain viruses are a
            risk. The vet decides.
          </small>
        </div>
        {why.value !== null && <ProblemLine problem={why.value} />}
        <FormAnswers writes="Write quarantine" onClose={onClose} />
      </form>
    </Sheet>
  );
}
