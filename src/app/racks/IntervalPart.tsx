import { useSignal } from '@preact/signals';
import {
  type Day,
  effectOf,
  type Interval,
  type IntervalEffect,
  intervalAt,
  type PlaceRecord,
  type Problem,
  parseDays,
  type RoundTask,
  sayDay,
  sayDistance,
  sayInterval,
  sayRange,
  setInterval,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { TextLine } from '../treatment/TextLine.tsx';

interface IntervalPartProps {
  readonly place: PlaceRecord;
  readonly task: RoundTask;
  /** What it is called where it stands without a deed beside it. */
  readonly words?: string;
}

/** How often a task is due here and where that comes from; behind a touch the keeper's own days, with their effect as they are typed. */
export function IntervalPart({ place, task, words }: IntervalPartProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const interval = intervalAt(facility, place.id, task);
  const own = place.intervals[task] ?? null;
  const said = interval === null ? sayNone(own) : sayShort(interval);
  return (
    <details class="interval">
      <summary>
        {words !== undefined && <strong>{words} </strong>}
        {said}
      </summary>
      {interval !== null && (
        <ul class="because">
          {sayInterval(facility, interval).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      <OwnDays place={place} task={task} own={own} />
    </details>
  );
}

/** A rack has no interval: each home in it has one, and the days that are set here hold for all. */
function sayNone(own: readonly [number, number] | null): string {
  return own === null ? 'no days set here' : `every ${sayRange(own)}, own`;
}

function sayShort({ everyDays, from }: Interval): string {
  return `every ${sayRange(everyDays)}, ${from}`;
}

interface OwnDaysProps extends IntervalPartProps {
  readonly own: readonly [number, number] | null;
}

function OwnDays({ place, task, own }: OwnDaysProps) {
  const { site, clock, strip, signs } = useApp();
  const typed = useSignal(own === null ? '' : own.join('-'));
  const failed = useSignal<Problem | null>(null);
  const today = clock.today.value;
  const facility = site.facility.value;
  const read = typed.value.trim() === '' ? null : parseDays(typed.value);
  const wanted = read?.ok ? read.value : null;
  const effect = read?.ok === false ? null : effectOf(facility, place, { task, everyDays: wanted, on: today });
  async function save(everyDays: readonly [number, number] | null): Promise<void> {
    const decision = setInterval(place, task, everyDays, today);
    const written = decision.kind === 'accepted' ? await site.write(decision.drafts) : null;
    failed.value = decision.kind === 'refused' ? decision.problem : written?.ok === false ? written.problem : null;
    signs.give(failed.value === null ? 'accepted' : 'refused');
    if (decision.kind !== 'accepted' || written?.ok !== true) return;
    const entry = { subject: place.id, name: place.name, said: decision.said, problem: null };
    strip.add({ ...entry, result: 'accepted', events: written.value });
    if (everyDays === null) typed.value = '';
  }
  return (
    <form
      class="own-days"
      onSubmit={(event) => {
        event.preventDefault();
        if (read?.ok === false) failed.value = read.problem;
        else void save(wanted);
      }}
    >
      <TextLine
        label="Own days, such as 3 or 2-3"
        value={typed}
        most={9}
        fault={failed.value ?? (read?.ok === false ? read.problem : null)}
      />
      <p class="own-effect" role="status">
        {effect === null ? '' : sayEffect(effect, today)}
      </p>
      <div class="own-do">
        <button type="submit" class="secondary">
          Save the days
        </button>
        {own !== null && (
          <button type="button" class="link" onClick={() => void save(null)}>
            Learn them again
          </button>
        )}
      </div>
      {failed.value?.code === 'storage-full' && <ProblemLine problem={failed.value} />}
    </form>
  );
}

/** What the typed days come to: for one home its next day, for many how many are due. */
function sayEffect({ before, after, first }: IntervalEffect, today: Day): string {
  if (after.all === 0) return 'With these days there is no round for it here.';
  if (after.all > 1)
    return `So ${after.left} of ${after.all} are due today, ${after.overdue} of them overdue; now ${before.left} and ${before.overdue}.`;
  const { state, next, last } = first.after ?? { state: 'soon', next: null, last: null };
  if (next === null || last === null) return '';
  const on = (day: Day): string => `${sayDay(day)}, ${sayDistance(today, day)}`;
  if (state === 'soon' || state === 'done') return `So it is next due ${on(next)}.`;
  return state === 'overdue' ? `So it is overdue since ${on(last)}.` : `So it is due, at the latest ${on(last)}.`;
}
