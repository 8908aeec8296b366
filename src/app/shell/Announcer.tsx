import { useApp } from '../model/app.ts';

/** Says the last result to those who hear the page read. */
export function Announcer() {
  const { strip, desk } = useApp();
  const entry = strip.entries.value[0];
  const said = entry === undefined ? '' : `${entry.name}: ${entry.undone ? 'taken back, ' : ''}${entry.said}`;
  const why = entry?.problem ? ` ${entry.problem.message} ${entry.problem.remedy}` : '';
  const stamp = desk.stamp.value;
  return (
    <>
      <p class="unseen" role="status" aria-live="polite">
        {said}
        {why}
      </p>
      <p class="unseen" role="status" aria-live="polite">
        {stamp === null ? '' : `Stamp in hand: ${stamp.words}`}
      </p>
    </>
  );
}
