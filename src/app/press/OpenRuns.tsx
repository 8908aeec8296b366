import { useMemo, useState } from 'preact/hooks';
import { type EventDraft, type Problem, sayDay } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { sayPieces, WHAT_WORDS } from './batch.ts';
import { CameOut } from './CameOut.tsx';
import { runOnScreen } from './runOnScreen.ts';
import { cameOutDrafts, doneDraft, type OpenRun, openRuns, restFrom, sayPages, sayRun, thingsOn } from './runs.ts';
import { shown } from './shown.ts';

/** Runs that were begun and are not all on paper; nothing where there are none. */
export function OpenRuns() {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const today = clock.today.value;
  const all = useMemo(() => openRuns(facility, today), [facility, today]);
  const runs = all.filter(({ record }) => record.run !== runOnScreen.value);
  if (runs.length === 0) return null;
  return (
    <section class="open-runs" aria-labelledby="open-runs-title">
      <h2 id="open-runs-title">Not all on paper yet</h2>
      <ul>
        {runs.map((run) => (
          <OpenRunLine key={run.record.run} run={run} />
        ))}
      </ul>
    </section>
  );
}

function OpenRunLine({ run }: { readonly run: OpenRun }) {
  const { site, clock, strip } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  const [writing, setWriting] = useState<number | null>(null);
  const { record, what, progress } = run;
  const { pages, stale } = progress;
  async function write(drafts: readonly EventDraft[], name: string, said: string): Promise<void> {
    const written = await site.write(drafts);
    if (!written.ok) return setFailed(written.problem);
    strip.add({ subject: null, name, said, result: 'accepted', problem: null, events: written.value });
  }
  async function say(toPage: number): Promise<void> {
    const out = { after: record.printedTo, toPage, day: clock.today.value };
    const count = thingsOn(record, out.after, toPage);
    setWriting(count);
    await shown(count);
    await write(cameOutDrafts(record, out), sayPieces(what, count), 'printed');
    setWriting(null);
  }
  const end = () => void write([doneDraft(record, clock.today.value)], `Run of ${WHAT_WORDS[what].many}`, 'done with');
  return (
    <li>
      <p>
        <strong>{sayRun(run)}</strong>
      </p>
      <p class="soft">Laid out on {sayDay(record.day)}.</p>
      <div class="open-run-deeds">
        {pages === null ? null : (
          <a class="secondary" href={`/print?run=${record.run}`}>
            Print {sayPages(restFrom(record), record.pages)}
          </a>
        )}
        {stale.length === 0 ? null : (
          <a class="secondary" href={`/print?what=${what}&changed=${record.run}`}>
            Print what changed since
          </a>
        )}
        <button type="button" class="link" onClick={end}>
          Done with it
        </button>
      </div>
      <details class="came-out">
        <summary>It has come further</summary>
        <CameOut
          after={record.printedTo}
          pages={record.pages}
          writing={writing === null ? null : sayPieces(what, writing)}
          say={(toPage) => void say(toPage)}
        />
      </details>
      {failed === null ? null : <ProblemLine problem={failed} />}
    </li>
  );
}
