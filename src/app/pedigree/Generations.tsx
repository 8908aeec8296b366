import { GENERATIONS } from './address.ts';

interface GenerationsProps {
  readonly shown: number;
  step(to: number): void;
}

/** How far back the drawing goes. */
export function Generations({ shown, step }: GenerationsProps) {
  return (
    <fieldset class="generations">
      <legend>Generations</legend>
      <button type="button" aria-label="One generation less" disabled={shown <= 1} onClick={() => step(shown - 1)}>
        −
      </button>
      <output aria-live="polite">{shown}</output>
      <button
        type="button"
        aria-label="One generation more"
        disabled={shown >= GENERATIONS.most}
        onClick={() => step(shown + 1)}
      >
        +
      </button>
    </fieldset>
  );
}
