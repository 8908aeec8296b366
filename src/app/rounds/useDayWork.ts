import { useEffect, useState } from 'preact/hooks';
import { type Day, type DayWork, dayWork, type LogEvent, type RoundTask } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

/** So many entries of the end of the log are read at once; a day of a large house has fewer. */
const PAGE = 2000;
/** A day is looked for so many pages back, and no further: what came in late from elsewhere may lie before it. */
const MOST_PAGES = 8;

type Work = ReadonlyMap<RoundTask, DayWork>;
const NO_WORK: Work = new Map();

/** What today's log says of each task: how many, by whom, how fast; read from the end of the device's own log. */
export function useDayWork(day: Day): Work {
  const { site } = useApp();
  const [work, setWork] = useState<{ readonly day: Day; readonly work: Work }>({ day, work: NO_WORK });
  const revision = site.revision.value;
  useEffect(() => {
    let isWanted = true;
    void eventsOf(day).then((events) => {
      if (isWanted) setWork({ day, work: dayWork(site.facility.value, events, day) });
    });
    return () => {
      isWanted = false;
    };
  }, [day, revision]);
  return work.day === day ? work.work : NO_WORK;

  async function eventsOf(wanted: Day): Promise<readonly LogEvent[]> {
    const head = await site.log.head();
    const found: LogEvent[] = [];
    for (let page = 1; page <= MOST_PAGES; page++) {
      const after = Math.max(0, head - page * PAGE);
      const { events } = await site.log.read(after, Math.min(PAGE, head - (page - 1) * PAGE - after));
      const own = events.filter((event) => event.day === wanted);
      found.push(...own);
      if (own.length === 0 || after === 0) break;
    }
    return found;
  }
}
