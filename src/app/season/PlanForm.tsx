import { useId, useState } from 'preact/hooks';
import { lociFor, type Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { GoalFields } from './GoalFields.tsx';
import { readGoal } from './goals.ts';
import type { Herd } from './herd.ts';
import type { PlanGoal } from './planCase.ts';
import { FIRST_GOAL, type GoalDraft, type PlanDraft, readFigure, readLimits } from './planDraft.ts';
import type { PlanAsked } from './usePlan.ts';
import type { UsualClutch } from './usualClutch.ts';
import { sayKind } from './words.ts';

interface PlanFormProps {
  readonly herds: readonly Herd[];
  readonly herd: Herd;
  readonly clutch: UsualClutch;
  readonly draft: PlanDraft;
  setDraft(draft: PlanDraft): void;
  readonly isWorking: boolean;
  begin(asked: PlanAsked): void;
}

/** What is wanted of the season and within which limits; nothing typed is lost by closing. */
export function PlanForm({ herds, herd, clutch, draft, setDraft, isWorking, begin }: PlanFormProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const [fault, setFault] = useState<Problem | null>(null);
  const { loci } = lociFor(facility, herd.species);
  const setGoal = (goal: GoalDraft): void =>
    setDraft({ ...draft, goals: draft.goals.map((one) => (one.key === goal.key ? goal : one)) });
  const set = (name: keyof PlanDraft, text: string): void => setDraft({ ...draft, [name]: text });
  const submit = (): void => {
    const asked = readAsked(draft, herd, clutch, loci);
    setFault(asked.ok ? null : asked.problem);
    if (asked.ok) begin(asked.value);
  };
  return (
    <form
      class="plan-form"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <Who herds={herds} herd={herd} choose={(species) => setDraft({ ...draft, species })} />
      <fieldset class="plan-goals">
        <legend>Goals</legend>
        {draft.goals.map((goal, at) => (
          <GoalFields
            key={goal.key}
            goal={goal}
            nth={at + 1}
            loci={loci}
            fault={fault?.path?.startsWith(`goals.${at}.`) ? fault : null}
            set={setGoal}
            drop={
              draft.goals.length === 1
                ? null
                : () => setDraft({ ...draft, goals: draft.goals.filter(({ key }) => key !== goal.key) })
            }
          />
        ))}
        <button
          type="button"
          class="link"
          onClick={() => {
            const key = Math.max(...draft.goals.map((one) => one.key)) + 1;
            setDraft({ ...draft, goals: [...draft.goals, { ...FIRST_GOAL, key }] });
          }}
        >
          Another goal
        </button>
      </fieldset>
      <Limits draft={draft} set={set} fault={fault} males={herd.sires.length} />
      <button type="submit" class="primary" disabled={isWorking}>
        Work out the plan
      </button>
    </form>
  );
}

interface WhoProps {
  readonly herds: readonly Herd[];
  readonly herd: Herd;
  choose(species: string): void;
}

/** Of which animals, and who is left out. */
function Who({ herds, herd, choose }: WhoProps) {
  const id = useId();
  return (
    <div class="plan-who">
      <p class="field">
        <label for={id}>Species</label>
        <select id={id} value={herd.species} onChange={(event) => choose(event.currentTarget.value)}>
          {herds.map(({ species }) => (
            <option key={species} value={species}>
              {sayKind(species)}
            </option>
          ))}
        </select>
      </p>
      <p>
        <strong>{herd.sires.length}</strong> {herd.sires.length === 1 ? 'male' : 'males'} and{' '}
        <strong>{herd.dams.length}</strong> {herd.dams.length === 1 ? 'female' : 'females'}
      </p>
      {herd.leftOut.length > 0 && (
        <details>
          <summary>Left out</summary>
          <ul class="plan-left">
            {herd.leftOut.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

interface LimitsProps {
  readonly draft: PlanDraft;
  readonly fault: Problem | null;
  readonly males: number;
  set(name: 'cap' | 'most' | 'kinship' | 'cost', text: string): void;
}

const LIMITS = [
  { name: 'cap', label: 'Females of a male, at most', hint: '' },
  { name: 'most', label: 'Males used, at most', hint: 'empty: any of them' },
  { name: 'kinship', label: 'Mean kinship of the pairs, at most', hint: '1/16 or 6.25 %; empty: no limit' },
  { name: 'cost', label: 'What each male used counts against the plan', hint: 'in the same unit as the value' },
] as const;

function Limits({ draft, fault, males, set }: LimitsProps) {
  const id = useId();
  return (
    <fieldset class="plan-limits">
      <legend>Limits</legend>
      {LIMITS.map(({ name, label, hint }) => {
        const own = fault?.path === name ? fault : null;
        return (
          <div key={name} class="field">
            <label for={`${id}${name}`}>{label}</label>
            <input
              id={`${id}${name}`}
              name={name}
              inputMode={name === 'kinship' ? 'text' : 'decimal'}
              autocomplete="off"
              value={draft[name]}
              placeholder={name === 'most' ? `${males}` : ''}
              aria-invalid={own !== null}
              aria-describedby={`${id}${name}-hint`}
              onInput={(event) => set(name, event.currentTarget.value)}
            />
            <small id={`${id}${name}-hint`}>{hint}</small>
            {own !== null && <ProblemLine problem={own} />}
          </div>
        );
      })}
    </fieldset>
  );
}

type Loci = Parameters<typeof readGoal>[1];

function readAsked(draft: PlanDraft, herd: Herd, clutch: UsualClutch, loci: Loci) {
  const goals: PlanGoal[] = [];
  for (const [at, goal] of draft.goals.entries()) {
    const look = readGoal(goal.text, loci);
    if (!look.ok) return { ok: false, problem: { ...look.problem, path: `goals.${at}.text` } } as const;
    const least = readFigure(goal.least.trim() === '' ? '0' : goal.least, `goals.${at}.least`);
    if (!least.ok) return least;
    const weight = readFigure(goal.weight, `goals.${at}.weight`);
    if (!weight.ok) return weight;
    goals.push({ ...look.value, leastEggs: least.value, weight: weight.value });
  }
  const limits = readLimits(draft, herd.sires.length);
  if (!limits.ok) return limits;
  const asked: PlanAsked = { herd, setting: { goals, limits: limits.value, eggs: clutch.eggs }, basis: clutch.basis };
  return { ok: true, value: asked } as const;
}
