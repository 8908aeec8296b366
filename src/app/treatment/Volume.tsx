import { type DoseAnswer, type Drawn, sayDifference, sayMl } from '../../core/index.ts';
import { LookAt } from '../record/Because.tsx';
import { Syringe } from './Syringe.tsx';

interface VolumeProps {
  readonly dose: DoseAnswer;
  /** True where the volume is to be read from an arm’s length, with a syringe in the other hand. */
  readonly large?: boolean;
}

/** The volume to draw up: exact, as it is drawn, what the mark changes, the syringe, and what to look at first. */
export function Volume({ dose, large = false }: VolumeProps) {
  return (
    <div class="dose-volume">
      {large ? <LargeVolume drawn={dose} /> : <DrawnLine drawn={dose} />}
      <Syringe drawn={dose} />
      <LookAt words={dose.warnings} />
    </div>
  );
}

/** The volume as the largest thing on the sheet, and under it what it was before the mark. */
export function LargeVolume({ drawn }: { readonly drawn: Drawn }) {
  return (
    <p class="give-volume">
      <strong>{sayMl(drawn.ml)}</strong>
      <span>
        exact {sayMl(drawn.exactMl)}, {sayDifference(drawn)}
      </span>
    </p>
  );
}

/** `0.452 mL → 0.45 mL`, and how far apart they are. */
export function DrawnLine({ drawn }: { readonly drawn: Drawn }) {
  return (
    <p class="drawn">
      <span class="drawn-exact">{sayMl(drawn.exactMl)}</span> <span aria-hidden="true">→</span>
      <span class="unseen"> rounded to </span> <strong>{sayMl(drawn.ml)}</strong>{' '}
      <span class="drawn-difference">{sayDifference(drawn)}</span>
    </p>
  );
}
