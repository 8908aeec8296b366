import {
  type Facility,
  geneticSex,
  type LocusTable,
  maturityOf,
  nameOf,
  ok,
  type ProjectAnimal,
  problem,
  type Result,
  readTraits,
  refuse,
  traitsOf,
  type WantedGene,
} from '../../core/index.ts';
import type { ProjectAsk } from '../workers/geneticsMessages.ts';
import { readFigure } from './planDraft.ts';

/** The form of a project sheet, figures as typed. */
export interface ProjectDraft {
  readonly species: string | null;
  readonly wanted: string;
  readonly clutch: string;
  readonly perYear: string;
  readonly femaleYears: string;
  readonly maleYears: string;
}

/** What a species' form begins with; years that nobody knows are left for the breeder to say. */
export function newProject(species: string | null, clutchEggs: number): ProjectDraft {
  const known = species === null ? null : maturityOf(species);
  return {
    species,
    wanted: '',
    clutch: `${Math.max(1, Math.round(clutchEggs))}`,
    perYear: '1',
    femaleYears: known === null ? '' : `${known.femaleYears}`,
    maleYears: known === null ? '' : `${known.maleYears}`,
  };
}

/** The wanted copies by allele. Errors: `project-case` for a possible het, those of {@link readTraits}; all at `wanted`. */
export function readWanted(text: string, loci: LocusTable): Result<readonly WantedGene[]> {
  const read = readTraits(text, loci, null);
  if (!read.ok) return { ok: false, problem: { ...read.problem, path: 'wanted' } };
  const counts = new Map<string, number>();
  for (const slot of read.value.traits.pieces.flatMap(({ copies }) => copies.flat())) {
    if (slot.kind === 'maybe')
      return refuse('project-case', { why: 'a possible het is no aim: write het, or the look itself' }, 'wanted');
    if (slot.kind === 'allele') counts.set(slot.symbol, (counts.get(slot.symbol) ?? 0) + 1);
  }
  if (counts.size === 0) return refuse('project-case', { why: 'wild type needs no project' }, 'wanted');
  return ok([...counts].map(([symbol, copies]) => ({ symbol, copies: copies === 1 ? 1 : 2 })));
}

/** The living animals of a species whose sex is known: an unsexed one is no promise of either sex. */
export function beginners(facility: Facility, species: string): readonly ProjectAnimal[] {
  return [...facility.animals.values()].flatMap((animal): readonly ProjectAnimal[] => {
    const sex = geneticSex(animal.sex);
    if (animal.species !== species || animal.left !== null || sex === null) return [];
    const said = traitsOf(facility, animal);
    const traits = said.ok ? said.value?.traits : undefined;
    return traits === undefined ? [] : [{ name: nameOf(facility, animal.id), traits, sex }];
  });
}

/** What the worker is asked. Errors at the field: `not-a-number`, and those of {@link readWanted}. */
export function readProject(
  facility: Facility,
  draft: ProjectDraft & { readonly species: string },
  loci: LocusTable,
): Result<ProjectAsk> {
  const wanted = readWanted(draft.wanted, loci);
  if (!wanted.ok) return wanted;
  const figures = new Map<keyof ProjectDraft, number>();
  for (const name of ['clutch', 'perYear', 'femaleYears', 'maleYears'] as const) {
    const read = readFigure(draft[name], name);
    if (!read.ok) return read;
    if (name === 'clutch' && !Number.isInteger(read.value))
      return { ok: false, problem: problem('not-a-number', { text: draft.clutch, example: '6' }, name) };
    figures.set(name, read.value);
  }
  const figure = (name: keyof ProjectDraft): number => figures.get(name) ?? 0;
  const known = maturityOf(draft.species);
  const [femaleYears, maleYears] = [figure('femaleYears'), figure('maleYears')];
  const isKnown = known?.femaleYears === femaleYears && known.maleYears === maleYears;
  return ok({
    ask: 'project',
    species: draft.species,
    siteRows: facility.site.loci.filter((row) => row.species === draft.species),
    project: {
      animals: beginners(facility, draft.species),
      wanted: wanted.value,
      clutch: figure('clutch'),
      clutchesPerYear: figure('perYear'),
      maturity: isKnown ? known : { femaleYears, maleYears, mark: 'C', source: 'entered by the breeder' },
    },
  });
}
