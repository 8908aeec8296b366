import type { Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import type { Problem } from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import type { Draft, DraftField, Faults } from './draft.ts';

/** The form’s state, as its fields get it. */
export interface FormState {
  readonly draft: Signal<Draft>;
  readonly faults: Faults;
  /** The fields that were typed in and left; a problem is not told while somebody still types. */
  readonly left: Signal<ReadonlySet<DraftField>>;
  readonly tried: Signal<boolean>;
}

function put(form: FormState, name: DraftField, value: string): void {
  form.draft.value = { ...form.draft.value, [name]: value };
}

/** What a field has to say against itself, once it was left or the form was tried. */
export function faultAt({ faults, left, tried, draft }: FormState, name: DraftField): Problem | null {
  const isTold = tried.value || (left.value.has(name) && draft.value[name].trim() !== '');
  return isTold ? (faults[name] ?? null) : null;
}

interface LineProps {
  readonly form: FormState;
  readonly name: DraftField;
  readonly label: string;
  readonly hint?: ComponentChildren;
  readonly most?: number;
  readonly kind?: 'text' | 'figure' | 'date';
}

/** One line of the form, its problem under it. */
export function Line({ form, name, label, hint, most = 80, kind = 'text' }: LineProps) {
  const [id, belowId] = [useId(), useId()];
  const fault = faultAt(form, name);
  const field = {
    id,
    'data-field': name,
    value: form.draft.value[name],
    'aria-invalid': fault !== null,
    'aria-describedby': belowId,
    onInput: (event: { readonly currentTarget: HTMLInputElement }) => put(form, name, event.currentTarget.value),
    onBlur: () => {
      form.left.value = new Set([...form.left.value, name]);
    },
  };
  const isFigure = kind === 'figure';
  return (
    <div class={`field line-${kind}`}>
      <label for={id}>{label}</label>
      {kind === 'date' ? (
        <input type="date" {...field} />
      ) : (
        <input
          inputMode={isFigure ? 'decimal' : 'text'}
          maxLength={isFigure ? 14 : most}
          autoComplete="off"
          {...field}
        />
      )}
      <div id={belowId}>
        {fault !== null && <ProblemLine problem={fault} />}
        {fault === null && hint !== undefined && <small>{hint}</small>}
      </div>
    </div>
  );
}

interface ChooseProps {
  readonly form: FormState;
  readonly name: DraftField;
  readonly legend: string;
  readonly choices: readonly (readonly [value: string, words: string])[];
}

/** A choice that nothing makes for anybody. */
export function Choose({ form, name, legend, choices }: ChooseProps) {
  const group = useId();
  const fault = faultAt(form, name);
  return (
    <fieldset class="choose" aria-describedby={`${group}-why`}>
      <legend>{legend}</legend>
      {choices.map(([value, words]) => (
        <label key={value}>
          <input
            type="radio"
            name={group}
            data-field={name}
            checked={form.draft.value[name] === value}
            onChange={() => put(form, name, value)}
          />
          <span>{words}</span>
        </label>
      ))}
      <div id={`${group}-why`}>{fault !== null && <ProblemLine problem={fault} />}</div>
    </fieldset>
  );
}
