/** How long a code must be out of view before it counts again, in milliseconds of looking. */
export const GONE_MS = 700;
/** The same once another code was read since: the keeper has moved on, but two cards may lie in one view. */
export const GONE_AFTER_ANOTHER_MS = 300;
/** Time in which nobody looked (a sleeping tab, a stalled page) does not count as absence beyond this. */
const LONGEST_STEP_MS = 250;

interface InView {
  readonly absentMs: number;
  /** The number of codes accepted when this one was. */
  readonly turn: number;
}

/** Which codes were lately in view. */
export interface Rearm {
  readonly atMs: number;
  readonly turn: number;
  readonly codes: ReadonlyMap<string, InView>;
}

/** Nothing was seen yet. */
export const NOTHING_SEEN: Rearm = { atMs: Number.NEGATIVE_INFINITY, turn: 0, codes: new Map() };

/**
 * Takes one look at the view (also an empty one) and says which codes count as scanned: a code counts once, and again
 * only after it left the view for {@link GONE_MS}, or for {@link GONE_AFTER_ANOTHER_MS} if another was read meanwhile.
 * `atMs` is any steady clock.
 */
export function look(
  before: Rearm,
  seen: readonly string[],
  atMs: number,
): { readonly state: Rearm; readonly fresh: readonly string[] } {
  const step = Math.min(Math.max(atMs - before.atMs, 0), LONGEST_STEP_MS);
  const codes = new Map<string, InView>();
  for (const [text, view] of before.codes) {
    const absentMs = view.absentMs + step;
    if (absentMs < (view.turn < before.turn ? GONE_AFTER_ANOTHER_MS : GONE_MS)) codes.set(text, { ...view, absentMs });
  }
  const fresh = [...new Set(seen)].filter((text) => !codes.has(text));
  const turn = fresh.length > 0 ? before.turn + 1 : before.turn;
  for (const text of seen) codes.set(text, { absentMs: 0, turn: codes.get(text)?.turn ?? turn });
  return { state: { atMs, turn, codes }, fresh };
}
