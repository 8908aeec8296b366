import {
  compare,
  type Fraction,
  type LocusTable,
  parseTraits,
  type Sex,
  type WelfareWord,
  welfareNotes,
} from '../genetics/index.ts';
import { ok, type Problem, type Result, refuse } from '../problems.ts';
import type { Mark } from '../stock/index.ts';
import {
  codeOf,
  type Doses,
  deathOf,
  dosesOf,
  type Gene,
  genesOf,
  isOpen,
  type ProjectAnimal,
  type WantedGene,
  wrong,
} from './projectGenes.ts';
import { type Aim, cheapest, crossTable, type Founders, type Goal, type Ground, type Rule } from './projectSearch.ts';
import { type ProjectStep, sayRoute, stepsOf } from './projectSteps.ts';

/** How many years until a young animal is bred for the first time. */
export interface Maturity {
  readonly femaleYears: number;
  readonly maleYears: number;
  readonly mark: Mark;
  readonly source: string;
}

/** A wanted animal, and what there is to begin with. */
export interface ProjectCase {
  readonly loci: LocusTable;
  readonly animals: readonly ProjectAnimal[];
  readonly wanted: readonly WantedGene[];
  /** Hatchlings of a clutch. */
  readonly clutch: number;
  readonly maturity: Maturity;
  /** Clutches a year that are laid for each step; 1 is one female that lays every year. */
  readonly clutchesPerYear: number;
}

/** One way to the wanted animal. */
export interface ProjectRoute {
  /** What sets it apart, such as `fewest clutches`; several where they come to the same. */
  readonly names: readonly string[];
  readonly steps: readonly ProjectStep[];
  /** Expected clutches of all steps. */
  readonly clutches: Fraction;
  /** Expected years until the wanted young hatches. */
  readonly years: number;
  readonly words: readonly string[];
}

/** The ways to a wanted animal, the fewest clutches first, and what the figures take for granted. */
export interface ProjectSheet {
  readonly code: string;
  readonly routes: readonly ProjectRoute[];
  /** Animals that are what is wanted already. */
  readonly already: readonly string[];
  readonly assumptions: readonly string[];
  /** What is told of the welfare of the wanted animal and of those kept on the way. */
  readonly warnings: readonly WelfareWord[];
}

const BALL_MATURITY: Maturity = { femaleYears: 3, maleYears: 1.5, mark: 'C', source: 'common practice, no source' };
/** More hatchlings than any clutch has. */
const MOST_CLUTCH = 100;
const MOST_YEARS = 50;

/** Rule BREED-MATURITY: when a species is first bred: ball pythons at about 3 years, males at 1 to 2; null where nobody says. */
export function maturityOf(species: string): Maturity | null {
  return species === 'Python regius' ? BALL_MATURITY : null;
}

/** Rule BREED-PROJECT: ways that are compared; each says which crosses it makes. */
const WAYS: readonly { readonly name: string; readonly aim: Aim; readonly rule: (genes: readonly Gene[]) => Rule }[] = [
  { name: 'fewest clutches', aim: 'clutches', rule: () => () => true },
  { name: 'soonest', aim: 'years', rule: () => () => true },
  { name: 'one line after another', aim: 'clutches', rule: () => oneAfterAnother },
  { name: 'lines made apart, then joined', aim: 'clutches', rule: () => apartThenJoined },
  { name: 'carriers of all, visuals last', aim: 'clutches', rule: carriersOnly },
];

/** Every cross adds one of the animals to begin with, or is one between siblings. */
const oneAfterAnother: Rule = ({ sire, dam, withFounder }) => withFounder || isSame(sire, dam);

/** Crosses join animals that have no wanted gene in common, or are between siblings. */
const apartThenJoined: Rule = ({ sire, dam }) =>
  isSame(sire, dam) || sire.every((dose, at) => dose === 0 || dam[at] === 0);

/** Whoever is kept on the way carries one copy of each at most, and the last cross is between two that carry all. */
function carriersOnly(genes: readonly Gene[]): Rule {
  return ({ sire, dam, young }) =>
    young === null ? genes.every((_gene, at) => sire[at] === 1 && dam[at] === 1) : young.every((dose) => dose <= 1);
}

/**
 * Ways to a wanted animal over several seasons, compared by expected clutches and years. Errors: `project-case` at its path;
 * `project-no-holder` and `project-no-way` where the animals to begin with do not lead there.
 */
export function projectSheet(project: ProjectCase): Result<ProjectSheet> {
  const fault = figureFault(project);
  if (fault !== null) return { ok: false, problem: fault };
  const genes = genesOf(project.loci, project.wanted);
  if ('code' in genes) return { ok: false, problem: genes };
  const stranger = project.animals.findIndex(({ traits }) => traits.species !== project.loci.species);
  if (stranger >= 0)
    return {
      ok: false,
      problem: wrong(`${project.animals[stranger]?.name} is of another species`, `animals.${stranger}`),
    };
  const usable = project.animals.flatMap((animal): readonly Usable[] => {
    const doses = dosesOf(genes, animal.traits);
    return doses === null ? [] : [{ animal, doses }];
  });
  const missing = genes.filter((_gene, at) => usable.every(({ doses }) => doses[at] === 0));
  if (missing.length > 0)
    return refuse('project-no-holder', { signs: missing.map(({ symbol }) => symbol).join(', ') }, 'animals');
  const routes = routesOf(project, genes, usable);
  const already = usable.filter(({ doses }) => genes.every(({ copies }, at) => (doses[at] ?? 0) >= copies));
  if (routes.length === 0 && already.length === 0) return refuse('project-no-way', {}, 'animals');
  const code = codeOf(
    genes,
    genes.map(({ copies }) => copies),
  );
  return ok({
    code,
    routes,
    already: already.map(({ animal }) => animal.name),
    assumptions: assumptionsOf(project, genes, usable),
    warnings: warningsOf(project.loci, [
      code,
      ...routes.flatMap(({ steps }) => steps.flatMap(({ young }) => young ?? [])),
    ]),
  });
}

