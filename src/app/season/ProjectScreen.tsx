import { useMemo, useState } from 'preact/hooks';
import '../look/parts.css';
import '../traits/traits.css';
import { useAsked } from '../genetics/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import type { ProjectAsk } from '../workers/geneticsMessages.ts';
import { ProjectForm } from './ProjectForm.tsx';
import './plan.css';
import './project.css';
import { ProjectRoutes } from './ProjectRoutes.tsx';

/** The way to a wanted animal over several seasons: routes compared by expected clutches and years. */
export function ProjectScreen() {
  const { site } = useApp();
  const facility = site.facility.value;
  const species = useMemo(() => speciesHere([...facility.animals.values()]), [facility]);
  const [ask, setAsk] = useState<ProjectAsk | null>(null);
  const asked = useAsked(ask, ask === null ? '' : JSON.stringify(ask));
  return (
    <section class="screen project" aria-labelledby="project-title">
      <header class="plan-head">
        <h1 id="project-title">Project sheet</h1>
        <nav class="plan-nav" aria-label="Season">
          <a href="/season">Season</a>
          <a href="/season/plan">Season plan</a>
        </nav>
      </header>
      {species.length === 0 ? (
        <p class="empty">
          There are no animals to begin with. <a href="/books">Add an animal in Books</a> and write its traits on its
          record.
        </p>
      ) : (
        <div class="planner">
          <ProjectForm species={species} begin={setAsk} />
          <div class="plan-outcome">
            {asked?.at === 'working' && (
              <p class="soft" role="status">
                Comparing the routes …
              </p>
            )}
            {asked?.at === 'failed' && <ProblemLine problem={asked.problem} />}
            {asked?.at === 'done' && ask !== null && <ProjectRoutes sheet={asked.value} species={ask.species} />}
            {asked === null && <HowTo />}
          </div>
        </div>
      )}
    </section>
  );
}

function HowTo() {
  return (
    <p class="soft project-how">
      Write the animal you want, such as Pastel Clown or Clown Piebald. Routes to it begin with the living animals of
      this site whose sex and traits are written, and are compared by how many clutches and years they take on average.
    </p>
  );
}

/** The species of the living, those with the most animals first. */
function speciesHere(animals: readonly { readonly species: string; readonly left: unknown }[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const one of animals) if (one.left === null) counts.set(one.species, (counts.get(one.species) ?? 0) + 1);
  return [...counts].sort(([, a], [, b]) => b - a).map(([species]) => species);
}
