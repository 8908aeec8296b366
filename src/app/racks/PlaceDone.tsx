import {
  type AnimalRecord,
  type Day,
  type Decision,
  deedDraft,
  lineFor,
  type PlaceRecord,
  type RoundLine,
  type RoundTask,
  sayTask,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { StateDot } from '../look/StateDot.tsx';
import { useApp } from '../model/app.ts';
import { dotOf } from '../rounds/taskWords.ts';
import { IntervalPart } from './IntervalPart.tsx';
import { useDeed } from './useDeed.tsx';

interface PlaceDoneProps {
  readonly place: PlaceRecord;
  readonly here: readonly AnimalRecord[];
}

type Deed = 'water' | 'spot' | 'clean' | 'look';
const DEEDS: readonly { readonly task: Deed; readonly words: string; readonly button: string }[] = [
  { task: 'look', words: 'Looked at', button: 'Looked well' },
  { task: 'water', words: 'Water', button: 'Water changed' },
  { task: 'spot', words: 'Spot cleaned', button: 'Spot cleaned' },
  { task: 'clean', words: 'Cleaned in full', button: 'Cleaned in full' },
];

/** What was done at a home, by whom and when it is due again, with one touch for each; the strip has the undo. */
export function PlaceDone({ place, here }: PlaceDoneProps) {
  const { clock } = useApp();
  const { log, failed, sheet } = useDeed(place);
  const day = clock.today.value;
  return (
    <section class="place-done" aria-labelledby="done-title">
      <h2 id="done-title">Done here</h2>
      <ul class="deed-lines">
        {DEEDS.filter(({ task }) => task !== 'look' || here.length > 0).map(({ task, words, button }) => (
          <li key={task} class="deed-line">
            <DeedState place={place} task={task} words={words} />
            <button
              type="button"
              class="secondary"
              onClick={() => log({ task, decide: () => decisionOf(task, { place, here, day }) })}
            >
              {button}
            </button>
            {task !== 'look' && <IntervalPart place={place} task={task} />}
          </li>
        ))}
      </ul>
      {failed === null ? null : <ProblemLine problem={failed} />}
      <p class="because">
        Move the animal out before a full clean; let a disinfectant stand as its label says, rinse and dry. Reptiles can
        carry Salmonella: wash hands afterwards, keep food away.
      </p>
      {sheet}
    </section>
  );
}

interface DeedStateProps {
  readonly place: PlaceRecord;
  readonly task: RoundTask;
  readonly words: string;
}

/** When it was done last, by whom, and how it stands today. */
export function DeedState({ place, task, words }: DeedStateProps) {
  const { site, clock } = useApp();
  const today = clock.today.value;
  const line = lineFor(site.facility.value, place.id, { task, on: today });
  const last = place.deeds[task]?.at(-1);
  return (
    <p class="deed-state">
      <strong>
        {line === null ? null : <StateDot state={dotOf(line)} />} {words}
      </strong>
      <span>
        {last === undefined ? (
          'never logged'
        ) : (
          <>
            <SpokenDay day={last.day} today={today} />, {last.keeper}
          </>
        )}
      </span>
      {line !== null && <span class="soft">{sayDue(line, today)}</span>}
    </p>
  );
}

function sayDue({ state, next, last, skip, problem, lastDone }: RoundLine, today: Day) {
  if (state === 'skipped') return `skipped today${skip?.why ? `: ${skip.why}` : ''}`;
  if (state === 'held') return problem?.message ?? 'not now';
  if (state === 'done') return 'done today';
  if (next === null || last === null || lastDone === null) return 'due';
  if (state === 'due' && last <= today) return 'due today';
  return (
    <>
      {DUE_WORDS[state]} <SpokenDay day={state === 'soon' ? next : last} today={today} />
    </>
  );
}

const DUE_WORDS = { soon: 'next', due: 'due, at the latest', overdue: 'overdue since' } as const;

interface At {
  readonly place: PlaceRecord;
  readonly here: readonly AnimalRecord[];
  readonly day: Day;
}

function decisionOf(task: Deed, { place, here, day }: At): Decision {
  // A look is about whoever is named first; at the place it says that all who live there are well.
  const others = task === 'look' ? [] : here.map((animal) => animal.id);
  return { kind: 'accepted', drafts: [deedDraft(task, [place.id, ...others], day)], said: sayTask(task) };
}
