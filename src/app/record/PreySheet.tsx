import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { type Action, PREY_CLASSES, type Problem, parseWeight, sayAnimal, sayGramRange } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import type { Standing } from './standing.ts';

interface PreySheetProps {
  readonly standing: Standing;
  readonly onWrite: (action: Action) => void;
  readonly onClose: () => void;
}

const MOST = 12;

/** What was offered when it was not the plan: prey, how many, what they weighed, and whether they were taken. */
export function PreySheet({ standing, onWrite, onClose }: PreySheetProps) {
  const prey = useSignal(standing.meal?.prey ?? standing.animal.lastTaken?.prey ?? 'mouse-adult');
  const count = useSignal(standing.meal?.count ?? 1);
  const weighed = useSignal('');
  const why = useSignal<Problem | null>(null);
  const [preyId, weighedId] = [useId(), useId()];
  function write(taken: boolean): void {
    const total = weighed.value.trim() === '' ? null : parseWeight(weighed.value);
    if (total !== null && !total.ok) {
      why.value = total.problem;
      return;
    }
    const totalG = total === null ? {} : { totalG: total.value };
    onWrite({ do: 'fed', prey: prey.value, count: count.value, taken, ...totalG });
  }
  return (
    <Sheet title={`Other prey for ${sayAnimal(standing.animal)}`} onClose={onClose}>
      <p class="field">
        <label for={preyId}>Prey</label>
        <select
          id={preyId}
          value={prey.value}
          onChange={(event) => {
            prey.value = event.currentTarget.value;
          }}
        >
          {PREY_CLASSES.map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}, {sayGramRange(one.eachG)}
            </option>
          ))}
        </select>
      </p>
      <Count count={count} />
      <p class="field">
        <label for={weighedId}>Together they weighed (may stay empty)</label>
        <input
          id={weighedId}
          inputMode="decimal"
          autoComplete="off"
          onInput={(event) => {
            weighed.value = event.currentTarget.value;
          }}
        />
      </p>
      {why.value !== null && <ProblemLine problem={why.value} />}
      <div class="answers">
        <button type="button" class="answer" onClick={() => write(false)}>
          Refused
        </button>
        <button type="button" class="answer answer-yes" onClick={() => write(true)}>
          Taken
        </button>
      </div>
    </Sheet>
  );
}

function Count({ count }: { readonly count: { value: number } }) {
  const step = (by: number) => {
    count.value = Math.min(Math.max(count.value + by, 1), MOST);
  };
  return (
    <fieldset class="count">
      <legend>How many</legend>
      <button type="button" aria-label="One less" onClick={() => step(-1)}>
        −
      </button>
      <output aria-live="polite">{count.value}</output>
      <button type="button" aria-label="One more" onClick={() => step(1)}>
        +
      </button>
    </fieldset>
  );
}
