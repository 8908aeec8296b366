import type { Problem } from '../../core/index.ts';

/** What went wrong and what to do, at the spot where it happened. */
export function ProblemLine({ problem }: { readonly problem: Problem }) {
  return (
    <p class="problem-line" role="alert">
      <strong>{problem.message}</strong> {problem.remedy}
    </p>
  );
}
