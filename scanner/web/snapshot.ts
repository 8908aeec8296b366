/** What the focused field held at one moment. */
export interface Snapshot {
  /** Gives the field that content, caret and the focus back, and tells the page of the change. */
  restore(): void;
}

const NOTHING: Snapshot = { restore: () => undefined };

/** Remembers the content of the focused field; of anything else there is nothing to remember. */
export function snapshotOf(focused: Element | null): Snapshot {
  if (focused instanceof HTMLSelectElement) return snapshot(focused, () => undefined);
  if (focused instanceof HTMLTextAreaElement) return snapshot(focused, caretOf(focused));
  if (focused instanceof HTMLInputElement && isTyped(focused)) return snapshot(focused, caretOf(focused));
  return NOTHING;
}

function snapshot(field: HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement, putCaret: () => void): Snapshot {
  const { value } = field;
  return {
    restore() {
      if (!field.isConnected) return;
      const changed = field.value !== value;
      if (changed) field.value = value;
      field.focus({ preventScroll: true });
      putCaret();
      if (changed) field.dispatchEvent(new Event('input', { bubbles: true }));
    },
  };
}

/** Number and date fields have no caret that can be read; theirs goes where the browser puts it. */
function caretOf(field: HTMLInputElement | HTMLTextAreaElement): () => void {
  const { selectionStart, selectionEnd } = field;
  return selectionStart === null ? () => undefined : () => field.setSelectionRange(selectionStart, selectionEnd);
}

/** True for the kinds of input that hold what is typed, and not for buttons, ticks and files. */
function isTyped({ type }: HTMLInputElement): boolean {
  return !['button', 'checkbox', 'color', 'file', 'hidden', 'image', 'radio', 'range', 'reset', 'submit'].includes(
    type,
  );
}
