import type { ComponentChild } from 'preact';
import { useState } from 'preact/hooks';
import {
  aloneFault,
  beginRound,
  type Decision,
  type Id,
  type PlaceRecord,
  type Problem,
  type RoundTask,
} from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { SecondSheet } from '../rounds/SecondSheet.tsx';

/** A deed that a keeper wants to log at a place. */
export interface WantedDeed {
  readonly task: RoundTask;
  readonly decide: () => Decision;
}

interface Doing {
  log(deed: WantedDeed): void;
  readonly failed: Problem | null;
  readonly sheet: ComponentChild;
}

/** Logs deeds at one place, each on the strip with its undo; a place that is not opened alone asks first who is there (CARE-ALONE). */
export function useDeed(place: PlaceRecord): Doing {
  const { site, clock, strip, signs, settings, round } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  const [asked, ask] = useState<WantedDeed | null>(null);
  const at = (task: RoundTask) => ({ place: place.id, task, keeper: settings.keeper.value });

  async function write({ task, decide }: WantedDeed, second: string): Promise<Problem | null> {
    const facility = site.facility.value;
    const fault = aloneFault(facility, { ...at(task), second });
    const decision = decide();
    const why = fault ?? (decision.kind === 'refused' ? decision.problem : null);
    if (why !== null || decision.kind === 'refused') return refused(why);
    const today = clock.today.value;
    const begun = beginRound(facility, { ...at(task), second }, { day: today, today, nowMs: clock.nowMs() });
    const before = second !== '' && begun.kind === 'accepted' ? begun.drafts : [];
    const written = await site.write([...before, ...decision.drafts]);
    if (!written.ok) return refused(written.problem);
    setFailed(null);
    ask(null);
    signs.give('accepted');
    const entry = { subject: place.id as Id, name: place.name, said: decision.said, problem: null };
    strip.add({ ...entry, result: 'accepted', events: written.value.slice(before.length) });
    return null;
  }

  function refused(why: Problem | null): Problem | null {
    signs.give('refused');
    if (asked === null) setFailed(why);
    return why;
  }

  /** A round that is open here has asked already. */
  function isAsked(task: RoundTask): boolean {
    const company = round.company({ place: place.id, task });
    return company.people > 1;
  }

  return {
    log(deed) {
      if (isAsked(deed.task)) ask(deed);
      else void write(deed, '');
    },
    failed,
    sheet: asked && (
      <SecondSheet
        company={round.company({ place: place.id, task: asked.task })}
        place={place.id}
        go={(second) => write(asked, second)}
        leaveOut={null}
        onClose={() => ask(null)}
      />
    ),
  };
}
