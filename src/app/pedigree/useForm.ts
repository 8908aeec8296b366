import { useEffect, useState } from 'preact/hooks';
import type { Form } from './layout.ts';
import { WIDE } from './measures.ts';

/**
 * Columns side by side where there is room. A phone has none, so there each animal has a line of its own, set in by its
 * generation, with the animal itself at the top: the page opens on it, and the thumb goes up the lines without panning.
 */
export function useForm(): Form {
  const [isWide, setWide] = useState(() => matchMedia(WIDE).matches);
  useEffect(() => {
    const media = matchMedia(WIDE);
    const look = (): void => setWide(media.matches);
    media.addEventListener('change', look);
    return () => media.removeEventListener('change', look);
  }, []);
  return isWide ? 'beside' : 'below';
}
