/** Small work is done so many rounds over before it counts: the engine rewrites it for speed on the way. */
const WARM_UP = 10;
const MORE_ROUNDS = 3;

/**
 * The least processor time of some rounds, in milliseconds a run: whatever else the machine does must not count. Work of
 * less than a millisecond is repeated within a round, so that the clock's own steps do not matter, and warmed up before.
 */
export function leastMs(rounds: number, work: () => unknown, repeats = 1): number {
  let least = Number.POSITIVE_INFINITY;
  if (repeats > 1) for (let run = 0; run < WARM_UP * repeats; run++) work();
  const many = repeats > 1 ? rounds * MORE_ROUNDS : rounds;
  for (let round = 0; round < many; round++) {
    globalThis.gc?.();
    const start = process.cpuUsage();
    let kept: unknown;
    for (let run = 0; run < repeats; run++) kept = work();
    const { user, system } = process.cpuUsage(start);
    if (kept === undefined) throw new Error('the work gave nothing');
    least = Math.min(least, (user + system) / 1000 / repeats);
  }
  return least;
}

/** A time with as many digits as it deserves. */
export function sayMs(time: number): string {
  if (time < 1) return `${time.toFixed(3)} ms`;
  return time < 100 ? `${time.toFixed(1)} ms` : `${sayCount(Math.round(time))} ms`;
}

export function sayCount(count: number): string {
  return count.toLocaleString('en');
}

/** How many times as long as its limit something took. */
export function sayRatio(time: number, limit: number): string {
  const times = time / limit;
  return `${times < 10 ? times.toFixed(2) : sayCount(Math.round(times))} times as long`;
}
