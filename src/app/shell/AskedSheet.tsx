import type { Id, Problem } from '../../core/index.ts';
import { sayId } from '../../core/index.ts';
import { Sheet } from './Sheet.tsx';

interface AskedSheetProps {
  /** Whom or what it is about. */
  readonly title: string;
  readonly id?: Id;
  readonly question: {
    readonly problem: Problem;
    readonly said: string;
    yes(): Promise<void>;
    no(): void;
  };
}

/** What needs asking before something is written, with two big answers. */
export function AskedSheet({ title, id, question }: AskedSheetProps) {
  const { problem, said } = question;
  return (
    <Sheet title={title} tone="asks" onClose={() => question.no()}>
      {id === undefined ? null : <p class="slide-sheet-id">{sayId(id)}</p>}
      <p class="slide-sheet-question">{problem.message}</p>
      <p>{problem.remedy}</p>
      <div class="answers">
        <button type="button" class="answer" onClick={() => question.no()}>
          No, write nothing
        </button>
        <button type="button" class="answer answer-yes" onClick={() => void question.yes()}>
          Yes, write <q>{said}</q>
        </button>
      </div>
    </Sheet>
  );
}
