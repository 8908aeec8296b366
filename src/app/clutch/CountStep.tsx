import { useId } from 'preact/hooks';

interface CountStepProps {
  readonly label: string;
  readonly count: number;
  readonly least?: number;
  set(count: number): void;
}

/** A count between a less and a more; it can be typed as well. */
export function CountStep({ label, count, least = 0, set }: CountStepProps) {
  const id = useId();
  return (
    <span class="count-step">
      <button type="button" aria-label={`${label}: one less`} disabled={count <= least} onClick={() => set(count - 1)}>
        −
      </button>
      <label class="unseen" for={id}>
        {label}
      </label>
      <input
        id={id}
        inputMode="numeric"
        autoComplete="off"
        value={count}
        onFocus={(event) => event.currentTarget.select()}
        onInput={(event) => {
          const typed = Number(event.currentTarget.value);
          if (Number.isInteger(typed) && typed >= least && typed < MOST) set(typed);
        }}
      />
      <button type="button" aria-label={`${label}: one more`} onClick={() => set(Math.min(count + 1, MOST - 1))}>
        +
      </button>
    </span>
  );
}

/** No clutch comes near it; it only keeps a slip of the keyboard from asking for a million records. */
const MOST = 1000;
