import {
  type Day,
  type Facility,
  type FemaleSeason,
  holdsOn,
  type MaleTurn,
  maleRota,
  type NextPairing,
  nextPairings,
} from '../../core/index.ts';

/** A male's turn, and the visit that is proposed for it. */
export interface Turn extends MaleTurn {
  readonly next: NextPairing | null;
}

const WAITING: readonly FemaleSeason['stage'][] = ['paired', 'locked', 'follicles'];

/** Whether an animal waits for a vet’s word on a day: such a one is in no plan. */
export function isHeldForVet(animal: MaleTurn['animal'], on: Day): boolean {
  return holdsOn(animal, on).some(({ kind }) => kind === 'vet');
}

/** The males of a species in their rota; a female waits while she is not past it, alone, and on no vet hold. A planned one may have nothing written yet. */
export function turnsOf(facility: Facility, board: readonly FemaleSeason[], species: string, on: Day): readonly Turn[] {
  const rota = maleRota(facility, species, on);
  const seasons = new Map(board.map((one) => [one.animal.id, one]));
  const planned = new Set(rota.flatMap((turn) => turn.planned));
  const free = rota.filter(({ animal }) => !isHeldForVet(animal, on));
  const next = nextPairings(facility, free, (id) => {
    const female = facility.animals.get(id);
    if (female === undefined || female.left !== null || female.together.length > 0 || isHeldForVet(female, on))
      return false;
    const season = seasons.get(id);
    return season === undefined ? planned.has(id) : WAITING.includes(season.stage);
  });
  return rota.map((turn) => ({ ...turn, next: next.find(({ male }) => male === turn.animal.id) ?? null }));
}
