import { addDays, type Day, type SiteEvent, weekday } from '../src/core/index.ts';
import { liveADay } from './body.ts';
import { Chance } from './chance.ts';
import { Diary } from './diary.ts';
import { feedRound } from './feeding.ts';
import { bringIn, fillExhibits, flagAnimals, STOCKTAKING } from './founders.ts';
import { Freezer } from './freezer.ts';
import type { House } from './herd.ts';
import { fileIdentity } from './identity.ts';
import { planIncidents } from './incidents.ts';
import { Log } from './log.ts';
import { NAMES } from './names.ts';
import { printRun } from './paper.ts';
import { build } from './room.ts';
import { DAYS_SET_ON, Rounds } from './rounds.ts';
import { carryOn, planSeason } from './season.ts';
import { Shop } from './shop.ts';
import { measureHouse } from './sizes.ts';
import { ORLA, open } from './staff.ts';
import { planArrivals, sell } from './trade.ts';
import { treatTwo } from './treatments.ts';
import { cleanRound, moveUp, shedRound, waterRound } from './upkeep.ts';

/** The day on which the demo opens: the log ends the evening before. */
export const DEMO_TODAY = '2026-11-25' as Day;
/** The host printed in the codes of the demo's cards; `.example` is reserved for such use (RFC 2606). */
export const DEMO_HOST = 'QUILLMARSH.EXAMPLE';
/** The invented site of the demo. */
export const DEMO_SITE = 'Quillmarsh Snake House';

const FIRST_DAY = '2025-05-19' as Day;
const SEED = 20_261_125;
/** From then on cards are printed each Tuesday, before that once a month. */
const WEEKLY_PRINTS_FROM = '2026-10-13' as Day;
/** The last run ended with the last sheet: so many cards were left over. */
const LEFT_OVER = 43;
/** How many animals the house keeps; in the second year the nursery was added to. */
const KEEPS = { before: 408, from: '2026-07-01', after: 527 } as const;

/** The whole log of the demo site, in order of time; every call gives the same events. */
export function demoEvents(): SiteEvent[] {
  const chance = new Chance(SEED);
  const log = new Log(chance, FIRST_DAY, ORLA);
  open(log, { name: DEMO_SITE, host: DEMO_HOST });
  const house: House = {
    log,
    chance,
    diary: new Diary(),
    room: build(log),
    herd: new Map(),
    numbers: new Map(),
    names: chance.shuffled(NAMES),
  };
  const rounds = new Rounds();
  rounds.furnish(house);
  const freezer = new Freezer(log);
  const shop = new Shop();
  freezer.fill();
  planArrivals(house);
  planIncidents(house);
  for (let day = FIRST_DAY; day < DEMO_TODAY; day = addDays(day, 1)) live(house, { freezer, rounds, shop }, day);
  shop.offer(house);
  fileIdentity(house);
  measureHouse(house);
  treatTwo(house, DEMO_TODAY);
  return log.events;
}

interface Helpers {
  readonly freezer: Freezer;
  readonly rounds: Rounds;
  readonly shop: Shop;
}

function live(house: House, { freezer, rounds, shop }: Helpers, day: Day): void {
  if (day !== FIRST_DAY) house.log.turnTo(day);
  settleIn(house, day);
  if (house.herd.size === 0) return;
  for (const beast of house.herd.values()) liveADay(beast.body);
  rounds.look(house);
  waterRound(house, rounds);
  shedRound(house);
  feedRound(house, freezer);
  rounds.endFeeding(house);
  cleanRound(house);
  house.log.round(14, 30, ORLA);
  house.diary.live(day);
  weekly(house, freezer, day);
  freezer.endDay();
  rounds.servePools(house);
  shop.live(house);
  if (day === DAYS_SET_ON) rounds.setDays(house);
  if (printsOn(day)) printRun(house, addDays(day, 1) === DEMO_TODAY ? LEFT_OVER : 0);
}

/** The first days: stock is taken, then the rounds begin. */
function settleIn(house: House, day: Day): void {
  const kinds = STOCKTAKING.find((_, at) => day === addDays(FIRST_DAY, at + 1));
  if (kinds !== undefined) bringIn(house, kinds);
  if (day !== addDays(FIRST_DAY, STOCKTAKING.length)) return;
  fillExhibits(house);
  flagAnimals(house);
  carryOn(house);
}

function weekly(house: House, freezer: Freezer, day: Day): void {
  if (weekday(day) === 0) freezer.count();
  if (weekday(day) === 3) moveUp(house);
  if (weekday(day) === 5) sell(house, day < KEEPS.from ? KEEPS.before : KEEPS.after);
  if (day.endsWith('-11-01')) planSeason(house, Number(day.slice(0, 4)));
}

function printsOn(day: Day): boolean {
  if (weekday(day) !== 1) return false;
  return day >= WEEKLY_PRINTS_FROM || Number(day.slice(8)) <= 7 || day < addDays(FIRST_DAY, 14);
}
