import { useEffect, useState } from 'preact/hooks';

const AT_ONCE = 3;

/** The first blocks at once, the others one after the other behind the first picture: a long walk must not delay it. */
export function useGrowing(key: string, total: number): number {
  const [grown, grow] = useState({ key, count: AT_ONCE });
  const count = grown.key === key ? grown.count : AT_ONCE;
  useEffect(() => {
    if (count >= total) return;
    const timer = setTimeout(() => grow({ key, count: count + 1 }), 0);
    return () => clearTimeout(timer);
  }, [key, count, total]);
  return count;
}
