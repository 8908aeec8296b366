import type { ComponentChild } from 'preact';
import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type Company, type Id, isLeft, linesAt, type Problem, type RoundTask } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import type { RoundWanted } from '../model/rackRound.ts';
import { SecondSheet } from './SecondSheet.tsx';

/** Where the round that was begun is shown. */
export const RUN_PAGE = '/rounds/run';

interface Beginning {
  /** Begins a round, or asks first who is there. */
  begin(wanted: RoundWanted): void;
  readonly failed: Problem | null;
  /** The question who is there, while it is open. */
  readonly sheet: ComponentChild;
}

interface Asked {
  readonly wanted: RoundWanted;
  readonly company: Company;
}

/** Begins rounds from any screen: a place that is not opened alone asks for its people first (CARE-ALONE). */
export function useBegin(): Beginning {
  const { round, desk } = useApp();
  const { route } = useLocation();
  const [asked, ask] = useState<Asked | null>(null);
  const [failed, setFailed] = useState<Problem | null>(null);
  const others = useOthers(asked);

  async function go(wanted: RoundWanted): Promise<Problem | null> {
    // A stamp in hand would take the scans that are the round's own now.
    desk.take(null);
    const begun = await round.begin(wanted);
    setFailed(begun.ok ? null : begun.problem);
    if (!begun.ok) return begun.problem;
    ask(null);
    if (wanted.all !== true) route(RUN_PAGE);
    return null;
  }

  function begin(wanted: RoundWanted): void {
    const company = round.company(wanted);
    const isOn = round.open.value?.place === wanted.place && round.open.value.task === wanted.task;
    if (company.people > 1 && !isOn) ask({ wanted, company });
    else void go(wanted);
  }

  return {
    begin,
    failed,
    sheet: asked && (
      <SecondSheet
        company={asked.company}
        place={asked.wanted.place}
        go={(second) => go({ ...asked.wanted, second })}
        leaveOut={others ? () => go({ ...asked.wanted, without: homesOf(asked.company) }) : null}
        onClose={() => ask(null)}
      />
    ),
  };
}

/** Whether anything is left to do once those homes are left out. */
function useOthers(asked: Asked | null): boolean {
  const { site, clock } = useApp();
  if (asked === null) return false;
  const { place, task }: { place: Id; task: RoundTask } = asked.wanted;
  const lines = linesAt(site.facility.value, { place, task, without: homesOf(asked.company) }, clock.today.value);
  return lines.some(isLeft);
}

function homesOf({ reasons }: Company): readonly Id[] {
  return [...new Set(reasons.map((reason) => reason.home))];
}
