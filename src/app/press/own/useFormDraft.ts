import { useState } from 'preact/hooks';
import { type FormKind, type FormText, forgetForm, isSame, keepForm, keptForm } from './keptForms.ts';

/** Whether a form stands as it was half typed before; `old` if what it is about was set anew since. */
export type TakenUp = 'no' | 'yes' | 'old';

/** What a form holds, kept on this device until it is saved. */
export interface FormDraft<T> {
  readonly text: T;
  readonly takenUp: TakenUp;
  put(text: T): void;
  /** As if nothing had been typed. */
  anew(): void;
  /** It was saved, or is not wanted. */
  forget(): void;
}

interface State<T> {
  readonly text: T;
  readonly began: FormText;
  readonly takenUp: TakenUp;
}

/** The form of one paper or printer; `start` is how it stands when nothing was typed, `isSound` says no to choices that are none. */
export function useFormDraft<T extends FormText>(
  kind: FormKind,
  of: string,
  start: T,
  isSound: (text: T) => boolean = () => true,
): FormDraft<T> {
  const [{ text, began, takenUp }, set] = useState(() => firstState(kind, of, start, isSound));
  return {
    text,
    takenUp,
    put: (next) => {
      set({ text: next, began, takenUp });
      keepForm(kind, of, { began, text: next });
    },
    anew: () => {
      forgetForm(kind, of);
      set({ text: start, began: start, takenUp: 'no' });
    },
    forget: () => {
      forgetForm(kind, of);
      set({ text, began: start, takenUp: 'no' });
    },
  };
}

function firstState<T extends FormText>(kind: FormKind, of: string, start: T, isSound: (text: T) => boolean): State<T> {
  const kept = keptForm(kind, of, start);
  if (kept === null || !isSound(kept.text)) return { text: start, began: start, takenUp: 'no' };
  return { ...kept, takenUp: isSame(kept.began, start) ? 'yes' : 'old' };
}
