import { useSignal } from '@preact/signals';
import {
  ANIMAL_FLAGS,
  type AnimalFlag,
  type AnimalRecord,
  decideFlags,
  type Problem,
  sayAnimal,
  sayId,
} from '../../core/index.ts';
import { momentNow } from '../arrival/moment.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';

interface HandlingSheetProps {
  readonly animal: AnimalRecord;
  readonly onClose: () => void;
}

const SAYS: Readonly<Record<AnimalFlag, string>> = {
  'two-people': 'Two people: nobody opens its place alone',
  venomous: 'Venomous: by trained people only, never alone, by your written protocol and local law',
  'not-for-sale': 'Not for sale: it cannot be offered, and its card says so',
};

/** The marks of an animal, set whole. */
export function HandlingSheet({ animal, onClose }: HandlingSheetProps) {
  const app = useApp();
  const wanted = useSignal<readonly AnimalFlag[]>(animal.flags);
  const why = useSignal<Problem | null>(null);
  function write(event: Event): void {
    event.preventDefault();
    const decision = decideFlags(animal, wanted.value, momentNow(app));
    why.value = decision.kind === 'refused' ? decision.problem : null;
    if (decision.kind === 'refused') return;
    onClose();
    void app.desk.decided(animal.id, decision);
  }
  return (
    <Sheet title={`Handling of ${sayAnimal(animal)}`} onClose={onClose}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
      <form onSubmit={write} noValidate>
        {ANIMAL_FLAGS.map((flag) => (
          <label key={flag} class="check-line">
            <input
              type="checkbox"
              name="flag"
              value={flag}
              checked={wanted.value.includes(flag)}
              onChange={({ currentTarget }) => {
                const others = wanted.value.filter((one) => one !== flag);
                wanted.value = currentTarget.checked ? [...others, flag] : others;
              }}
            />
            {SAYS[flag]}
          </label>
        ))}
        <p>Size counts by itself: see the site’s rule for large animals in Books. Your local code decides.</p>
        {why.value !== null && <ProblemLine problem={why.value} />}
        <FormAnswers writes="Write the marks" onClose={onClose} />
      </form>
    </Sheet>
  );
}
