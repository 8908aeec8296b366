import { type LocusTable, lociFor, type ProjectSheet, type ProjectStep, readTraits } from '../../core/index.ts';
import { ChanceFigure, sayExpected } from '../genetics/index.ts';
import { useApp } from '../model/app.ts';

type Route = ProjectSheet['routes'][number];

interface ProjectRoutesProps {
  readonly sheet: ProjectSheet;
  readonly species: string;
}

/** The routes, the fewest clutches first, with what is to be warned of before them and what they take for granted after. */
export function ProjectRoutes({ sheet, species }: ProjectRoutesProps) {
  const { site } = useApp();
  const { loci } = lociFor(site.facility.value, species);
  return (
    <div class="project-routes">
      <h2>Routes to {sayCode(sheet.code, loci)}</h2>
      {sheet.warnings.map(({ says, source, kind, locus }) => (
        <p key={`${locus}${says}`} class={`project-warning project-${kind}`}>
          <strong>{kind === 'lethal' ? 'Lethal' : 'Look at this'}:</strong> {says} <span class="soft">({source})</span>
        </p>
      ))}
      {sheet.already.length > 0 && (
        <p class="done-line">
          {sheet.already.length === 1 ? 'Here already' : 'Here already, all of them'}: {sheet.already.join(', ')}.
        </p>
      )}
      {sheet.routes.length > 1 && <Compared routes={sheet.routes} />}
      {sheet.routes.map((route) => (
        <OneRoute key={route.names.join()} route={route} loci={loci} />
      ))}
      <section class="project-assumed" aria-labelledby="project-assumed-title">
        <h3 id="project-assumed-title">Taken for granted</h3>
        <Assumed words={sheet.assumptions.slice(0, FIRST_ASSUMPTIONS)} />
        {sheet.assumptions.length > FIRST_ASSUMPTIONS && (
          <details>
            <summary>{sheet.assumptions.length - FIRST_ASSUMPTIONS} more, of single animals</summary>
            <Assumed words={sheet.assumptions.slice(FIRST_ASSUMPTIONS)} />
          </details>
        )}
        <p class="soft">Nothing here advises to breed an animal: the breeder decides, on welfare the vet.</p>
      </section>
    </div>
  );
}

/** What holds for every sheet comes first; then single animals follow, and in a large house they are many. */
const FIRST_ASSUMPTIONS = 8;

function Assumed({ words }: { readonly words: readonly string[] }) {
  return (
    <ul>
      {words.map((one) => (
        <li key={one}>{one}</li>
      ))}
    </ul>
  );
}

/** All routes against each other, a line each. */
function Compared({ routes }: { readonly routes: readonly Route[] }) {
  return (
    <table class="plan-table">
      <thead>
        <tr>
          <th scope="col">Route</th>
          <th scope="col">Steps</th>
          <th scope="col">Clutches</th>
          <th scope="col">Years</th>
        </tr>
      </thead>
      <tbody>
        {routes.map((route) => (
          <tr key={route.names.join()}>
            <th scope="row">{sayNames(route)}</th>
            <td>{route.steps.length}</td>
            <td>{sayExpected(route.clutches)}</td>
            <td>{sayYears(route.years)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function OneRoute({ route, loci }: { readonly route: Route; readonly loci: LocusTable }) {
  const title = `route-${route.names.join('-').replaceAll(/[^a-z]+/g, '-')}`;
  return (
    <section class="project-route" aria-labelledby={title}>
      <h3 id={title}>{sayNames(route)}</h3>
      <p>
        {sayExpected(route.clutches)} clutches and {sayYears(route.years)} years on average
      </p>
      <table class="plan-table project-steps">
        <thead>
          <tr>
            <th scope="col">
              <span class="unseen">Step</span>
            </th>
            <th scope="col">Of the young</th>
            <th scope="col">Clutches</th>
            <th scope="col">Hatched by year</th>
          </tr>
        </thead>
        {route.steps.map((step) => (
          <StepRows key={step.number} step={step} loci={loci} />
        ))}
      </table>
      <details>
        <summary>With whom, step by step</summary>
        <ol class="plan-left">
          {route.words.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ol>
      </details>
    </section>
  );
}

/** Who is paired takes a line of its own, since trade words are long and a phone is narrow. */
function StepRows({ step, loci }: { readonly step: ProjectStep; readonly loci: LocusTable }) {
  return (
    <tbody>
      <tr class="project-pair">
        <th scope="rowgroup" rowSpan={2}>
          {step.number}
        </th>
        <td colSpan={3}>
          {sayCode(step.sire, loci)} × {sayCode(step.dam, loci)}
          <small>{sayKept(step, loci)}</small>
        </td>
      </tr>
      <tr>
        <td>
          <ChanceFigure of={step.chance} />
        </td>
        <td>{sayExpected(step.clutches)}</td>
        <td>{sayYears(step.until)}</td>
      </tr>
    </tbody>
  );
}

function sayKept({ keeps, young }: ProjectStep, loci: LocusTable): string {
  const what = young === null ? 'the wanted animal' : sayCode(young, loci);
  switch (keeps) {
    case 'one':
      return `until ${what} has hatched`;
    case 'M':
      return `keep a male: ${what}`;
    case 'F':
      return `keep a female: ${what}`;
    case 'pair':
      return `keep a male and a female: ${what}`;
    default:
      return keeps satisfies never;
  }
}

/** A trait code in trade words. */
function sayCode(code: string, loci: LocusTable): string {
  const read = readTraits(code, loci, null);
  return read.ok ? read.value.words.long : code;
}

function sayNames({ names }: Route): string {
  const [first = '', ...more] = names;
  return [first.charAt(0).toUpperCase() + first.slice(1), ...more].join('; ');
}

function sayYears(years: number): string {
  return `≈ ${years.toFixed(1)}`;
}
