import { StateDot } from '../../look/StateDot.tsx';
import type { DoseLine } from './todayView.ts';

/** The day’s doses in three figures, each with its word and its dot. */
export function DoseFigures({ lines }: { readonly lines: readonly DoseLine[] }) {
  const of = (state: DoseLine['state']): number => lines.filter((line) => line.state === state).length;
  const figures = [
    ['left', 'due', of('left')],
    ['overdue', 'overdue', of('overdue')],
    ['done', 'fed', lines.reduce((sum, line) => sum + line.givenToday, 0)],
  ] as const;
  return (
    <dl class="dose-figures" aria-label="Doses today">
      {figures.map(([words, dot, count]) => (
        <div key={words}>
          <dt>
            <StateDot state={dot} silent /> {words}
          </dt>
          <dd>{count}</dd>
        </div>
      ))}
    </dl>
  );
}
