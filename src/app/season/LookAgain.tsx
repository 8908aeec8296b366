import { useMemo, useState } from 'preact/hooks';
import { type Facility, nameOf, sayDayShort, sayId } from '../../core/index.ts';
import { Chance, useAsked } from '../genetics/index.ts';
import { Lens } from '../look/Lens.tsx';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import type { JudgedClutch } from '../workers/geneticsMessages.ts';
import { type ClutchFlag, clutchesToJudge, judgementOf, type OneIn, partFor, RATES } from './judging.ts';

/** The season’s clutches tested together, so that many clutches do not make false alarms; a flag is a reason to look again. */
export function LookAgain() {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const ids = useMemo(() => clutchesToJudge(facility, clock.today.value), [facility, clock.today.value]);
  const part = useMemo(() => partFor(facility, ids), [facility, ids]);
  const asked = useAsked(
    ids.length === 0 ? null : { ask: 'season-clutches', facility: part, clutches: ids },
    keyOf(part),
  );
  if (asked === null) return null;
  return (
    <section class="season-again" aria-labelledby="season-again-title" aria-busy={asked.at === 'working'}>
      <h2 id="season-again-title">Clutches to look at again</h2>
      {asked.at === 'failed' && <ProblemLine problem={asked.problem} />}
      {asked.at === 'working' && (
        <p class="soft" role="status">
          Testing the clutches{asked.progress === null ? '' : `: ${asked.progress.done} of ${asked.progress.of}`} …
        </p>
      )}
      {asked.at === 'done' && <Judged all={asked.value} />}
    </section>
  );
}

function Judged({ all }: { readonly all: readonly JudgedClutch[] }) {
  const facility = useApp().site.facility.value;
  const [oneIn, setOneIn] = useState<OneIn>(10);
  const made = judgementOf(all, oneIn);
  if (!made.ok) return <ProblemLine problem={made.problem} />;
  const { flags, tested, untested } = made.value;
  return (
    <>
      <Lens
        label="How many false flags among the flagged"
        chosen={`${oneIn}`}
        choose={(id) => setOneIn(RATES.find((rate) => `${rate}` === id) ?? 10)}
        choices={RATES.map((rate) => ({ id: `${rate}`, words: `1 in ${rate}` }))}
      />
      <p class="soft because">
        Of the clutches flagged by their numbers, at most 1 in {oneIn} is expected to be flagged by chance (Benjamini &
        Hochberg 1995, cited from memory). {sayTested(tested)} A flag is a reason to look again, never a finding.
      </p>
      {flags.length === 0 ? (
        <p class="season-none">Nothing to look at again.</p>
      ) : (
        <ul class="again-lines">
          {flags.map((flag) => (
            <Flag key={flag.judged.id} flag={flag} />
          ))}
        </ul>
      )}
      {untested.length > 0 && (
        <details>
          <summary>
            {untested.length} {untested.length === 1 ? 'clutch was' : 'clutches were'} not tested
          </summary>
          <ul class="again-untested">
            {untested.map(({ id, why }) => (
              <li key={id}>
                <a href={`/clutch/${id}`}>{clutchName(facility, id)}</a> <span class="soft">{why}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function sayTested(count: number): string {
  if (count === 0) return 'No clutch could be tested.';
  return count === 1 ? 'One clutch was tested.' : `${count} clutches were tested together.`;
}

function Flag({ flag }: { readonly flag: ClutchFlag }) {
  const facility = useApp().site.facility.value;
  const { judged, isHard, adjusted } = flag;
  return (
    <li class={isHard ? 'again-line again-hard' : 'again-line'}>
      <h3>{isHard ? 'Look at this first' : 'A reason to look again'}</h3>
      <p>
        <a href={`/clutch/${judged.id}`}>{clutchName(facility, judged.id)}</a>
      </p>
      <ul>
        {judged.noSire === 'none of these' && <li>No male that was with her can have given these young.</li>}
        {judged.noSire === 'more than one' && <li>No single male can have given all of them; several together can.</li>}
        {isHard && judged.noSire === null && <li>A look was seen that these parents, as written, cannot give.</li>}
        {adjusted !== null && judged.p !== null && (
          <li>
            Numbers as odd as these or odder come with <Chance of={judged.p} /> by chance; counted with the other
            clutches, <Chance of={adjusted} />.
          </li>
        )}
        {judged.withoutFather.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <p class="soft">Look at the young, the parents’ trait codes and who was with her, before anything is changed.</p>
    </li>
  );
}

function clutchName(facility: Facility, id: JudgedClutch['id']): string {
  const clutch = facility.clutches.get(id);
  if (clutch === undefined) return sayId(id);
  return `${nameOf(facility, clutch.dam)}, ${clutch.bears === 'eggs' ? 'laid' : 'born'} ${sayDayShort(clutch.laidOn)}`;
}

/** Says when something else is to be judged: records are made anew by events that change nothing here. */
function keyOf({ animals, clutches, site }: Facility): string {
  const of = [...animals.values()].map((one) => [one.id, one.sex, one.traits?.code, one.clutch, one.season.length]);
  return JSON.stringify([of, [...clutches.values()].map((one) => [one.id, one.sire, one.laidOn]), site.loci]);
}
