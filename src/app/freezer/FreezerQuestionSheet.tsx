import { useApp } from '../model/app.ts';
import { Sheet } from '../shell/Sheet.tsx';

/** What needs asking about prey, with two big answers. */
export function FreezerQuestionSheet() {
  const { freezer } = useApp();
  const question = freezer.question.value;
  if (question === null) return null;
  const { name, problem, said } = question;
  return (
    <Sheet key={name + said} title={name} tone="asks" onClose={() => question.no()}>
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
