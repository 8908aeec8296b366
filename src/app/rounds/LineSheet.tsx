import './rackRound.css';
import { useSignal } from '@preact/signals';
import { isAtPlace, looksAgain, type RoundLine, sayTask, sayWhy } from '../../core/index.ts';
import { StateDot, sayDot } from '../look/StateDot.tsx';
import { useApp } from '../model/app.ts';
import { Sheet } from '../shell/Sheet.tsx';
import { TextLine } from '../treatment/TextLine.tsx';
import { dotOf, pageOf, placeWord, whoWord } from './taskWords.ts';
import { useDoLine } from './useDoLine.ts';

interface LineSheetProps {
  readonly line: RoundLine;
  readonly onClose: () => void;
}

/** One line of a round: why it stands as it does, who did it last, and what can be said of it today. */
export function LineSheet({ line, onClose }: LineSheetProps) {
  const { site } = useApp();
  const { task } = line;
  const dot = dotOf(line);
  return (
    <Sheet title={`${placeWord(line)} · ${whoWord(line)}`} onClose={onClose}>
      <p class="line-state">
        <StateDot state={dot} silent />
        <span>
          {sayTask(task)}, <strong>{sayState(line, sayDot(dot))}</strong>
        </span>
      </p>
      {line.words !== null && <p class="look-before">{line.words}</p>}
      <ul class="line-why because">
        {sayWhy(site.facility.value, line).map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      {task === 'treat' ? null : <Deeds line={line} onClose={onClose} />}
      {line.state !== 'done' && <Skip line={line} onClose={onClose} />}
      <p class="line-pages">
        <a class="secondary" href={pageOf(line)}>
          {isAtPlace(task) ? 'Open the place' : 'Open the record'}
        </a>
        {isAtPlace(task) &&
          line.animals.map((animal) => (
            <a key={animal.id} class="secondary" href={`/animal/${animal.id}`}>
              {animal.name ?? animal.number ?? 'The animal'}
            </a>
          ))}
      </p>
    </Sheet>
  );
}

function Deeds({ line, onClose }: LineSheetProps) {
  const { round } = useApp();
  const doLine = useDoLine();
  const close = (doing: Promise<unknown>): void => void doing.then(onClose);
  if (line.state !== 'done')
    return (
      <button type="button" class="primary" onClick={() => close(doLine(line))}>
        {sayDo(line)}
      </button>
    );
  if (line.task === 'weigh') return null;
  if (line.task === 'look')
    return (
      <button
        type="button"
        class="secondary"
        onClick={() => {
          onClose();
          round.look({ line, animal: null });
        }}
      >
        {looksAgain(line.animals).length > 0 ? 'Say how it is now' : 'Look again'}
      </button>
    );
  return (
    <button type="button" class="secondary" onClick={() => close(round.turn(line))}>
      {sayTurn(line)}
    </button>
  );
}

function sayTurn({ task, words }: RoundLine): string {
  if (task !== 'feeding') return 'Not done after all';
  return words === 'refused' ? 'It was taken after all' : 'It was refused';
}

/** Passing over a line on purpose, with the reason; one that was skipped can get its reason, or be opened again. */
function Skip({ line, onClose }: LineSheetProps) {
  const { round } = useApp();
  const why = useSignal(line.skip?.why ?? '');
  const close = (doing: Promise<void>): void => void doing.then(onClose);
  const isSkipped = line.state === 'skipped';
  return (
    <form
      class="line-skip"
      onSubmit={(event) => {
        event.preventDefault();
        close(round.skip(line, why.value));
      }}
    >
      <TextLine label={isSkipped ? 'Why it was skipped' : 'Not today, because'} value={why} most={200} />
      <div class="line-skip-do">
        <button type="submit" class="secondary">
          {isSkipped ? 'Write the reason' : 'Skip it today'}
        </button>
        {isSkipped && (
          <button type="button" class="link" onClick={() => close(round.reopen(line))}>
            Open it again
          </button>
        )}
      </div>
    </form>
  );
}

function sayState(line: RoundLine, dot: string): string {
  if (line.state === 'skipped') return `skipped by ${line.skip?.keeper ?? 'somebody'}`;
  if (line.state === 'done' && line.lastDone?.by) return `done today by ${line.lastDone.by}`;
  return line.state === 'held' ? 'not now' : dot;
}

function sayDo({ task, state }: RoundLine): string {
  if (state === 'skipped') return task === 'feeding' ? 'Fed as planned after all' : 'Done after all';
  if (task === 'feeding') return 'Fed as planned';
  if (task === 'weigh') return 'Weigh';
  return task === 'look' ? 'Say how it looks' : 'Done';
}
