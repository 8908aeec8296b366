import type { Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import type { Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { type ArrivalDraft, arrivalDraft, type Faults } from './draft.ts';

/** The form as its lines get it: what is wrong, and whether it is told yet. */
export interface FormState {
  readonly faults: Faults;
  /** The lines that were typed in and left; a problem is not told while somebody still types. */
  readonly left: Signal<ReadonlySet<string>>;
  readonly tried: Signal<boolean>;
}

/** Lines whose text is a plain text. */
export type TextField = Exclude<keyof ArrivalDraft, 'apart' | 'place'>;

/** Changes a part of the draft. */
export function put(change: Partial<ArrivalDraft>): void {
  arrivalDraft.value = { ...arrivalDraft.value, ...change };
}

/** What a line has to say against itself. */
export function faultAt({ faults, left, tried }: FormState, path: string): Problem | null {
  return tried.value || left.value.has(path) ? (faults[path] ?? null) : null;
}

interface LineProps {
  readonly form: FormState;
  readonly name: TextField;
  readonly label: string;
  /** Under which name core tells of it, where that is another. */
  readonly path?: string;
  readonly hint?: ComponentChildren;
  readonly most?: number;
  readonly kind?: 'text' | 'figure' | 'date';
  readonly list?: string;
  /** What stands there while nothing was typed: a usual day. */
  readonly usual?: string;
  readonly max?: string;
}

/** One line of the form, its problem or its hint under it. */
export function Line({ form, name, label, path = name, hint, most = 80, kind = 'text', list, usual, max }: LineProps) {
  const [id, belowId] = [useId(), useId()];
  const fault = faultAt(form, path);
  const typed = arrivalDraft.value[name];
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type={kind === 'date' ? 'date' : 'text'}
        inputMode={kind === 'figure' ? 'decimal' : 'text'}
        maxLength={most}
        autoComplete="off"
        value={typed === '' ? (usual ?? '') : typed}
        aria-invalid={fault !== null}
        aria-describedby={belowId}
        {...(list === undefined ? {} : { list })}
        {...(max === undefined ? {} : { max })}
        onInput={(event) => put({ [name]: event.currentTarget.value })}
        onBlur={() => {
          form.left.value = new Set([...form.left.value, path]);
        }}
      />
      <div id={belowId}>
        {fault !== null && <ProblemLine problem={fault} />}
        {fault === null && hint !== undefined && <small>{hint}</small>}
      </div>
    </div>
  );
}
