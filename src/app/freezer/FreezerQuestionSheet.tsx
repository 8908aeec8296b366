import { useApp } from '../model/app.ts';
import { AskedSheet } from '../shell/AskedSheet.tsx';

/** What needs asking about prey. */
export function FreezerQuestionSheet() {
  const question = useApp().freezer.question.value;
  if (question === null) return null;
  return <AskedSheet key={question.name + question.said} title={question.name} question={question} />;
}
