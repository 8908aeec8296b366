import { sayAnimal, sayId } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import type { Question } from '../model/deskWriting.ts';
import { Sheet } from './Sheet.tsx';

/** What needs asking, with two big answers. */
export function QuestionSheet() {
  const { desk } = useApp();
  const question = desk.question.value;
  if (question === null) return null;
  return <Asked key={question.animal.id + question.said} question={question} />;
}

function Asked({ question }: { readonly question: Question }) {
  const { animal, problem, said } = question;
  return (
    <Sheet title={sayAnimal(animal)} tone="asks" onClose={() => question.no()}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
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
