import { addDays, type Day } from '../src/core/index.ts';
import { type Beast, type House, kindOf, move, type Newcomer, welcome } from './herd.ts';
import { KINDS, type Kind } from './kinds.ts';
import { freeHome, type HomeSize } from './room.ts';
import { KEEPERS, ORLA } from './staff.ts';
import { crossed } from './traits.ts';

/** Where animals came from; all invented. */
export const SOURCES: readonly string[] = [
  'Osier Lane Snakes',
  'Fenmoor reptile fair',
  'Gannet & Pike Reptiles',
  'private keeper, gift',
  'Marshgate rehoming',
  'Old Kiln Serpents',
];

type Age = 'adult' | 'grower' | 'young';

/** Brings in, over the first days, everything that already lived here when the site began its log. */
export function bringIn(house: House, kinds: readonly Kind[]): void {
  for (const [at, kind] of kinds.entries()) {
    house.log.round(9 + at, 0, KEEPERS[at % KEEPERS.length] ?? ORLA);
    const { females, males, growers, young } = kind.start;
    const adults = [...times(females, 'female' as const), ...times(males, 'male' as const)];
    for (const sex of adults) settle(house, kind, sex, 'adult');
    for (let n = 0; n < growers; n++) settle(house, kind, anySex(house), 'grower');
    for (let n = 0; n < young; n++) settle(house, kind, anySex(house), 'young');
  }
}

/** In which homes an animal of that mass belongs, the best first. */
export function sizesFor(kind: Kind, massG: number): readonly HomeSize[] {
  if (massG >= kind.largeFromG) return ['large', 'middle'];
  return massG >= kind.middleFromG ? ['middle', 'nursery'] : ['nursery', 'middle'];
}

/** Puts the show animals into the exhibits: two pairs live together on purpose. */
export function fillExhibits(house: House): void {
  for (const [species, count] of EXHIBITED) {
    const home = freeHome(house.room, ['exhibit']);
    const chosen = [...house.herd.values()].filter((beast) => beast.kind.species === species && isShown(beast));
    const guests = count === 2 ? onePair(chosen) : chosen.slice(0, 1);
    if (home !== null) for (const beast of guests) move(house, beast, home);
  }
}

/** Flags: two people for the giants, and what the house keeps for itself. */
export function flagAnimals(house: House): void {
  for (const beast of house.herd.values()) {
    if (beast.kind.species === 'Malayopython reticulatus' && beast.use === 'breeding')
      house.log.write('animal-flagged', [beast.id], { flags: ['two-people', 'not-for-sale'] });
    else if (beast.use === 'growing' && house.chance.happens(0.08))
      house.log.write('animal-flagged', [beast.id], { flags: ['not-for-sale'] });
  }
}

const EXHIBITED: readonly (readonly [species: string, count: 1 | 2])[] = [
  ['Malayopython reticulatus', 1],
  ['Malayopython reticulatus', 1],
  ['Morelia spilota', 2],
  ['Epicrates cenchria', 2],
  ['Boa imperator', 1],
  ['Lampropeltis californiae', 1],
];

function isShown(beast: Beast): boolean {
  return beast.use === 'breeding' && beast.home.size !== 'exhibit';
}

function onePair(beasts: readonly Beast[]): Beast[] {
  const [male, female] = (['male', 'female'] as const).map((sex) => beasts.find((beast) => beast.sex === sex));
  return [male, female].filter((beast) => beast !== undefined);
}

function settle(house: House, kind: Kind, sex: 'male' | 'female', age: Age): void {
  const massG = foundingMass(house, kind, sex, age);
  const origin = age === 'adult' ? bought(house, age) : bredHereOrBought(house, kind, age);
  const newcomer: Newcomer = {
    kind,
    sex,
    massG,
    ...origin,
    named: age === 'adult',
    sizes: sizesFor(kind, massG),
    use: age === 'adult' ? 'breeding' : age === 'grower' ? 'growing' : 'for-sale',
  };
  const beast = welcome(house, newcomer, (origin.hatchedOn ?? house.log.day).slice(2, 4));
  if (beast === null) throw new RangeError(`no tub for a ${kind.species}`);
  if (kind.species === 'Python regius' && age === 'adult' && house.chance.happens(0.06))
    house.log.write('feed-plan-set', [beast.id], { prey: 'mouse-adult', note: 'Takes mice only.' });
}

function foundingMass({ chance }: House, kind: Kind, sex: 'male' | 'female', age: Age): number {
  const [low, high] = sex === 'male' ? kind.maleG : kind.femaleG;
  if (age === 'adult') return chance.between(low, high) * 0.94;
  if (age === 'young') return chance.between(kind.hatchlingG[0] * 2, kind.hatchlingG[1] * 3);
  return chance.between(kind.middleFromG * 1.05, Math.max(kind.middleFromG * 1.4, low * 0.6));
}

function bought({ chance, log }: House, age: Age): Pick<Newcomer, 'hatchedOn' | 'acquiredOn' | 'source'> {
  const years = age === 'adult' ? chance.whole(4, 8) : chance.whole(1, 2);
  const hatchedOn = addDays(log.day, -365 * years + chance.whole(40, 130));
  const acquiredOn = addDays(hatchedOn, chance.whole(70, 400));
  const latest = addDays(log.day, -chance.whole(60, 200));
  const late = acquiredOn > latest;
  return { hatchedOn, acquiredOn: late ? latest : acquiredOn, source: chance.pick(SOURCES) };
}

type Origin = Pick<Newcomer, 'hatchedOn' | 'acquiredOn' | 'source' | 'sire' | 'dam' | 'genes'>;

function bredHereOrBought(house: House, kind: Kind, age: Age): Origin {
  const { chance, log, herd } = house;
  if (!chance.happens(0.7)) return bought(house, age);
  const adults = [...herd.values()].filter((beast) => beast.kind === kind && beast.use === 'breeding');
  const sire = chance.pick(adults.filter((beast) => beast.sex === 'male'));
  const dam = chance.pick(adults.filter((beast) => beast.sex === 'female'));
  const back = age === 'young' ? -chance.whole(255, 310) : -chance.whole(600, 960);
  const hatchedOn: Day = addDays(log.day, back);
  return { hatchedOn, sire: sire.id, dam: dam.id, genes: crossed(sire.genes, dam.genes, chance) };
}

function anySex({ chance }: House): 'male' | 'female' {
  return chance.happens(0.5) ? 'male' : 'female';
}

function times<T>(count: number, value: T): T[] {
  return Array.from({ length: count }, () => value);
}

/** The kinds in the order in which the house took stock of them. */
export const STOCKTAKING: readonly (readonly Kind[])[] = [
  [kindOf('Python regius')],
  [kindOf('Pantherophis guttatus'), kindOf('Boa imperator')],
  KINDS.filter(({ species }) => !['Python regius', 'Pantherophis guttatus', 'Boa imperator'].includes(species)),
];
