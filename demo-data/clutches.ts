import { addDays, type Id } from '../src/core/index.ts';
import { lose } from './body.ts';
import { type Beast, type House, scales, welcome } from './herd.ts';
import { printCard } from './paper.ts';
import { ORLA } from './staff.ts';
import { crossed } from './traits.ts';

/** Eggs by mass and days to hatching; ranges from the calendar of the facts. */
interface Laying {
  readonly gramsPerEgg: number;
  readonly eggs: readonly [number, number];
  readonly days: readonly [number, number];
}

const LAYING: Readonly<Record<string, Laying>> = {
  'Python regius': { gramsPerEgg: 310, eggs: [4, 11], days: [55, 60] },
  'Pantherophis guttatus': { gramsPerEgg: 36, eggs: [9, 21], days: [60, 65] },
  'Heterodon nasicus': { gramsPerEgg: 25, eggs: [5, 15], days: [52, 60] },
};
/** The share of her mass that laying takes (facts: 24 to 32 %), and the share of it that is eggs. */
const LAYING_LOSS = [0.245, 0.315] as const;
const EGGS_OF_LOSS = 0.92;
const CANDLED_AFTER_DAYS = 16;
/** A clutch of fewer young than this comes out in one day. */
const LEAST_IN_TWO = 3;

interface Clutch {
  readonly id: Id;
  readonly dam: Beast;
  readonly sire: Beast;
  readonly eggs: number;
}

/** She lays: the clutch goes to the incubator, she gets a new weight to be compared with. */
export function lay(house: House, dam: Beast, sire: Beast): void {
  const { log, chance, diary, herd } = house;
  const laying = LAYING[dam.kind.species];
  if (!herd.has(dam.id) || laying === undefined) return;
  const beforeG = dam.body.massG;
  const wanted = Math.round(beforeG / laying.gramsPerEgg + chance.between(-1.2, 1.2));
  const eggs = Math.min(Math.max(wanted, laying.eggs[0]), laying.eggs[1]);
  lose(dam.body, chance.between(LAYING_LOSS[0], LAYING_LOSS[1]));
  const clutch: Clutch = { id: log.mint(), dam, sire, eggs };
  const slugs = chance.happens(0.25) ? chance.whole(1, 2) : 0;
  const clutchG = Math.round((beforeG - dam.body.massG) * EGGS_OF_LOSS);
  const damG = scales(dam, chance);
  log.write('clutch-laid', [dam.id, clutch.id], { clutch: clutch.id, eggs, slugs, clutchG, damG, sire: sire.id });
  incubate(house, clutch);
  dam.look = log.day;
  dam.inSeason = false;
  dam.weighOn = addDays(log.day, 14);
  diary.on(addDays(log.day, CANDLED_AFTER_DAYS), () => candle(house, clutch, laying));
}

function incubate({ log, chance, room }: House, clutch: Clutch): void {
  const shelf = chance.whole(0, room.shelves.length - 1);
  const id = room.shelves[shelf];
  const words = `In incubator A, shelf ${shelf + 1}, box ${chance.whole(1, 8)}.`;
  log.write('note-made', id === undefined ? [clutch.id] : [clutch.id, id], { words });
}

function candle(house: House, clutch: Clutch, laying: Laying): void {
  const { log, chance, diary } = house;
  const states = Array.from({ length: clutch.eggs }, () => (chance.happens(0.93) ? 'good' : 'slug') as 'good' | 'slug');
  for (const [at, state] of states.entries()) log.write('egg-candled', [clutch.id], { egg: at + 1, state });
  const good = states.filter((state) => state === 'good').length;
  const rest = chance.whole(laying.days[0], laying.days[1]) - CANDLED_AFTER_DAYS;
  diary.on(addDays(log.day, rest), () => hatch(house, clutch, good));
}

function hatch(house: House, clutch: Clutch, good: number): void {
  const { chance } = house;
  const young = Array.from({ length: good }).filter(() => chance.happens(0.95)).length;
  // Some clutches take a second day.
  const later = young > LEAST_IN_TWO && chance.happens(0.4) ? chance.whole(1, 2) : 0;
  hatchSome(house, clutch, young - later, later === 0);
  if (later > 0) house.diary.on(addDays(house.log.day, 1), () => hatchSome(house, clutch, later, true));
}

function hatchSome(house: House, clutch: Clutch, young: number, isLast: boolean): void {
  house.log.write('clutch-hatched', [clutch.id], { hatched: young, ...(isLast && { last: true }) });
  for (let n = 0; n < young; n++) hatchOne(house, clutch);
}

function hatchOne(house: House, { id, dam, sire }: Clutch): void {
  const { log, chance, diary } = house;
  const [low, high] = dam.kind.hatchlingG;
  const newcomer = {
    kind: dam.kind,
    sex: chance.happens(0.5) ? ('male' as const) : ('female' as const),
    unsexed: true,
    massG: chance.between(low, high),
    hatchedOn: log.day,
    sire: sire.id,
    dam: dam.id,
    clutch: id,
    genes: crossed(sire.genes, dam.genes, chance),
    named: false,
    sizes: ['nursery', 'middle', 'large'] as const,
    use: chance.happens(0.2) ? ('growing' as const) : ('for-sale' as const),
  };
  const beast = welcome(house, newcomer, log.day.slice(2, 4));
  if (beast === null) throw new RangeError(`no tub for a hatchling on ${log.day}`);
  beast.shedOn = addDays(log.day, chance.whole(8, 13));
  printCard(house, beast);
  diary.on(addDays(log.day, chance.whole(14, 20)), () => {
    if (!house.herd.has(beast.id)) return;
    log.round(14, 30, ORLA);
    log.write('animal-sexed', [beast.id], { sex: beast.sex });
  });
}
