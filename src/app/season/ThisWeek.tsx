import { type Day, type SeasonTask, sayAnimal, sayId } from '../../core/index.ts';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { StateDot } from '../look/StateDot.tsx';
import { useApp } from '../model/app.ts';
import { addressOf, isOfClutch, whyOf } from './calendarEntries.ts';
import { sayDayIn, sayMilestone } from './words.ts';

/** What to look for in these seven days, late ones first; a touch leads to the record or to the clutch. */
export function ThisWeek({ tasks }: { readonly tasks: readonly SeasonTask[] }) {
  const today = useApp().clock.today.value;
  return (
    <section class="season-week" aria-labelledby="season-week-title">
      <h2 id="season-week-title">This week</h2>
      {tasks.length === 0 ? (
        <p class="soft season-none">Nothing falls into these seven days.</p>
      ) : (
        <ul>
          {tasks.map((task) => (
            <li key={`${task.female.id}${task.window.step.to}`}>
              <Task task={task} today={today} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Task({ task, today }: { readonly task: SeasonTask; readonly today: Day }) {
  const { female, clutch, window, lateDays } = task;
  const state = lateDays > 0 ? 'overdue' : window.from <= today ? 'due' : 'soon';
  return (
    <>
      <a class="week-line" href={addressOf(task)}>
        <StateDot state={state} silent />
        <span>
          <strong>{sayMilestone(window.step.to)}</strong> <span class="week-who">{sayAnimal(female)}</span>
          {isOfClutch(task) && clutch !== null && <small>clutch {sayId(clutch.id)}</small>}
          <WhenLine task={task} today={today} />
        </span>
      </a>
      <details class="week-because">
        <summary aria-label={`Because: ${sayMilestone(window.step.to)} of ${sayAnimal(female)}`}>
          <span>because</span>
        </summary>
        <ul>
          {whyOf(window).map((why) => (
            <li key={why}>{why}</li>
          ))}
        </ul>
      </details>
    </>
  );
}

function WhenLine({ task, today }: { readonly task: SeasonTask; readonly today: Day }) {
  const { window, lateDays } = task;
  if (lateDays > 0)
    return (
      <small class="season-late">
        {lateDays} {lateDays === 1 ? 'day' : 'days'} late: expected until {sayDayIn(window.to, today)}
      </small>
    );
  const [word, day] = window.from <= today ? (['open until', window.to] as const) : (['from', window.from] as const);
  return (
    <small>
      {word} <SpokenDay day={day} today={today} />
    </small>
  );
}
