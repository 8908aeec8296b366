import { addDays, type Day } from '../src/core/index.ts';
import { SOURCES, sizesFor } from './founders.ts';
import { type Beast, type House, kindOf, leave, move, welcome } from './herd.ts';
import { printCard } from './paper.ts';
import { freeHome } from './room.ts';
import { VET } from './staff.ts';

/** Who came in after the start, and when. */
const ARRIVALS: readonly (readonly [day: string, species: string, massG: number])[] = [
  ['2025-07-08', 'Python regius', 780],
  ['2025-09-16', 'Heterodon nasicus', 95],
  ['2025-09-16', 'Heterodon nasicus', 130],
  ['2025-11-11', 'Boa imperator', 640],
  ['2026-01-20', 'Python regius', 1050],
  ['2026-03-10', 'Python regius', 520],
  ['2026-03-10', 'Pantherophis guttatus', 230],
  ['2026-05-19', 'Morelia spilota', 410],
  ['2026-09-22', 'Python regius', 690],
  ['2026-09-22', 'Python regius', 840],
  ['2026-10-20', 'Boa imperator', 520],
  ['2026-10-20', 'Xenopeltis unicolor', 260],
  ['2026-11-20', 'Python regius', 460],
];
/** Quarantine lasts 60 to 90 days at least (facts). */
const QUARANTINE_DAYS = 75;
/** What is sold has eaten so often without trouble. */
const MEALS_BEFORE_SALE = 6;
const MOST_A_WEEK = 14;

/** Writes the arrivals into the diary. */
export function planArrivals(house: House): void {
  for (const [day, species, massG] of ARRIVALS) house.diary.on(day as Day, () => arrive(house, species, massG));
}

/** Saturday: the young that feed well go, down to what the house can keep. */
export function sell(house: House, keeps: number): void {
  const { herd, chance } = house;
  const ready = chance.shuffled([...herd.values()].filter((beast) => isReady(house, beast)));
  const surplus = Math.min(MOST_A_WEEK, herd.size - keeps);
  const count = surplus > 0 ? surplus : chance.whole(0, 1);
  for (const beast of ready.slice(0, count)) leave(house, beast, { how: 'sold', ...chance.pick(BUYERS) });
}

/** Whom they went to, as far as a sale book has to say it; all invented. */
const BUYERS = [
  { note: 'Sold at the table.' },
  { to: 'a keeper who came by' },
  { to: 'Osier Lane Snakes', note: 'With papers.' },
  { to: 'a school’s animal room' },
] as const;

function isReady({ log }: House, beast: Beast): boolean {
  if (beast.use !== 'for-sale') return false;
  const animal = log.animal(beast.id);
  const eats = animal.mealsTaken >= MEALS_BEFORE_SALE && animal.offers.slice(-3).every((offer) => offer.taken);
  return eats && animal.holds.length === 0 && animal.opaqueOn === null && animal.regurgitations.length === 0;
}

function arrive(house: House, species: string, massG: number): void {
  const { log, chance, diary } = house;
  const newcomer = {
    kind: kindOf(species),
    sex: chance.happens(0.6) ? ('female' as const) : ('male' as const),
    massG,
    hatchedOn: addDays(log.day, -chance.whole(400, 1100)),
    acquiredOn: log.day,
    source: chance.pick(SOURCES),
    named: true,
    sizes: ['quarantine'] as const,
    use: 'growing' as const,
  };
  const beast = welcome(house, newcomer, log.day.slice(2, 4));
  if (beast === null) throw new RangeError('the quarantine rack is full');
  const until = addDays(log.day, QUARANTINE_DAYS);
  log.write('hold-placed', [beast.id], {
    reason: 'quarantine',
    words: 'Quarantine: own tools, last in the walk',
    until,
  });
  printCard(house, beast);
  diary.on(until, () => endQuarantine(house, beast));
}

function endQuarantine(house: House, beast: Beast): void {
  if (!house.herd.has(beast.id)) return;
  house.log.write('hold-lifted', [beast.id], { reason: 'quarantine', by: VET });
  const home = freeHome(house.room, sizesFor(beast.kind, beast.body.massG));
  if (home !== null) move(house, beast, home);
}
