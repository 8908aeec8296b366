import type { Brood } from './brood.ts';
import { MOST_EGGS } from './choice.ts';

interface EggStepperProps {
  readonly eggs: number;
  readonly brood: Brood;
  set(eggs: number): void;
}

/** How many eggs the clutch is thought to have. */
export function EggStepper({ eggs, brood, set }: EggStepperProps) {
  const step = (by: number): void => set(Math.min(Math.max(eggs + by, 1), MOST_EGGS));
  return (
    <fieldset class="egg-stepper">
      <legend class="unseen">
        {brood.eggs} in the {brood.clutch}
      </legend>
      <span class="egg-words" aria-hidden="true">
        A {brood.clutch} of
      </span>
      <button type="button" aria-label={`One ${brood.egg} less`} disabled={eggs === 1} onClick={() => step(-1)}>
        −
      </button>
      <output aria-live="polite">
        {eggs} <small>{eggs === 1 ? brood.egg : brood.eggs}</small>
      </output>
      <button type="button" aria-label={`One ${brood.egg} more`} disabled={eggs === MOST_EGGS} onClick={() => step(1)}>
        +
      </button>
    </fieldset>
  );
}
