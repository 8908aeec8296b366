import type { Problem } from '../../core/index.ts';
import { Sheet } from '../shell/Sheet.tsx';

interface AskedSheetProps {
  readonly title: string;
  readonly doubt: Problem;
  yes(): void;
  no(): void;
}

/** A question before something is written, with two big answers. */
export function AskedSheet({ title, doubt, yes, no }: AskedSheetProps) {
  return (
    <Sheet title={title} tone="asks" onClose={no}>
      <Asked doubt={doubt} yes={yes} no={no} />
    </Sheet>
  );
}

/** The same within a sheet that is open already. */
export function Asked({ doubt, yes, no }: Omit<AskedSheetProps, 'title'>) {
  return (
    <>
      <p class="slide-sheet-question">{doubt.message}</p>
      <p>{doubt.remedy}</p>
      <div class="answers">
        <button type="button" class="answer" onClick={no}>
          No, write nothing
        </button>
        <button type="button" class="answer answer-yes" onClick={yes}>
          Yes, write it
        </button>
      </div>
    </>
  );
}
