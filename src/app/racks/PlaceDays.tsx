import { type PlaceRecord, sayTask, tasksAt } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { IntervalPart } from './IntervalPart.tsx';

/** The keeper's own days for all homes that stand in a rack or a room. */
export function PlaceDays({ place }: { readonly place: PlaceRecord }) {
  const { site } = useApp();
  const tasks = tasksAt(site.facility.value, place.id);
  if (tasks.length === 0) return null;
  return (
    <section class="place-days" aria-labelledby="days-title">
      <h2 id="days-title">Days for all in here</h2>
      <p class="soft">Without days of your own each home goes by its own log, and that by the default.</p>
      <ul class="deed-lines">
        {tasks.map((task) => (
          <li key={task}>
            <IntervalPart place={place} task={task} words={sayTask(task)} />
          </li>
        ))}
      </ul>
    </section>
  );
}
