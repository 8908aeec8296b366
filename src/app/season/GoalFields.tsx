import { useComputed, useSignal, useSignalEffect } from '@preact/signals';
import { useId } from 'preact/hooks';
import type { LocusTable, Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { TraitText } from '../traits/index.ts';
import { readTyped } from '../traits/typed.ts';
import { readGoal } from './goals.ts';
import type { GoalDraft } from './planDraft.ts';

interface GoalFieldsProps {
  readonly goal: GoalDraft;
  readonly nth: number;
  readonly loci: LocusTable;
  readonly fault: Problem | null;
  set(goal: GoalDraft): void;
  readonly drop: (() => void) | null;
}

/** One goal: the look in trade words, how many eggs of it at least, and what an egg of it counts. */
export function GoalFields({ goal, nth, loci, fault, set, drop }: GoalFieldsProps) {
  const text = useSignal(goal.text);
  useSignalEffect(() => {
    if (text.value !== goal.text) set({ ...goal, text: text.value });
  });
  const typed = useComputed(() => readTyped(text.value, loci, null)).value;
  const look = typed.kind === 'said' ? readGoal(goal.text, loci) : null;
  const isOfText = fault?.path?.endsWith('.text') === true;
  return (
    <div class="plan-goal">
      <TraitText
        label={`Goal ${nth}: the look that is wanted`}
        text={text}
        typed={typed}
        name={`goal-${nth}`}
        hint="Such as Clown, Super Pastel, or Pastel Clown; or the code cln/cln."
      />
      {look?.ok === true && <p class="goal-said">{look.value.words}: other loci may be anything</p>}
      {look?.ok === false && <ProblemLine problem={look.problem} />}
      {isOfText && typed.kind === 'empty' && <p class="problem-line">Write what is wanted, or take the goal out.</p>}
      <div class="goal-figures">
        <Figure label="Eggs expected, at least" value={goal.least} set={(least) => set({ ...goal, least })} />
        <Figure label="Weight" value={goal.weight} set={(weight) => set({ ...goal, weight })} />
        {drop !== null && (
          <button type="button" class="link" onClick={drop} aria-label={`Take goal ${nth} out`}>
            Take out
          </button>
        )}
      </div>
      {fault !== null && !isOfText && <ProblemLine problem={fault} />}
    </div>
  );
}

function Figure({ label, value, set }: { readonly label: string; readonly value: string; set(text: string): void }) {
  const id = useId();
  return (
    <p class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        inputMode="decimal"
        autocomplete="off"
        value={value}
        onInput={(event) => set(event.currentTarget.value)}
      />
    </p>
  );
}
