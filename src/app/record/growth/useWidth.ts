import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

/** How wide an element is, in whole CSS pixels, so that a drawing in it keeps its type in size; 0 before it is laid out. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const box = element.current;
    if (box === null) return;
    const measure = (): void => setWidth(Math.floor(box.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(box);
    return () => observer.disconnect();
  }, []);
  return width;
}
