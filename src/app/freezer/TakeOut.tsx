import { useMemo } from 'preact/hooks';
import {
  addDays,
  type Day,
  sayDayShort,
  sayId,
  sayPrey,
  type ThawLine,
  type ThawTaking,
  thawTaking,
} from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import './freezer.css';
import { SessionPart } from './SessionPart.tsx';

interface TakeOutProps {
  /** The feeding day. */
  readonly day: Day;
  readonly lines: readonly ThawLine[];
}

/** Takes the whole thaw list out with one touch, oldest lot first; says from which lots, and what of it is left over. */
export function TakeOut({ day, lines }: TakeOutProps) {
  const { site, clock, freezer } = useApp();
  const facility = site.facility.value;
  const today = clock.today.value;
  const list = useMemo(() => lines.map(({ prey, thaw }) => ({ prey, count: thaw })), [lines]);
  const taking = useMemo(() => thawTaking(facility, list, day, today), [facility, list, day, today]);
  if (day !== today && day !== addDays(today, 1)) return null;
  const items = taking.flatMap(({ take }) => take).reduce((sum, one) => sum + one.count, 0);
  return (
    <div class="take-out">
      {items > 0 && (
        <>
          <button type="button" class="primary" onClick={() => void freezer.thaw(list, day)}>
            Take out {items} {items === 1 ? 'item' : 'items'}
            {day === today ? '' : ' for tomorrow'}
          </button>
          <ul class="take-from">
            {taking
              .filter(({ take }) => take.length > 0)
              .map((one) => (
                <li key={one.prey}>
                  <strong>{sayPrey(one.prey)}</strong> <From taking={one} />
                </li>
              ))}
          </ul>
        </>
      )}
      {taking
        .flatMap((one) => one.past)
        .map((lot) => (
          <p key={lot.id} class="lot-past">
            Not from <a href={`/lot/${lot.id}`}>{sayId(lot.id)}</a>: {lot.left} × {sayPrey(lot.prey)} passed their day
            on {sayDayShort(lot.lastDay)}.
          </p>
        ))}
      <SessionPart day={day} lines={lines} />
      <p class="take-links">
        <a href="/freezer">Freezer</a>
      </p>
    </div>
  );
}

function From({ taking }: { readonly taking: ThawTaking }) {
  return (
    <>
      {taking.take.map(({ lot, count }, at) => (
        <span key={lot}>
          {at === 0 ? '' : ', '}
          {count} from <a href={`/lot/${lot}`}>{sayId(lot)}</a>
        </span>
      ))}
    </>
  );
}
