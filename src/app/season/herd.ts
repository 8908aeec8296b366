import {
  type AnimalRecord,
  type Day,
  type Facility,
  type Id,
  lastWeight,
  nameOf,
  type Stage,
  sayGrams,
  seasonBoard,
  speciesOf,
} from '../../core/index.ts';
import { isHeldForVet } from './turns.ts';
import { sayStage } from './words.ts';

/** Who a season is planned with, and who is left out of it and why. */
export interface Herd {
  readonly species: string;
  readonly sires: readonly AnimalRecord[];
  readonly dams: readonly AnimalRecord[];
  /** In words, each reason once with how many or who. */
  readonly leftOut: readonly string[];
}

type Stages = ReadonlyMap<Id, Stage>;

function stagesOf(facility: Facility, on: Day): Stages {
  return new Map(seasonBoard(facility, on).map((one) => [one.animal.id, one.stage]));
}

/** She is past pairing from here on. */
const PAST: readonly Stage[] = ['ovulated', 'pre-lay shed', 'laid', 'born', 'hatched'];

/**
 * The living males and females of a species that are weighed and grown, wait for no vet's word and, as females, are not
 * past pairing this season. Grown is what the species' feed plan counts as adult: no advice to breed anybody.
 */
export function herdOf(facility: Facility, species: string, on: Day, stages: Stages = stagesOf(facility, on)): Herd {
  const least = speciesOf(species)?.adultFromG ?? 0;
  const [light, unweighed, vet, past]: AnimalRecord[][] = [[], [], [], []];
  const herd: { readonly sires: AnimalRecord[]; readonly dams: AnimalRecord[] } = { sires: [], dams: [] };
  for (const animal of facility.animals.values()) {
    if (animal.species !== species || animal.left !== null || animal.sex === 'unsexed') continue;
    const weight = lastWeight(animal);
    const stage = stages.get(animal.id);
    if (weight === null) unweighed?.push(animal);
    else if (weight.weightG < least) light?.push(animal);
    else if (isHeldForVet(animal, on)) vet?.push(animal);
    else if (stage !== undefined && PAST.includes(stage)) past?.push(animal);
    else (animal.sex === 'male' ? herd.sires : herd.dams).push(animal);
  }
  const names = (all: readonly AnimalRecord[] = []): string => all.map((one) => nameOf(facility, one.id)).join(', ');
  const pasts = past?.map((one) => `${names([one])} (${sayStage(stages.get(one.id) ?? 'resting')})`).join(', ');
  return {
    species,
    ...herd,
    leftOut: [
      ...said(light, `lighter than ${sayGrams(least)}, where the feed plan counts this species as adult`),
      ...said(unweighed, 'never weighed'),
      ...(vet?.length ? [`waiting for the vet’s word: ${names(vet)}`] : []),
      ...(pasts ? [`past pairing this season: ${pasts}`] : []),
    ],
  };
}

/** The species of which there is a grown male and a grown female to plan with, those with the most pairs first. */
export function plannable(facility: Facility, on: Day): readonly Herd[] {
  const stages = stagesOf(facility, on);
  const species = [...new Set([...facility.animals.values()].map((one) => one.species))];
  const pairs = ({ sires, dams }: Herd): number => sires.length * dams.length;
  return species
    .map((one) => herdOf(facility, one, on, stages))
    .filter((one) => pairs(one) > 0)
    .sort((a, b) => pairs(b) - pairs(a));
}

function said(all: readonly AnimalRecord[] | undefined, why: string): readonly string[] {
  return all === undefined || all.length === 0 ? [] : [`${all.length} ${why}`];
}
