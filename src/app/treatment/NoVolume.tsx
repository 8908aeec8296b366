import type { AnimalRecord, Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';

interface NoVolumeProps {
  readonly animal: AnimalRecord;
  readonly problem: Problem;
}

/** Why no volume can be given, and where a weight is what is missing, the way to it. */
export function NoVolume({ animal, problem }: NoVolumeProps) {
  const { desk } = useApp();
  return (
    <div class="no-volume">
      <ProblemLine problem={problem} />
      {problem.code.startsWith('weight-') && (
        <button type="button" class="secondary" onClick={() => desk.weigh(animal.id)}>
          Weigh
        </button>
      )}
    </div>
  );
}
