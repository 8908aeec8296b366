import { useEffect, useState } from 'preact/hooks';
import { clash, type LogEvent, nameOf, type Problem, problem, sayEvent } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

interface Aside {
  readonly id: string;
  readonly words: string;
  readonly problem: Problem;
}

/** What was set aside and waits for a person: entries whose id was taken, and those that the hub would not have. */
export function ParkedLines() {
  const { site } = useApp();
  const [aside, setAside] = useState<readonly Aside[]>([]);
  const revision = site.revision.value;
  useEffect(() => {
    const say = (event: LogEvent): string => {
      const about = event.subjects[0];
      if (about === undefined) return 'about the site';
      const name = (id: LogEvent['subjects'][number]): string => nameOf(site.facility.value, id);
      return `${name(about)}: ${sayEvent(event, name, about)}`;
    };
    void Promise.all([site.log.parked(), site.log.refused()]).then(
      ([parked, refused]) =>
        setAside([
          ...parked.map((event) => ({ id: `parked ${event.id}`, words: say(event), problem: clash(event.id) })),
          ...refused.map(({ id, code }) => ({
            id: `refused ${id}`,
            words: `The hub would not take entry ${id}`,
            problem: problem(code, { id }),
          })),
        ]),
      () => setAside([]),
    );
  }, [revision]);
  if (aside.length === 0) return <p class="soft">Nothing is set aside.</p>;
  return (
    <ul class="parked">
      {aside.map((one) => (
        <li key={one.id}>
          <strong>{one.words}</strong> {one.problem.message} {one.problem.remedy}
        </li>
      ))}
    </ul>
  );
}
