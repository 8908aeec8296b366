import { useComputed, useSignal } from '@preact/signals';
import { useEffect, useId, useState } from 'preact/hooks';
import { lociFor, maturityOf, type Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { SaidBack, TraitText } from '../traits/index.ts';
import { readTyped } from '../traits/typed.ts';
import type { ProjectAsk } from '../workers/geneticsMessages.ts';
import { keepProject, keptProject } from './keepProject.ts';
import { newProject, type ProjectDraft, readProject } from './project.ts';
import { usualClutch } from './usualClutch.ts';
import { sayKind } from './words.ts';

interface ProjectFormProps {
  readonly species: readonly string[];
  begin(ask: ProjectAsk): void;
}

/** The wanted animal, and the figures that the routes are worked out with. */
export function ProjectForm({ species, begin }: ProjectFormProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const [draft, setDraft] = useState<ProjectDraft>(() => keptProject() ?? startWith(species[0] ?? ''));
  const [fault, setFault] = useState<Problem | null>(null);
  const chosen = species.find((one) => one === draft.species) ?? species[0] ?? '';
  const { loci } = lociFor(facility, chosen);
  const text = useSignal(draft.wanted);
  const typed = useComputed(() => readTyped(text.value, loci, null)).value;
  const asked = { ...draft, species: chosen, wanted: text.value };
  useEffect(() => keepProject(asked), [draft, text.value]);
  function startWith(one: string): ProjectDraft {
    return newProject(one, usualClutch(facility, one).eggs);
  }
  return (
    <form
      class="plan-form"
      onSubmit={(event) => {
        event.preventDefault();
        const read = readProject(facility, asked, loci);
        setFault(read.ok ? null : read.problem);
        if (read.ok) begin(read.value);
      }}
    >
      <SpeciesField species={species} chosen={chosen} choose={(one) => setDraft(startWith(one))} />
      <div class="project-wanted">
        <TraitText
          label="The wanted animal"
          text={text}
          typed={typed}
          name="wanted"
          hint="Such as Pastel Clown, Clown Piebald, or Super Pastel; or the code cln/cln; pie/pie."
        />
        {typed.kind === 'said' && <SaidBack said={typed.said} />}
        {fault?.path?.startsWith('wanted') && typed.kind !== 'fault' && <ProblemLine problem={fault} />}
      </div>
      <Figures species={chosen} draft={draft} fault={fault} set={setDraft} />
      <button type="submit" class="primary">
        Compare the routes
      </button>
    </form>
  );
}

interface SpeciesFieldProps {
  readonly species: readonly string[];
  readonly chosen: string;
  choose(species: string): void;
}

function SpeciesField({ species, chosen, choose }: SpeciesFieldProps) {
  const id = useId();
  return (
    <p class="field">
      <label for={id}>Species</label>
      <select id={id} value={chosen} onChange={(event) => choose(event.currentTarget.value)}>
        {species.map((one) => (
          <option key={one} value={one}>
            {sayKind(one)}
          </option>
        ))}
      </select>
    </p>
  );
}

const FIGURES = [
  { name: 'clutch', label: 'Hatchlings of a clutch' },
  { name: 'perYear', label: 'Clutches a year for a step' },
  { name: 'femaleYears', label: 'Years until a female is bred' },
  { name: 'maleYears', label: 'Years until a male is bred' },
] as const;

interface FiguresProps {
  readonly species: string;
  readonly draft: ProjectDraft;
  readonly fault: Problem | null;
  set(draft: ProjectDraft): void;
}

function Figures({ species, draft, fault, set }: FiguresProps) {
  const id = useId();
  const known = maturityOf(species);
  return (
    <fieldset class="plan-limits">
      <legend>Figures</legend>
      {FIGURES.map(({ name, label }) => {
        const own = fault?.path === name ? fault : null;
        return (
          <div key={name} class="field">
            <label for={`${id}${name}`}>{label}</label>
            <input
              id={`${id}${name}`}
              inputMode="decimal"
              autocomplete="off"
              value={draft[name]}
              aria-invalid={own !== null}
              onInput={(event) => set({ ...draft, [name]: event.currentTarget.value })}
            />
            {own !== null && <ProblemLine problem={own} />}
          </div>
        );
      })}
      <p class="soft because project-because">
        {known === null
          ? 'Nobody has written here when this species is bred for the first time: enter your own years.'
          : `Bred from ${known.femaleYears} years (females) and ${known.maleYears} (males): ${known.mark}, ${known.source} (BREED-MATURITY).`}
      </p>
    </fieldset>
  );
}
