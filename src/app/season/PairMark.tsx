import './pairMark.css';
import type { PairState } from '../../core/index.ts';

/** A box as on a list of paper: empty while open, ticked when made, struck through when fallen out. A word stands beside it. */
export function PairMark({ state }: { readonly state: PairState['state'] }) {
  return (
    <svg class={`pair-mark pair-${state}`} viewBox="0 0 24 24" width="22" height="22" aria-hidden="true">
      <rect class="stroke" x="2" y="2" width="20" height="20" />
      {state === 'made' && <path class="stroke pair-tick" d="M6 12.5l4 4.5L18.5 7" />}
      {state === 'out' && <path class="stroke" d="M2 22L22 2" />}
    </svg>
  );
}
