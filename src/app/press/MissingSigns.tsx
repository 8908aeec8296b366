import { problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';

/** The signs of a document that the type lacks, and how they stand on the paper. */
export function MissingSigns({ signs }: { readonly signs: readonly string[] }) {
  return signs.length === 0 ? null : <ProblemLine problem={problem('signs-as-numbers', { signs: signs.join(' ') })} />;
}
