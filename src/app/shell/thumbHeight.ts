import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/** Tells the style sheets how high the bars at the thumb are, so that what sticks above them is not hidden by them. */
export function useThumbHeight(): RefObject<HTMLDivElement | null> {
  const bars = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const box = bars.current;
    if (box === null) return;
    const watch = new ResizeObserver(() => {
      document.documentElement.style.setProperty('--thumb', `${box.offsetHeight}px`);
    });
    watch.observe(box);
    return () => watch.disconnect();
  }, []);
  return bars;
}
