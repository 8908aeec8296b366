import type { Decision, EventDraft } from '../care/index.ts';
import type { Problem } from '../problems.ts';

/** Several doubts as one question: what is wrong of each, the gravest first, and what to do about that one. None: null. */
export function oneDoubt(doubts: readonly (Problem | null)[]): Problem | null {
  const all = doubts.filter((one) => one !== null);
  const [gravest] = all;
  return gravest === undefined ? null : { ...gravest, message: all.map((one) => one.message).join(' ') };
}

/** Accepted, or asked about where there are doubts. */
export function unlessDoubted(
  drafts: readonly EventDraft[],
  said: string,
  doubts: readonly (Problem | null)[],
): Exclude<Decision, { kind: 'refused' }> {
  const doubt = oneDoubt(doubts);
  return doubt === null ? { kind: 'accepted', drafts, said } : { kind: 'asks', problem: doubt, drafts, said };
}
