import { useMemo } from 'preact/hooks';
import { type Day, type SessionLine, sayPrey, sessionOf, type ThawLine } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

interface SessionPartProps {
  readonly day: Day;
  /** What the animals of that day still wait for. */
  readonly lines: readonly ThawLine[];
}

/** What was thawed for a day: eaten, thrown away, left. What nobody waits for any more is thrown away with one touch. */
export function SessionPart({ day, lines }: SessionPartProps) {
  const { site, freezer } = useApp();
  const facility = site.facility.value;
  const session = useMemo(() => sessionOf(facility, day), [facility, day]);
  if (session.length === 0) return null;
  const left = session.reduce((sum, line) => sum + line.left, 0);
  const needed = lines.map(({ prey, needed: count }) => ({ prey, count }));
  return (
    <section class="session" aria-label="Thawed">
      <ul>
        {session.map((line) => (
          <li key={line.prey}>{sayLine(line)}</li>
        ))}
      </ul>
      {left > 0 && (
        <>
          <button type="button" class="secondary" onClick={() => void freezer.throwAway(day, needed)}>
            Throw away what is left: {left}
          </button>
          <p class="because">
            At the end of the session. Refused thawed prey is for the same session only, never refrozen (common
            practice, no source).
          </p>
        </>
      )}
    </section>
  );
}

function sayLine({ prey, used, eaten, thrown, left }: SessionLine) {
  const rest = [`${eaten} eaten`, ...(thrown > 0 ? [`${thrown} thrown away`] : []), `${left} left`];
  return (
    <>
      <strong>
        {used} × {sayPrey(prey)}
      </strong>{' '}
      thawed: {rest.join(', ')}
    </>
  );
}
