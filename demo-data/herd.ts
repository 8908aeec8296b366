import {
  addDays,
  type Day,
  emptyFacility,
  geneticSex,
  type Id,
  lociFor,
  type Payload,
  readTraits,
} from '../src/core/index.ts';
import type { Body } from './body.ts';
import type { Chance } from './chance.ts';
import type { Diary } from './diary.ts';
import { KINDS, type Kind } from './kinds.ts';
import type { Log } from './log.ts';
import { freeHome, type Home, type HomeSize, type Room } from './room.ts';
import { foundersGenes, type Gene, traitCode } from './traits.ts';

/** An animal as the simulation knows it, beside what the log says of it. */
export interface Beast {
  readonly id: Id;
  readonly kind: Kind;
  readonly sex: 'male' | 'female';
  readonly body: Body;
  readonly genes: readonly Gene[];
  home: Home;
  /** The share of meals that it leaves although nothing is wrong. */
  readonly fussy: number;
  /** It takes nothing before this day. */
  fastsUntil: Day | null;
  /** Nobody needs to look at its feeding before this day. */
  look: Day;
  weighOn: Day;
  shedOn: Day;
  cleanOn: Day;
  /** What it is kept for. */
  use: 'breeding' | 'growing' | 'for-sale';
  inSeason: boolean;
}

/** The house with everything in it. */
export interface House {
  readonly log: Log;
  readonly chance: Chance;
  readonly diary: Diary;
  readonly room: Room;
  readonly herd: Map<Id, Beast>;
  /** Numbers given to animals so far, by year. */
  readonly numbers: Map<string, number>;
  /** Names that are still free. */
  readonly names: string[];
}

/** What is known of an animal that comes in. */
export interface Newcomer {
  readonly kind: Kind;
  readonly sex: 'male' | 'female';
  /** True where the keepers do not know the sex yet. */
  readonly unsexed?: boolean;
  readonly massG: number;
  readonly hatchedOn?: Day;
  readonly acquiredOn?: Day;
  readonly source?: string;
  readonly sire?: Id;
  readonly dam?: Id;
  readonly clutch?: Id;
  readonly genes?: readonly Gene[];
  readonly named: boolean;
  readonly sizes: readonly HomeSize[];
  readonly use: Beast['use'];
}

/** Writes an animal into the log with its tub, traits and weight; null if no tub is free. */
export function welcome(house: House, newcomer: Newcomer, year: string): Beast | null {
  const { log, chance, room, herd } = house;
  const home = freeHome(room, newcomer.sizes);
  if (home === null) return null;
  const id = log.mint();
  const { kind, sex, massG } = newcomer;
  const genes = newcomer.genes ?? foundersGenes(kind.species, chance);
  const beast: Beast = {
    id,
    kind,
    sex,
    genes,
    home,
    body: { massG, adultG: Math.max(adultMass(kind, sex, chance), massG * 1.02), lostG: 0 },
    fussy: kind.fussy * chance.between(0.3, 1.9),
    fastsUntil: null,
    look: log.day,
    weighOn: log.day,
    shedOn: addDays(log.day, chance.whole(6, kind.shedDays)),
    cleanOn: addDays(log.day, chance.whole(4, 30)),
    use: newcomer.use,
    inSeason: false,
  };
  herd.set(id, beast);
  writeArrival(house, beast, newcomer, year);
  return beast;
}

/** Moves an animal into another home. */
export function move(house: House, beast: Beast, home: Home): void {
  beast.home.lodgers.delete(beast.id);
  home.lodgers.add(beast.id);
  beast.home = home;
  house.log.write('animal-moved', [beast.id], { to: home.id });
}

/** An animal leaves: its tub is free. */
export function leave(house: House, beast: Beast, left: Payload<'animal-left'>): void {
  beast.home.lodgers.delete(beast.id);
  house.herd.delete(beast.id);
  house.log.write('animal-left', [beast.id], left);
}

/** The herd in walking order. */
export function inWalkingOrder(house: House): Beast[] {
  return [...house.herd.values()].sort((a, b) => a.home.walk - b.home.walk || (a.id < b.id ? -1 : 1));
}

/** What the scales show: a hundredth up or down, to the gram, or to a tenth for the small. */
export function scales(beast: Beast, chance: Chance): number {
  const shown = beast.body.massG * chance.between(0.992, 1.008);
  return shown < 50 ? Math.max(1, Math.round(shown * 10) / 10) : Math.round(shown);
}

function adultMass(kind: Kind, sex: 'male' | 'female', chance: Chance): number {
  const [low, high] = sex === 'male' ? kind.maleG : kind.femaleG;
  return chance.between(low, high);
}

function writeArrival(house: House, beast: Beast, newcomer: Newcomer, year: string): void {
  const { log, chance, names } = house;
  const { id, kind, home, genes } = beast;
  const name = newcomer.named ? names.shift() : undefined;
  const { hatchedOn, acquiredOn, source, sire, dam, clutch } = newcomer;
  const facts = Object.entries({ name, hatchedOn, acquiredOn, source, sire, dam, clutch });
  log.write('animal-added', [id], {
    species: kind.species,
    number: nextNumber(house, year),
    sex: newcomer.unsexed ? 'unsexed' : beast.sex,
    ...Object.fromEntries(facts.filter(([, value]) => value !== undefined)),
  });
  home.lodgers.add(id);
  log.write('animal-moved', [id], { to: home.id });
  if (kind.hasTraits) {
    const { loci } = lociFor(emptyFacility(), kind.species);
    const said = readTraits(traitCode(genes), loci, newcomer.unsexed ? null : geneticSex(beast.sex));
    if (!said.ok) throw new RangeError(said.problem.message);
    log.write('traits-set', [id], { code: said.value.code, words: said.value.words.long });
  }
  if (kind.plan !== null) log.write('feed-plan-set', [id], kind.plan);
  log.act(id, { do: 'weighed', weightG: scales(beast, chance) });
  beast.weighOn = addDays(log.day, chance.whole(5, 25));
}

function nextNumber(house: House, year: string): string {
  const next = (house.numbers.get(year) ?? 0) + 1;
  house.numbers.set(year, next);
  return `${year}-${String(next).padStart(3, '0')}`;
}

/** The kind of that species. */
export function kindOf(species: string): Kind {
  const found = KINDS.find((kind) => kind.species === species);
  if (found === undefined) throw new RangeError(`no kind ${species}`);
  return found;
}
