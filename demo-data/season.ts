import { addDays, type Day } from '../src/core/index.ts';
import { lay } from './clutches.ts';
import type { Beast, House } from './herd.ts';
import { acceptSeason } from './plan.ts';
import { weigh } from './weighing.ts';

/** A female, her male, and when they meet. */
interface Match {
  readonly dam: Beast;
  readonly sire: Beast;
  readonly visits: readonly Day[];
}

const PYTHON = 'Python regius';
const CORN = 'Pantherophis guttatus';
const HOGNOSE = 'Heterodon nasicus';
/** A visit lasts two nights. */
const NIGHTS = 2;
/** Below this a female is not bred here. */
const LEAST_DAM_G = 1500;
const WARMED_DAY = '02-22';

/** What was under way when the log began: some females were already paired. */
export function carryOn(house: House): void {
  const { chance, diary, log } = house;
  for (const { dam, sire } of match(house, PYTHON, 8, [])) {
    const preLay = addDays(log.day, chance.whole(6, 19));
    diary.on(preLay, () => preLayShed(house, dam));
    diary.on(addDays(preLay, chance.whole(28, 32)), () => lay(house, dam, sire));
  }
  for (const { dam, sire } of match(house, CORN, 4, [])) {
    const laying = addDays(log.day, chance.whole(12, 30));
    diary.on(addDays(laying, -9), () => preLayShed(house, dam));
    diary.on(laying, () => lay(house, dam, sire));
  }
}

/** A breeding season from the first of November: ball pythons pair, corns and hognoses are cooled first. */
export function planSeason(house: House, year: number): void {
  planPythons(house, year);
  planBoas(house, year);
  cool(house, HOGNOSE, 10, { rest: day(year, '11-02'), start: day(year, '11-18'), end: day(year + 1, WARMED_DAY) });
  cool(house, CORN, 22, { rest: day(year, '11-27'), start: day(year, '12-12'), end: day(year + 1, WARMED_DAY) });
  house.diary.on(day(year + 1, '03-10'), () => {
    planColubrids(house, CORN, 6, day(year + 1, '03-16'));
    planColubrids(house, HOGNOSE, 4, day(year + 1, '03-20'));
  });
}

function planPythons(house: House, year: number): void {
  const { chance, diary } = house;
  const first = day(year, '11-03');
  const visits = (): readonly Day[] => {
    const begins = addDays(first, chance.whole(0, 34));
    return [0, 1, 2, 3, 4, 5].map((nth) => addDays(begins, nth * 22 + chance.whole(-2, 2)));
  };
  const matches = match(house, PYTHON, 25, visits);
  acceptSeason(house, PYTHON, matches, first);
  for (const one of matches) {
    meet(house, one);
    fastInSeason(house, one, first);
    if (chance.happens(0.14)) continue;
    const ovulation = addDays(day(year + 1, '02-08'), chance.whole(0, 54));
    const preLay = addDays(ovulation, chance.whole(14, 22));
    diary.on(ovulation, () => present(house, one.dam) && house.log.write('ovulation-seen', [one.dam.id], {}));
    diary.on(preLay, () => preLayShed(house, one.dam));
    diary.on(addDays(preLay, chance.whole(28, 32)), () => lay(house, one.dam, one.sire));
  }
}

/** Boas are put together as well; no young came of it so far. */
function planBoas(house: House, year: number): void {
  const visits = [day(year, '11-15'), day(year, '12-20'), day(year + 1, '01-24')];
  for (const one of match(house, 'Boa imperator', 3, visits)) meet(house, one);
}

function planColubrids(house: House, species: string, females: number, first: Day): void {
  const { chance, diary } = house;
  const visits = (): readonly Day[] => {
    const begins = addDays(first, chance.whole(0, 9));
    return [begins, addDays(begins, 6)];
  };
  for (const one of match(house, species, females, visits)) {
    meet(house, one);
    const paired = one.visits[0] ?? first;
    const preLay = addDays(paired, chance.whole(29, 33));
    diary.on(preLay, () => preLayShed(house, one.dam));
    diary.on(addDays(preLay, chance.whole(8, 11)), () => lay(house, one.dam, one.sire));
  }
}

