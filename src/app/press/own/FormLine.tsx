import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import type { Problem } from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';

interface FormLineProps {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly hint?: ComponentChildren;
  readonly unit?: string;
  readonly most?: number;
  readonly isFigure?: boolean;
  readonly fault: Problem | null;
  readonly put: (value: string) => void;
  /** The keeper went on to another line: what is wrong with this one may be said now. */
  readonly onLeave?: () => void;
}

/** One line of a form about paper, its unit behind it and what is wrong under it. */
export function FormLine(props: FormLineProps) {
  const { name, label, value, hint, unit, most = 40, isFigure = true, fault, put, onLeave } = props;
  const id = useId();
  const said = [hint === undefined ? '' : `${id}-hint`, fault === null ? '' : `${id}-fault`].filter(Boolean).join(' ');
  return (
    <div class="field paper-line">
      <label for={id}>{label}</label>
      <div class="paper-typed">
        <input
          id={id}
          name={name}
          value={value}
          maxLength={most}
          autocomplete="off"
          spellcheck={false}
          aria-invalid={fault !== null}
          onInput={(event) => put(event.currentTarget.value)}
          onBlur={() => onLeave?.()}
          {...(isFigure ? { inputMode: 'text' as const, class: 'paper-figure' } : {})}
          {...(said === '' ? {} : { 'aria-describedby': said })}
        />
        {unit === undefined ? null : <span class="paper-unit">{unit}</span>}
      </div>
      {hint === undefined ? null : <small id={`${id}-hint`}>{hint}</small>}
      {fault === null ? null : (
        <div id={`${id}-fault`}>
          <ProblemLine problem={fault} />
        </div>
      )}
    </div>
  );
}

/** Puts the cursor into the first line of a form that has something wrong. */
export function goToFault(form: HTMLFormElement | null): void {
  requestAnimationFrame(() => form?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
}
