import { type Day, sayAnimal, sayDayShort, sayPrey } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { StateDot } from '../look/StateDot.tsx';
import { useApp } from '../model/app.ts';
import type { StripEntry } from '../model/strip.ts';
import { isStillToFeed, type RoundLine } from './roundView.ts';

interface RoundRowProps {
  readonly line: RoundLine;
  readonly today: Day;
  readonly readOnly: boolean;
}

/** One animal of the walk: the line opens its record, the square at its end logs it fed as planned. */
export function RoundRow({ line, today, readOnly }: RoundRowProps) {
  const { strip } = useApp();
  const { animal } = line.due;
  const entry = strip.entries.value.find((one) => one.subject === animal.id && !one.undone);
  return (
    <li class={`round-line round-${line.dot}`}>
      <a class="round-open" href={`/animal/${animal.id}`}>
        <StateDot state={line.dot} />
        <span class="round-place">{placeName(line)}</span>
        <span class="round-name">{sayAnimal(animal)}</span>
        <span class="round-prey">{sayMeal(line)}</span>
        <span class="round-day">
          <SayDue line={line} today={today} />
        </span>
      </a>
      {readOnly ? null : <RowEnd line={line} entry={entry} />}
      <HoldBand line={line} />
      {entry?.problem != null && entry.result === 'refused' ? <ProblemLine problem={entry.problem} /> : null}
    </li>
  );
}

function RowEnd({ line, entry }: { readonly line: RoundLine; readonly entry: StripEntry | undefined }) {
  const { desk } = useApp();
  const { animal } = line.due;
  const name = sayAnimal(animal);
  if (line.done !== null && entry !== undefined && entry.events.length > 0)
    return (
      <button type="button" class="row-end row-undo" aria-label={`Undo: ${name}`} onClick={() => void desk.undo(entry)}>
        Undo
      </button>
    );
  if (!isStillToFeed(line) || line.due.meal === null) return null;
  return (
    <button
      type="button"
      class="row-end row-fed"
      aria-label={`Fed as planned: ${name}`}
      onClick={() => void desk.act(animal.id, { do: 'fed-as-planned' })}
    >
      Fed
    </button>
  );
}

function placeName({ due }: RoundLine): string {
  return due.place?.split(' · ').at(-1) ?? '—';
}

function sayMeal({ due, done }: RoundLine): string {
  const last = due.animal.offers.at(-1);
  if (done !== null && last !== undefined) return `${done} ${last.count} × ${sayPrey(last.prey)}`;
  if (due.problem !== null) return due.problem.message;
  return due.meal === null ? 'not fed' : `${due.meal.count} × ${sayPrey(due.meal.prey)}`;
}

function SayDue({ line, today }: { readonly line: RoundLine; readonly today: Day }) {
  const { due, problem } = line.due;
  if (line.skip !== null) return <>skipped{line.skip.why === null ? '' : `: ${line.skip.why}`}</>;
  if (line.done !== null)
    return (
      <>
        {due?.next ? (
          <>
            next <SpokenDay day={due.next} today={today} />
          </>
        ) : null}
      </>
    );
  if (problem !== null) return <>{problem.remedy}</>;
  if (due === null || due.state === 'vet') return <>not without a vet’s word</>;
  if (due.next === null) return <>until further word</>;
  const since = due.state === 'overdue' && due.last !== null ? due.last : due.next;
  return (
    <>
      {due.state === 'overdue' ? 'overdue since ' : due.state === 'hold' ? 'then ' : 'due '}
      <SpokenDay day={since} today={today} />
    </>
  );
}

function HoldBand({ line }: { readonly line: RoundLine }) {
  const hold = line.due.due?.hold ?? null;
  if (hold === null) return null;
  const vet = line.due.due?.state === 'vet';
  const until = hold.until === null || hold.reason.includes('until') ? '' : `, until ${sayDayShort(hold.until)}`;
  return (
    <p class={vet ? 'hold-band hold-vet' : 'hold-band'}>
      <span>
        <strong>{vet ? 'Vet' : 'Hold'}</strong> {hold.reason}
        {until}
      </span>
    </p>
  );
}