/** Each note once, however many animals it is about. */
function warningsOf(loci: LocusTable, codes: readonly string[]): readonly WelfareWord[] {
  const words = [...new Set(codes)].flatMap((code) => {
    const traits = parseTraits(code, loci, null);
    return traits.ok ? welfareNotes(traits.value, loci) : [];
  });
  return [...new Map(words.map((word) => [`${word.locus} ${word.says}`, word])).values()];
}

interface Usable {
  readonly animal: ProjectAnimal;
  readonly doses: Doses;
}

function figureFault({ clutch, clutchesPerYear, maturity }: ProjectCase): Problem | null {
  if (!Number.isSafeInteger(clutch) || clutch < 1 || clutch > MOST_CLUTCH)
    return wrong(`a clutch of ${clutch}, and a whole number from 1 to ${MOST_CLUTCH} is wanted`, 'clutch');
  if (!(clutchesPerYear > 0 && clutchesPerYear <= MOST_CLUTCH))
    return wrong(`${clutchesPerYear} clutches a year, and more than 0 are wanted`, 'clutchesPerYear');
  for (const name of ['femaleYears', 'maleYears'] as const) {
    if (!(maturity[name] >= 0 && maturity[name] <= MOST_YEARS))
      return wrong(`${maturity[name]} years to maturity, and 0 to ${MOST_YEARS} are wanted`, `maturity.${name}`);
  }
  return null;
}

function routesOf(project: ProjectCase, genes: readonly Gene[], usable: readonly Usable[]): readonly ProjectRoute[] {
  const ground: Ground = {
    genes,
    crosses: crossTable(genes, project.clutch),
    founders: foundersOf(genes, usable),
    clutch: project.clutch,
    years: { M: project.maturity.maleYears, F: project.maturity.femaleYears, clutch: 1 / project.clutchesPerYear },
  };
  const namesOf = (doses: Doses, sex: Sex): string => holderNames(usable, doses, sex);
  const found = new Map<string, { names: string[]; goal: Goal }>();
  for (const { name, aim, rule } of WAYS) {
    const goal = cheapest(ground, rule(genes), aim);
    if (goal === null) continue;
    const key = stepsOf(ground, goal, namesOf)
      .steps.map(({ words }) => words)
      .join('\n');
    const same = found.get(key);
    if (same === undefined) found.set(key, { names: [name], goal });
    else same.names.push(name);
  }
  const routes = [...found.values()].map(({ names, goal }) => ({ names, ...stepsOf(ground, goal, namesOf) }));
  return routes
    .sort((a, b) => compare(a.clutches, b.clutches))
    .map((route) => ({ ...route, words: sayRoute(route.steps, route.clutches, route.years) }));
}

/** Animals that carry the same, together; those that carry nothing wanted, or what should not live, are of no use. */
function foundersOf(genes: readonly Gene[], usable: readonly Usable[]): readonly Founders[] {
  const kinds = new Map(usable.map(({ doses }) => [doses.join(''), doses]));
  return [...kinds.values()].flatMap((doses): readonly Founders[] => {
    const group = usable.filter((one) => isSame(one.doses, doses));
    if (doses.every((dose) => dose === 0) || deathOf(genes, doses) !== null) return [];
    const has = (sex: Sex): boolean => group.some(({ animal }) => animal.sex === sex || animal.sex === null);
    const sexes = (['M', 'F'] as const).filter(has);
    return [{ doses, sexes }];
  });
}

function holderNames(usable: readonly Usable[], doses: Doses, sex: Sex): string {
  const holders = usable.filter(
    (one) => isSame(one.doses, doses) && (one.animal.sex === sex || one.animal.sex === null),
  );
  return holders.map(({ animal }) => animal.name).join(' or ');
}

function isSame(a: Doses, b: Doses): boolean {
  return a.every((dose, at) => dose === b[at]);
}

function assumptionsOf(project: ProjectCase, genes: readonly Gene[], usable: readonly Usable[]): readonly string[] {
  const { maturity, clutch, clutchesPerYear, animals } = project;
  const left = animals.filter((animal) => !usable.some((one) => one.animal === animal));
  const open = usable.filter(({ animal }) => isOpen(genes, animal.traits));
  const deadly = genes.some(({ row }) => row.lethal.length > 0);
  return [
    `Every clutch has ${clutch} hatchlings, and ${clutchesPerYear} ${clutchesPerYear === 1 ? 'clutch is' : 'clutches are'} laid for a step each year.`,
    'Every young held back is the best of its clutch: only young whose looks and parents leave no doubt about what they carry are counted.',
    'Males and females hatch equally often, and genes are inherited apart (Mendel 1866); what one gene hides of another is not looked at.',
    `Males are bred at ${maturity.maleYears} years and females at ${maturity.femaleYears} (${maturity.mark}: ${maturity.source}).`,
    'Clutches and years are averages; a single project can take much longer. A step that two lines share is made once.',
    'Steps of one time share their animals: where a female serves two at once, have a second one like her, or count another year.',
    'Siblings and near kin are paired where a route says so; look at their kinship and at welfare before each pairing.',
    ...(deadly ? ['Eggs that are taken to die by the table of loci are not counted as hatchlings.'] : []),
    ...open.map(({ animal }) => `${animal.name} may carry more than is certain; only what is certain is counted.`),
    ...left.map(({ name }) => `${name} is left out: it has another allele in the place of a wanted one.`),
  ];
}
