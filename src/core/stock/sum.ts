/** How likely each count is: `chances[n]` belongs to `least + n`. They add up to 1 but for what {@link TAIL} left out. */
export interface Counts {
  readonly least: number;
  readonly chances: Float64Array;
}

/** One unlike chance: so many times `step` items, with the chance of each number of times, starting from none. */
export interface Chance {
  readonly step: number;
  readonly chances: Float64Array;
}

/** So much is left out at either end of a sum each time two are put together: less than what rounding loses. */
const TAIL = 1e-17;
/** Chances are added one by one up to so many items, and such sums are put together two by two: it keeps all of them short. */
const BLOCK = 48;
/** A share is reached when only rounding is missing. */
const ROUNDING = 1e-9;

/** The exact distribution of a sum of independent unlike chances, by convolution in doubles; no approximation. */
export function sumOfChances(all: readonly Chance[]): Counts {
  let sums = blocks(all);
  while (sums.length > 1) {
    const next: Counts[] = [];
    for (let at = 0; at < sums.length; at += 2) next.push(added(sums[at] ?? NOTHING, sums[at + 1] ?? NOTHING));
    sums = next;
  }
  return sums[0] ?? NOTHING;
}

/** The mean count. */
export function meanOf({ least, chances }: Counts): number {
  return chances.reduce((sum, chance, at) => sum + chance * (least + at), 0);
}

/** The least count that is enough with this chance. */
export function enoughFor({ least, chances }: Counts, share: number): number {
  let sum = 0;
  for (const [at, chance] of chances.entries()) {
    sum += chance;
    if (sum >= share - ROUNDING) return least + at;
  }
  return least + chances.length - 1;
}

const NOTHING: Counts = { least: 0, chances: Float64Array.of(1) };

function blocks(all: readonly Chance[]): Counts[] {
  const found: Counts[] = [];
  let [from, most] = [0, 0];
  for (const [at, one] of all.entries()) {
    most += mostOf(one);
    if (most < BLOCK && at < all.length - 1) continue;
    found.push(blockOf(all, from, at + 1, most));
    [from, most] = [at + 1, 0];
  }
  return found;
}

function blockOf(all: readonly Chance[], from: number, to: number, most: number): Counts {
  const sum = new Float64Array(most + 1);
  sum[0] = 1;
  let top = 0;
  for (let at = from; at < to; at++) {
    const one = all[at];
    if (one === undefined) continue;
    top += mostOf(one);
    addInPlace(sum, top, one);
  }
  return trimmed(0, sum);
}

function mostOf({ step, chances }: Chance): number {
  return step * (chances.length - 1);
}

/** From the top down, so that what is read has not been written yet. */
function addInPlace(sum: Float64Array, top: number, { step, chances }: Chance): void {
  for (let count = top; count >= 0; count--) {
    let chance = 0;
    for (let times = 0, from = count; times < chances.length && from >= 0; times++, from -= step)
      chance += (chances[times] ?? 0) * (sum[from] ?? 0);
    sum[count] = chance;
  }
}

function added(a: Counts, b: Counts): Counts {
  const sum = new Float64Array(a.chances.length + b.chances.length - 1);
  for (let i = 0; i < a.chances.length; i++) {
    const chance = a.chances[i] ?? 0;
    for (let j = 0; j < b.chances.length; j++) sum[i + j] = (sum[i + j] ?? 0) + chance * (b.chances[j] ?? 0);
  }
  return trimmed(a.least + b.least, sum);
}

function trimmed(least: number, chances: Float64Array): Counts {
  let [from, to] = [0, chances.length];
  for (let sum = chances[from] ?? 0; from < to - 1 && sum < TAIL; sum += chances[from] ?? 0) from += 1;
  for (let sum = chances[to - 1] ?? 0; to - 1 > from && sum < TAIL; sum += chances[to - 1] ?? 0) to -= 1;
  return { least: least + from, chances: chances.subarray(from, to) };
}
