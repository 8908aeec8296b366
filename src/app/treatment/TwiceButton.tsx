import { useEffect, useRef, useState } from 'preact/hooks';

interface TwiceButtonProps {
  /** What it says at first. */
  readonly words: string;
  readonly onSure: () => void;
}

const HOLD_MS = 1000;
/** A second touch that comes sooner belongs to the first: a finger that bounced has checked nothing. */
const BOUNCE_MS = 400;
const ARMED_MS = 10_000;

/** A button that one touch does not press: it is held for a second, or touched once more after it has asked. */
export function TwiceButton({ words, onSure }: TwiceButtonProps) {
  const [armedAt, arm] = useState<number | null>(null);
  const [isHeld, setHeld] = useState(false);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const wasHeld = useRef(false);
  const isArmed = armedAt !== null;
  function letGo(): void {
    if (timer.current !== null) clearTimeout(timer.current);
    timer.current = null;
    setHeld(false);
  }
  useEffect(() => letGo, []);
  useEffect(() => {
    if (armedAt === null) return;
    const end = setTimeout(() => arm(null), ARMED_MS);
    return () => clearTimeout(end);
  }, [armedAt]);
  function hold(): void {
    wasHeld.current = false;
    setHeld(true);
    timer.current = setTimeout(() => {
      wasHeld.current = true;
      letGo();
      onSure();
    }, HOLD_MS);
  }
  function touch(): void {
    // The release of a held button is a click of its own.
    if (wasHeld.current) return;
    if (armedAt === null) arm(performance.now());
    else if (performance.now() - armedAt > BOUNCE_MS) onSure();
  }
  return (
    <div class="twice">
      <button
        type="button"
        class={`primary twice-button${isHeld ? ' twice-held' : ''}${isArmed ? ' twice-armed' : ''}`}
        onPointerDown={hold}
        onPointerUp={letGo}
        onPointerLeave={letGo}
        onPointerCancel={letGo}
        onContextMenu={(event) => event.preventDefault()}
        onClick={touch}
      >
        {isArmed ? `Once more: ${words}` : words}
      </button>
      <p class="hint" role="status">
        {isArmed ? 'Nothing is written yet. Touch once more if you have checked it.' : 'Hold it, or touch it twice.'}
      </p>
    </div>
  );
}
