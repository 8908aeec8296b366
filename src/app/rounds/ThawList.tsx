import { useMemo, useState } from 'preact/hooks';
import { type Day, SPARE_SHARE, sayPrey, type ThawLine, thawList } from '../../core/index.ts';
import { TakeOut } from '../freezer/TakeOut.tsx';
import { Notch } from '../look/Notch.tsx';
import { useApp } from '../model/app.ts';

interface ThawListProps {
  readonly day: Day;
  readonly isToday: boolean;
  readonly begun: boolean;
}

/** What to take out of the freezer, before anything else of the round. */
export function ThawList({ day, isToday, begun }: ThawListProps) {
  // Once the round has begun the list has done its work; it stays a touch away.
  const { site } = useApp();
  const [open, setOpen] = useState(!begun);
  const facility = site.facility.value;
  const lines = useMemo(() => (open ? thawList(facility, day) : []), [open, facility, day]);
  return (
    <details class="thaw" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Thaw list</summary>
      {lines.length === 0 ? (
        <p class="soft">Nothing to take out{isToday ? ' any more today' : ' for that day'}.</p>
      ) : (
        <table>
          <thead>
            <tr>
              <th scope="col">Prey</th>
              <th scope="col">Needed</th>
              <th scope="col">Thaw</th>
              <th scope="col">In freezer</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <Row key={line.prey} line={line} />
            ))}
          </tbody>
        </table>
      )}
      <p class="because">
        Thaw is what is needed and {Math.round(SPARE_SHARE * 100)} % spare, rounded up (common practice, no source).
        Held animals are left out.
      </p>
      {open && <TakeOut day={day} lines={lines} />}
    </details>
  );
}

function Row({ line }: { readonly line: ThawLine }) {
  const short = line.inFreezer === null ? 0 : Math.max(0, line.thaw - line.inFreezer);
  return (
    <tr>
      <th scope="row">{sayPrey(line.prey)}</th>
      <td>{line.needed}</td>
      <td class="thaw-out">{line.thaw}</td>
      <td>
        {line.inFreezer ?? <span class="soft">no lot</span>}
        {short > 0 ? <Notch kind="look" word={`${short} short`} /> : null}
      </td>
    </tr>
  );
}
