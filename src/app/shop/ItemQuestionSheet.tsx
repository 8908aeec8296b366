import { useApp } from '../model/app.ts';
import { AskedSheet } from '../shell/AskedSheet.tsx';

/** What needs asking about an item of the shop. */
export function ItemQuestionSheet() {
  const question = useApp().shelf.question.value;
  if (question === null) return null;
  const { item, said } = question;
  return <AskedSheet key={item.id + said} title={item.name} id={item.id} question={question} />;
}
