import { type Day, sayDay, sayDistance } from '../../core/index.ts';

/** `Tue 1 Dec, in 6 days`: the year only where it is another one; ISO on hover. */
export function SpokenDay({ day, today }: { readonly day: Day; readonly today: Day }) {
  const said = day.slice(0, 4) === today.slice(0, 4) ? sayDay(day).replace(/ \d{4}$/, '') : sayDay(day);
  return (
    <time dateTime={day} title={day}>
      {said}, {sayDistance(today, day)}
    </time>
  );
}
