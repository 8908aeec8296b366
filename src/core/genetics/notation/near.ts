/** At most this many suggestions: more are no help. */
const MOST_NEAR = 3;

/** The candidates nearest to what was typed, by edit distance, nearest first; none if all are far. */
export function nearest(typed: string, candidates: readonly string[]): readonly string[] {
  const wanted = typed.toLowerCase().slice(0, 40);
  const reach = Math.max(1, Math.floor(wanted.length / 3));
  return [...new Set(candidates)]
    .filter((candidate) => Math.abs(candidate.length - wanted.length) <= reach)
    .map((candidate) => ({ candidate, distance: editDistance(wanted, candidate.toLowerCase()) }))
    .filter((one) => one.distance <= reach)
    .sort((a, b) => a.distance - b.distance || (a.candidate < b.candidate ? -1 : 1))
    .slice(0, MOST_NEAR)
    .map((one) => one.candidate);
}

/** How many letters must be put in, taken out, changed or swapped with a neighbour to get from one word to the other (Damerau 1964, each letter moved once). */
export function editDistance(a: string, b: string): number {
  let [before, above]: [number[], number[]] = [[], Array.from({ length: b.length + 1 }, (_, at) => at)];
  for (let row = 1; row <= a.length; row++) {
    const line = [row];
    for (let at = 1; at <= b.length; at++) {
      const changed = (above[at - 1] ?? 0) + (a[row - 1] === b[at - 1] ? 0 : 1);
      const swapped =
        row > 1 && at > 1 && a[row - 1] === b[at - 2] && a[row - 2] === b[at - 1] ? (before[at - 2] ?? 0) + 1 : changed;
      line.push(Math.min(changed, swapped, (above[at] ?? 0) + 1, (line[at - 1] ?? 0) + 1));
    }
    [before, above] = [above, line];
  }
  return above[b.length] ?? 0;
}

/** The nearest candidates as the start of a choice, `pie, pin or `; nothing where none is near. */
export function nearFirst(near: readonly string[]): string {
  return near.length === 0 ? '' : `${near.join(', ')} or `;
}
