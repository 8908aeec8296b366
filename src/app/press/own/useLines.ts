import { useState } from 'preact/hooks';
import type { Problem } from '../../../core/index.ts';

/** Which problems of a form are said: a line's own once it was left, and all of them once somebody tried to save. */
export interface LinesModel<F extends string> {
  leave(field: F): void;
  tried(): void;
  /** Nothing was typed yet. */
  anew(): void;
  fault(problems: readonly Problem[], field: F): Problem | null;
}

/** Nobody is told off in the middle of typing. */
export function useLines<F extends string>(): LinesModel<F> {
  const [left, setLeft] = useState<ReadonlySet<F>>(new Set());
  const [isTried, setTried] = useState(false);
  return {
    leave: (field) => setLeft((before) => new Set([...before, field])),
    tried: () => setTried(true),
    anew: () => {
      setLeft(new Set());
      setTried(false);
    },
    fault: (problems, field) =>
      isTried || left.has(field) ? (problems.find(({ path }) => path === field) ?? null) : null,
  };
}
