import type { RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/** The frame that a file is shown in, and the way to print it from there. */
export interface PrintFrame {
  readonly frame: RefObject<HTMLIFrameElement | null>;
  /** For the frame's `onLoad`. */
  loaded(): void;
  /** Opens the browser's own print sheet; where it refuses, the file itself in a tab of its own. */
  print(): void;
}

/** Prints what is in a frame. `begin` is called before, and also when the keeper goes into the frame. */
export function usePrintFrame(url: string, begin: (() => void) | undefined): PrintFrame {
  const frame = useRef<HTMLIFrameElement>(null);
  const [isLoaded, setLoaded] = useState(false);
  const isAsked = useRef(false);
  useEffect(() => setLoaded(false), [url]);
  useEntered(frame, begin);
  function show(): void {
    isAsked.current = false;
    try {
      const shown = frame.current?.contentWindow;
      if (shown == null) open();
      else shown.print();
    } catch {
      // A viewer that is a page of its own does not let us in.
      open();
    }
  }
  function open(): void {
    window.open(url, '_blank', 'noreferrer');
  }
  return {
    frame,
    loaded: () => {
      setLoaded(true);
      if (isAsked.current) show();
    },
    print: () => {
      begin?.();
      if (isLoaded) show();
      else isAsked.current = true;
    },
  };
}

/**
 * A viewer may have a print button of its own, and the browser a key, and neither tells the page of it. But whoever prints from
 * inside the frame has gone into it first, and that the page hears: it loses its focus to the frame.
 */
function useEntered(frame: RefObject<HTMLIFrameElement | null>, entered: (() => void) | undefined): void {
  useEffect(() => {
    if (entered === undefined) return undefined;
    const left = (): void => {
      if (frame.current !== null && document.activeElement === frame.current) entered();
    };
    window.addEventListener('blur', left);
    return () => window.removeEventListener('blur', left);
  }, [entered]);
}
