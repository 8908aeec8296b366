/** Holds back a blank on a button until it is known to be a person's. */
export interface HeldBlank {
  /** To be told of every key that goes down, before anybody else. */
  down(event: KeyboardEvent): void;
  /** And of every key that goes up. */
  up(event: KeyboardEvent): void;
  stop(): void;
}

/** After a blank that is alone for so long, no line of a scale goes on. */
const ALONE_MS = 90;
/** A timer this late means that the page was busy, and keys may be waiting behind it. */
const LATE_MS = 50;
/** But a person who presses a button is not kept waiting for ever. */
const MOST_WAITS = 5;
const PRESSED_BY_BLANK = 'button, summary, [role=button], input[type=checkbox], input[type=radio]';

/**
 * Lines of scales often begin with blanks, and a blank presses whatever button has the focus: it would answer a question
 * that nobody has read. While a weight is waited for, a blank on a button therefore presses it only when no key follows.
 */
export function holdBlanks(weighs: () => boolean): HeldBlank {
  let held: { readonly on: HTMLElement } | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const wait = (again: number): void => {
    const dueMs = performance.now() + ALONE_MS;
    const isLate = (): boolean => again > 0 && performance.now() - dueMs > LATE_MS;
    timer = setTimeout(() => (isLate() ? wait(again - 1) : press()), ALONE_MS);
  };
  const press = (): void => {
    const on = held?.on;
    held = null;
    if (on?.isConnected === true) on.click();
  };
  return {
    down(event) {
      clearTimeout(timer);
      held = null;
      const { target, key, repeat, ctrlKey, metaKey, altKey } = event;
      if (key !== ' ' || ctrlKey || metaKey || altKey || !weighs()) return;
      if (!(target instanceof HTMLElement) || !target.matches(PRESSED_BY_BLANK)) return;
      event.preventDefault();
      if (repeat) return;
      held = { on: target };
      wait(MOST_WAITS);
    },
    up(event) {
      // Some browsers press a button when the key goes up, whatever became of its going down.
      if (
        event.key === ' ' &&
        weighs() &&
        event.target instanceof HTMLElement &&
        event.target.matches(PRESSED_BY_BLANK)
      )
        event.preventDefault();
    },
    stop: () => clearTimeout(timer),
  };
}
