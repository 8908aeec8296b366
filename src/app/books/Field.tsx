import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

interface FieldProps {
  readonly name: string;
  readonly words: string;
  readonly hint?: string;
  readonly most?: number;
  readonly type?: 'text' | 'date' | 'number';
  readonly start?: string;
  readonly list?: string;
}

/** One line to write on, with its words above it. Forms are read when they are sent, so the line keeps its own text. */
export function Field({ name, words, hint, most = 80, type = 'text', start = '', list }: FieldProps) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{words}</label>
      <input
        id={id}
        name={name}
        type={type}
        maxLength={most}
        defaultValue={start}
        autocomplete="off"
        {...(list === undefined ? {} : { list })}
        {...(hint === undefined ? {} : { 'aria-describedby': `${id}-hint` })}
      />
      {hint === undefined ? null : <small id={`${id}-hint`}>{hint}</small>}
    </div>
  );
}

interface PickProps {
  readonly name: string;
  readonly words: string;
  readonly children: ComponentChildren;
}

/** One line with a list to pick from. */
export function Pick({ name, words, children }: PickProps) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{words}</label>
      <select id={id} name={name}>
        {children}
      </select>
    </div>
  );
}

/** What was written on a form's line, without the spaces around it. */
export function written(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === 'string' ? value.trim() : '';
}
