import type { Signal } from '@preact/signals';
import { useId } from 'preact/hooks';
import type { Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';

interface TextLineProps {
  readonly label: string;
  readonly value: Signal<string>;
  readonly most: number;
  readonly fault?: Problem | null;
  readonly hint?: string;
  readonly inputMode?: 'text' | 'decimal';
}

/** One line of a sheet, with its problem or its hint under it. */
export function TextLine({ label, value, most, fault = null, hint, inputMode = 'text' }: TextLineProps) {
  const [id, belowId] = [useId(), useId()];
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        maxLength={most}
        inputMode={inputMode}
        autoComplete="off"
        value={value}
        aria-invalid={fault !== null}
        aria-describedby={belowId}
        onInput={(event) => {
          value.value = event.currentTarget.value;
        }}
      />
      <div id={belowId}>
        {fault !== null && <ProblemLine problem={fault} />}
        {fault === null && hint !== undefined && <small>{hint}</small>}
      </div>
    </div>
  );
}
