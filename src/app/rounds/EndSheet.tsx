import './rackRound.css';
import { useState } from 'preact/hooks';
import { type Problem, type RoundLine, type RoundSummary, type RoundTask, sayPrey } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { sayRound } from '../model/rackRound.ts';
import { Sheet } from '../shell/Sheet.tsx';
import { placeWord, ROUND_TITLES, whoWord } from './taskWords.ts';

/** What the round came to, to be confirmed: then it is ended and stands in the log. */
export function EndSheet({ onClose }: { readonly onClose: () => void }) {
  const { round } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  const open = round.open.value;
  const summary = round.summary();
  if (open === null || summary === null) return null;
  async function end(): Promise<void> {
    const ended = await round.end();
    setFailed(ended.ok ? null : ended.problem);
    if (ended.ok) onClose();
  }
  return (
    <Sheet title={`End: ${ROUND_TITLES[open.task].toLowerCase()}, ${open.name}`} onClose={onClose}>
      <dl class="round-sum" aria-label={`Summary of ${sayRound(open)}`}>
        {figuresOf(open.task, summary).map(([words, count]) => (
          <div key={words} class={count === 0 ? 'round-sum-none' : ''}>
            <dt>{words}</dt>
            <dd>{count}</dd>
          </div>
        ))}
      </dl>
      {open.second !== null && <p>With {open.second}.</p>}
      <Some title="Skipped" lines={summary.skipped} says={(line) => line.skip?.why ?? 'no reason written'} />
      <Some title="Look again" lines={summary.again} says={(line) => line.words?.replace(/^look again, /, '') ?? ''} />
      <Some
        title="Left, due all the same"
        lines={summary.left}
        says={(line) => (line.state === 'overdue' ? 'overdue' : 'due')}
      />
      {summary.used.length > 0 && (
        <p class="soft">
          Prey used: {summary.used.map(([prey, count]) => `${count} × ${sayPrey(prey)}`).join(', ')}. What was refused
          is thrown away, never frozen again.
        </p>
      )}
      {failed !== null && <ProblemLine problem={failed} />}
      <div class="answers">
        <button type="button" class="answer" onClick={onClose}>
          Go on with it
        </button>
        <button type="button" class="answer answer-yes" onClick={() => void end()}>
          Confirm and end
        </button>
      </div>
    </Sheet>
  );
}

function figuresOf(
  task: RoundTask,
  { done, refused, again, skipped, left }: RoundSummary,
): readonly (readonly [string, number])[] {
  const doneWord = { feeding: 'fed', weigh: 'weighed', treat: 'treated', look: 'looked at' }[task as string] ?? 'done';
  return [
    [doneWord, done],
    ...(task === 'feeding' ? [['refused', refused.length] as const] : []),
    ...(task === 'look' ? [['look again', again.length] as const] : []),
    ['skipped', skipped.length],
    ['left', left.length],
  ];
}

const FEW = 6;

interface SomeProps {
  readonly title: string;
  readonly lines: readonly RoundLine[];
  readonly says: (line: RoundLine) => string;
}

/** The lines that are no plain done, by name; many are counted. */
function Some({ title, lines, says }: SomeProps) {
  if (lines.length === 0) return null;
  return (
    <div class="round-some">
      <h3>{title}</h3>
      <ul>
        {lines.slice(0, FEW).map((line) => (
          <li key={line.of}>
            <span class="round-some-place">{placeWord(line)}</span> {whoWord(line)}{' '}
            <span class="soft">{says(line)}</span>
          </li>
        ))}
        {lines.length > FEW && <li class="soft">and {lines.length - FEW} more</li>}
      </ul>
    </div>
  );
}
