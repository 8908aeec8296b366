import { useSignal } from '@preact/signals';
import { type Day, isLeft, type RoundLine, sayDay, sayDayShort, sayPrey } from '../../core/index.ts';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { StateDot } from '../look/StateDot.tsx';
import { useApp } from '../model/app.ts';
import { LineSheet } from './LineSheet.tsx';
import { DEED_NAMES, dotOf, placeWord, whoWord } from './taskWords.ts';
import { useDoLine } from './useDoLine.ts';

interface LineRowProps {
  readonly line: RoundLine;
  readonly today: Day;
  readonly readOnly: boolean;
}

/** One line of a round: a touch on it says why and more, the square at its end does it. */
export function LineRow({ line, today, readOnly }: LineRowProps) {
  const isOpen = useSignal(false);
  const dot = dotOf(line);
  return (
    <li class={`round-line round-${line.state === 'skipped' ? 'skipped' : dot}`}>
      <button
        type="button"
        class="round-open"
        aria-haspopup="dialog"
        onClick={() => {
          isOpen.value = true;
        }}
      >
        <StateDot state={dot} />
        <span class="round-place">{placeWord(line)}</span>
        <span class="round-name">{whoWord(line)}</span>
        <span class={line.task === 'feeding' ? 'round-prey' : 'round-prey round-last'}>{sayWhat(line, today)}</span>
        <span class="round-day">
          <SayWhen line={line} today={today} />
        </span>
      </button>
      {!readOnly && <RowEnd line={line} />}
      {isOpen.value && <LineSheet line={line} onClose={() => (isOpen.value = false)} />}
    </li>
  );
}

function RowEnd({ line }: { readonly line: RoundLine }) {
  const { strip, desk } = useApp();
  const doLine = useDoLine();
  const entry = strip.entries.value.find((one) => one.subject === line.of && !one.undone && one.events.length > 0);
  const name = `${placeWord(line)}, ${whoWord(line)}`;
  if ((line.state === 'done' || line.state === 'skipped') && entry !== undefined)
    return (
      <button type="button" class="row-end row-undo" aria-label={`Undo: ${name}`} onClick={() => void desk.undo(entry)}>
        Undo
      </button>
    );
  if (!isLeft(line) || (line.task === 'feeding' && line.meal === null)) return null;
  return (
    <button
      type="button"
      class="row-end row-fed"
      aria-label={`${DEED_NAMES[line.task]}: ${name}`}
      onClick={() => void doLine(line)}
    >
      {DEED_NAMES[line.task]}
    </button>
  );
}

function sayWhat(line: RoundLine, today: Day): string {
  const { task, meal, words, problem, lastDone } = line;
  if (words !== null) return words;
  if (task === 'feeding')
    return meal === null ? (problem?.message ?? 'not fed') : `${meal.count} × ${sayPrey(meal.prey)}`;
  if (problem !== null) return problem.message;
  if (lastDone === null) return 'never logged';
  const by = lastDone.by ? `, ${lastDone.by}` : '';
  return lastDone.day === today ? `done today${by}` : `last ${sayNear(lastDone.day, today)}${by}`;
}

/** `23 Nov`; the year only where it is another one. */
function sayNear(day: Day, today: Day): string {
  return day.slice(0, 4) === today.slice(0, 4) ? sayDayShort(day).replace(/ \d{4}$/, '') : sayDayShort(day);
}

/** `Thu 26 Nov`. */
function sayShortDay(day: Day, today: Day): string {
  return day.slice(0, 4) === today.slice(0, 4) ? sayDay(day).replace(/ \d{4}$/, '') : sayDay(day);
}

function SayWhen({ line, today }: { readonly line: RoundLine; readonly today: Day }) {
  const { state, next, last, skip } = line;
  if (state === 'skipped') return <>skipped{skip?.why ? `: ${skip.why}` : ''}</>;
  if (state === 'done')
    return <>{next === null || line.task === 'feeding' ? 'done today' : `next ${sayShortDay(next, today)}`}</>;
  if (state === 'held') return <>not now</>;
  if (next === null || last === null) return <>until further word</>;
  if (state === 'due') return <>{last > today ? `due, by ${sayShortDay(last, today)}` : 'due today'}</>;
  return (
    <>
      {state === 'overdue' ? 'overdue since ' : 'due '}
      <SpokenDay day={state === 'overdue' ? last : next} today={today} />
    </>
  );
}
