import { sayId } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { Sheet } from '../shell/Sheet.tsx';

/** What needs asking about an item of the shop, with two big answers. */
export function ItemQuestionSheet() {
  const { shelf } = useApp();
  const question = shelf.question.value;
  if (question === null) return null;
  const { item, problem, said } = question;
  return (
    <Sheet key={item.id + said} title={item.name} tone="asks" onClose={() => question.no()}>
      <p class="slide-sheet-id">{sayId(item.id)}</p>
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
