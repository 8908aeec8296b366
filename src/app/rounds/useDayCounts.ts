import { useEffect, useState } from 'preact/hooks';
import { countsOfRound, type Day, ROUND_TASKS, type RoundCounts, type RoundTask, roundPlan } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { aheadOfUtcMs } from '../treatment/siteTime.ts';
import { countLines, type RoundLine } from './roundView.ts';

type Counts = ReadonlyMap<RoundTask, RoundCounts>;

const WAIT_MS = 300;

/**
 * The figures of every round of a day. Feeding comes from the lines that are on the screen; the others are counted one
 * after the other behind the picture, so that a touch on a line never waits for ten rounds.
 */
export function useDayCounts(feeding: readonly RoundLine[], day: Day): Counts {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const [counts, setCounts] = useState<Counts>(new Map());
  useEffect(() => {
    const others = ROUND_TASKS.filter((task) => task !== 'feeding');
    let at = 0;
    // While lines are touched one after the other, the figures of the other rounds can wait.
    let timer = setTimeout(next, counts.size === 0 ? 0 : WAIT_MS);
    function next(): void {
      const task = others[at++];
      if (task === undefined) return;
      const aheadMs = aheadOfUtcMs(clock.nowMs(), clock.timeZone.value);
      const found = countsOfRound(roundPlan(facility, { task, on: day, aheadMs }));
      setCounts((known) => new Map(known).set(task, found));
      timer = setTimeout(next, 0);
    }
    return () => clearTimeout(timer);
  }, [facility, day]);
  return new Map(counts).set('feeding', ofFeeding(feeding));
}

function ofFeeding(lines: readonly RoundLine[]): RoundCounts {
  const { feed, done, overdue, held, vet, skipped } = countLines(lines);
  return { all: lines.length, left: feed, overdue, done, skipped, held: held + vet };
}
