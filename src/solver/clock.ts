/** How long a search has taken, and how long it may still take, in seconds. */
export interface Clock {
  spent(): number;
  left(): number;
}

/** A clock that starts now. */
export function startClock(limitSeconds: number): Clock {
  const start = performance.now();
  const spent = (): number => (performance.now() - start) / 1000;
  return { spent, left: () => Math.max(0, limitSeconds - spent()) };
}