/** Finds a male for each of so many females; a male serves up to three. */
function match(
  { herd, chance }: House,
  species: string,
  females: number,
  visits: readonly Day[] | (() => readonly Day[]),
): readonly Match[] {
  const adults = [...herd.values()].filter(
    (beast) => beast.kind.species === species && beast.use === 'breeding' && beast.home.size !== 'exhibit',
  );
  const least = species === PYTHON ? LEAST_DAM_G : 0;
  const dams = adults.filter((beast) => beast.sex === 'female' && beast.body.massG >= least);
  const sires = chance.shuffled(adults.filter((beast) => beast.sex === 'male'));
  return chance
    .shuffled(dams)
    .slice(0, Math.min(females, sires.length * 3))
    .flatMap((dam, at) => {
      const sire = sires[at % sires.length];
      const days = typeof visits === 'function' ? visits() : visits;
      return sire === undefined ? [] : [{ dam, sire, visits: days }];
    });
}

function meet(house: House, { dam, sire, visits }: Match): void {
  const { log, chance, diary } = house;
  const both = [dam.id, sire.id];
  const together = (): boolean => present(house, dam) && present(house, sire) && log.animal(dam.id).laidOn !== log.day;
  for (const visit of visits) {
    diary.on(visit, () => {
      if (!together() || isResting(house, dam) || isResting(house, sire)) return;
      log.write('pairing-started', both, {});
      diary.on(addDays(visit, NIGHTS), () => together() && log.write('pairing-ended', both, {}));
      if (chance.happens(0.58)) diary.on(addDays(visit, 1), () => together() && log.write('lock-seen', both, {}));
    });
  }
}

/** Some males, and few females, take nothing for weeks in the season. */
function fastInSeason(house: House, { dam, sire }: Match, first: Day): void {
  const { chance, diary } = house;
  dam.inSeason = true;
  sire.inSeason = true;
  const begins = addDays(first, chance.whole(10, 45));
  const starve = (beast: Beast, days: number): void =>
    diary.on(begins, () => {
      beast.fastsUntil = addDays(begins, days);
    });
  if (chance.happens(0.16)) starve(sire, chance.whole(35, 90));
  if (chance.happens(0.06)) starve(dam, chance.whole(30, 60));
}

interface Cooling {
  readonly rest: Day;
  readonly start: Day;
  readonly end: Day;
}

/** Cooling: no food for two weeks before it (facts: last meal 10–21 d before), a weight at both ends. */
function cool(house: House, species: string, count: number, { rest, start, end }: Cooling): void {
  const { log, diary, chance } = house;
  diary.on(rest, () => {
    const chosen = [...house.herd.values()].filter((one) => one.kind.species === species && one.use === 'breeding');
    for (const beast of chosen.slice(0, count)) {
      const words = 'no food before cooling';
      log.write('hold-placed', [beast.id], { reason: 'keeper', words, until: start });
      diary.on(start, () => beginCooling(house, beast));
      diary.on(addDays(end, chance.whole(0, 4)), () => endCooling(house, beast));
    }
  });
}

function beginCooling(house: House, beast: Beast): void {
  if (!present(house, beast)) return;
  house.log.write('hold-lifted', [beast.id], { reason: 'keeper' });
  house.log.write('cooling-started', [beast.id], {});
}

function endCooling(house: House, beast: Beast): void {
  if (!present(house, beast)) return;
  house.log.write('cooling-ended', [beast.id], {});
  beast.look = house.log.day;
  beast.weighOn = house.log.day;
}

function preLayShed(house: House, dam: Beast): void {
  if (!present(house, dam)) return;
  house.log.write('pre-lay-shed-seen', [dam.id], {});
  weigh(house, dam);
  dam.shedOn = addDays(house.log.day, house.chance.whole(55, 75));
}

function isResting({ log }: House, beast: Beast): boolean {
  const animal = log.animal(beast.id);
  return animal.gravidSince !== null || animal.regurgitations.length > 0 || animal.holds.length > 0;
}

function present({ herd }: House, beast: Beast): boolean {
  return herd.has(beast.id);
}

function day(year: number, monthDay: string): Day {
  return `${year}-${monthDay}` as Day;
}
