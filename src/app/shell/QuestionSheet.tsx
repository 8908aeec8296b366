import { sayAnimal } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { AskedSheet } from './AskedSheet.tsx';

/** What needs asking about an animal. */
export function QuestionSheet() {
  const question = useApp().desk.question.value;
  if (question === null) return null;
  const { animal, said } = question;
  return <AskedSheet key={animal.id + said} title={sayAnimal(animal)} id={animal.id} question={question} />;
}
