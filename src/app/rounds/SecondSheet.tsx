import './rackRound.css';
import { useSignal } from '@preact/signals';
import { type Company, type Id, nameOf, namesIn, type Problem, sayPeople } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { Sheet } from '../shell/Sheet.tsx';
import { TextLine } from '../treatment/TextLine.tsx';

interface SecondSheetProps {
  readonly company: Company;
  readonly place: Id;
  /** Takes the names and gives what is wrong with them. */
  readonly go: (second: string) => Promise<Problem | null>;
  /** Goes on without those homes; null where nothing else is left. */
  readonly leaveOut: (() => Promise<Problem | null>) | null;
  readonly onClose: () => void;
}

const MOST_REASONS = 4;

/** Nobody opens this alone: why, what the site says, and who is there. */
export function SecondSheet({ company, place, go, leaveOut, onClose }: SecondSheetProps) {
  const { site, settings } = useApp();
  const second = useSignal('');
  const why = useSignal<Problem | null>(null);
  const facility = site.facility.value;
  const known = [...facility.keepers.values()].map((one) => one.name).filter((name) => name !== settings.keeper.value);
  const reasons = company.reasons.slice(0, MOST_REASONS);
  const more = company.reasons.length - reasons.length;
  async function tell(doing: Promise<Problem | null>): Promise<void> {
    why.value = await doing;
  }
  return (
    <Sheet title={`Not alone: ${nameOf(facility, place)}`} tone="asks" onClose={onClose}>
      <ul class="second-reasons">
        {reasons.map(({ words }) => (
          <li key={words}>{words}</li>
        ))}
        {more > 0 && <li>and {more} more</li>}
      </ul>
      {company.cautions.map((words) => (
        <p key={words} class="second-caution">
          {words}
        </p>
      ))}
      <Known names={known} second={second} />
      <TextLine label={sayWanted(company.people)} value={second} most={80} fault={why.value} />
      <div class="answers">
        <button type="button" class="answer" onClick={onClose}>
          Begin nothing
        </button>
        <button type="button" class="answer answer-yes" onClick={() => void tell(go(second.value))}>
          {second.value.trim() === '' ? 'Begin together' : `Begin with ${namesIn(second.value).join(', ')}`}
        </button>
      </div>
      {leaveOut !== null && (
        <button type="button" class="second-leave" onClick={() => void tell(leaveOut())}>
          Leave {new Set(company.reasons.map((one) => one.home)).size === 1 ? 'that one' : 'those'} out and walk the
          rest
        </button>
      )}
      {why.value?.path !== 'second' && why.value !== null && <ProblemLine problem={why.value} />}
    </Sheet>
  );
}

/** The names of the house at a touch; a second touch takes one out again. */
function Known({ names, second }: { readonly names: readonly string[]; readonly second: { value: string } }) {
  const chosen = namesIn(second.value);
  if (names.length === 0) return null;
  return (
    <fieldset class="second-known">
      <legend class="unseen">Who is with you</legend>
      {names.map((name) => (
        <button
          key={name}
          type="button"
          aria-pressed={chosen.includes(name)}
          onClick={() => {
            const others = chosen.filter((one) => one !== name);
            second.value = (chosen.includes(name) ? others : [...others, name]).join(', ');
          }}
        >
          {name}
        </button>
      ))}
    </fieldset>
  );
}

function sayWanted(people: number): string {
  return people === 2 ? 'Second person, who is there now' : `${sayPeople(people)} in all: the others’ names`;
}
