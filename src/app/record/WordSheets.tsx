import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import { type Action, sayAnimal } from '../../core/index.ts';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { PreySheet } from './PreySheet.tsx';
import type { Standing } from './standing.ts';

export type SheetName = 'prey' | 'vet' | 'note' | 'regurgitated';

interface WordSheetProps {
  readonly name: SheetName;
  readonly standing: Standing;
  readonly onWrite: (action: Action) => void;
  readonly onClose: () => void;
}

/** The sheet of an action that needs words of the keeper. */
export function WordSheet({ name, standing, onWrite, onClose }: WordSheetProps) {
  const write = (action: Action) => {
    onClose();
    onWrite(action);
  };
  const of = sayAnimal(standing.animal);
  switch (name) {
    case 'prey':
      return <PreySheet standing={standing} onWrite={write} onClose={onClose} />;
    case 'vet':
      return <VetSheet of={of} onWrite={write} onClose={onClose} />;
    case 'note':
      return <NoteSheet of={of} onWrite={write} onClose={onClose} />;
    case 'regurgitated':
      return <RegurgitatedSheet of={of} onWrite={write} onClose={onClose} />;
  }
}

interface OneSheetProps {
  readonly of: string;
  readonly onWrite: (action: Action) => void;
  readonly onClose: () => void;
}

function VetSheet({ of, onWrite, onClose }: OneSheetProps) {
  const [by, words] = [useSignal(''), useSignal('')];
  return (
    <Sheet title={`Vet’s word on ${of}`} onClose={onClose}>
      <Form
        writes="Write vet cleared"
        onClose={onClose}
        onSubmit={() =>
          onWrite({ do: 'vet-cleared', by: by.value, ...(words.value.trim() && { words: words.value.trim() }) })
        }
      >
        <Field label="Name of the vet" value={by} required />
        <Field label="What was said (may stay empty)" value={words} />
      </Form>
    </Sheet>
  );
}

function NoteSheet({ of, onWrite, onClose }: OneSheetProps) {
  const words = useSignal('');
  return (
    <Sheet title={`Note on ${of}`} onClose={onClose}>
      <Form writes="Write note" onClose={onClose} onSubmit={() => onWrite({ do: 'note', words: words.value })}>
        <Field label="Note" value={words} required long />
      </Form>
    </Sheet>
  );
}

function RegurgitatedSheet({ of, onWrite, onClose }: OneSheetProps) {
  const note = useSignal('');
  return (
    <Sheet title={`${of} regurgitated`} onClose={onClose}>
      <p>A rest follows, then half a meal. A second time within 60 days needs a vet’s word.</p>
      <Form
        writes="Write regurgitated"
        onClose={onClose}
        onSubmit={() => onWrite({ do: 'regurgitated', ...(note.value.trim() && { note: note.value.trim() }) })}
      >
        <Field label="What came back (may stay empty)" value={note} />
      </Form>
    </Sheet>
  );
}

interface FormProps {
  readonly writes: string;
  readonly onSubmit: () => void;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

function Form({ writes, onSubmit, onClose, children }: FormProps) {
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        onSubmit();
      }}
    >
      {children}
      <FormAnswers writes={writes} onClose={onClose} />
    </form>
  );
}

interface FieldProps {
  readonly label: string;
  readonly value: { value: string };
  readonly required?: boolean;
  readonly long?: boolean;
}

function Field({ label, value, required = false, long = false }: FieldProps) {
  const fieldId = useId();
  const onInput = (event: { readonly currentTarget: { readonly value: string } }) => {
    value.value = event.currentTarget.value;
  };
  return (
    <p class="field">
      <label for={fieldId}>{label}</label>
      {long ? (
        <textarea id={fieldId} rows={4} maxLength={2000} required={required} onInput={onInput} />
      ) : (
        <input id={fieldId} maxLength={80} required={required} autoComplete="off" onInput={onInput} />
      )}
    </p>
  );
}
