import './identity.css';
import { useSignal } from '@preact/signals';
import { type AnimalRecord, sayFlag } from '../../core/index.ts';
import { HandlingSheet } from './HandlingSheet.tsx';

/** What whoever opens this tub has to know, and the way to change it. */
export function HandlingPart({ animal }: { readonly animal: AnimalRecord }) {
  const open = useSignal(false);
  return (
    <section class="handling" aria-labelledby="handling-title">
      <h2 id="handling-title">Handling</h2>
      <p>{animal.flags.length === 0 ? 'No marks.' : `Marked: ${animal.flags.map(sayFlag).join(', ')}.`}</p>
      <button
        type="button"
        onClick={() => {
          open.value = true;
        }}
      >
        Change the marks …
      </button>
      {open.value && (
        <HandlingSheet
          animal={animal}
          onClose={() => {
            open.value = false;
          }}
        />
      )}
    </section>
  );
}
