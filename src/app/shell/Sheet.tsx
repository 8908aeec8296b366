import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef } from 'preact/hooks';

interface SheetProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
  readonly tone?: 'plain' | 'asks';
}

/** A sheet that slides up from below. Escape closes it, and so does a touch beside a plain one; the camera behind it goes on. */
export function Sheet({ title, onClose, children, tone = 'plain' }: SheetProps) {
  const box = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const before = document.activeElement;
    // A question is left by its answers only; a stray touch must not answer it.
    box.current?.setAttribute('closedby', tone === 'asks' ? 'closerequest' : 'any');
    box.current?.showModal();
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus({ preventScroll: true });
    };
  }, []);
  return (
    <dialog
      ref={box}
      class={`slide-sheet slide-sheet-${tone}`}
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <div class="slide-sheet-paper">
        <h2 id={titleId}>{title}</h2>
        {children}
      </div>
    </dialog>
  );
}
