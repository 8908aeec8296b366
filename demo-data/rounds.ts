import {
  addDays,
  type Day,
  dayNumber,
  daysBetween,
  type Id,
  keptPlace,
  type Payload,
  weekday,
} from '../src/core/index.ts';
import { Chance } from './chance.ts';
import type { House } from './herd.ts';
import type { Log } from './log.ts';
import type { Home, Rack } from './room.ts';
import { KEEPERS, keeperOf, ORLA } from './staff.ts';

/** Chance of its own, so that rounds can change without changing the lives of the animals. */
const SEED = 7_311;
/** From these days on the house writes down its looks, its rounds as they end, and the work on its pools. */
const LOOKS_FROM = '2026-11-04' as Day;
const ROUNDS_FROM = '2026-11-11' as Day;
const POOLS_FROM = '2026-07-06' as Day;

/** The two exhibits with water in them; sizes are ours. */
const POOLS = [
  { exhibit: 0, sizeMm: { length: 3600, width: 1800, height: 2200 }, litres: 420, filtered: true, twoPeople: true },
  { exhibit: 3, sizeMm: { length: 1800, width: 900, height: 1100 }, litres: 60, filtered: false, twoPeople: false },
] as const;
/** A second exhibit that nobody opens alone, without water. */
const NEVER_ALONE = 1;

/** Fewer meals on a rack are no round. */
const LEAST_MEALS = 4;
const SKIPS = ['opaque, left in peace', 'glass cracked, new one ordered', 'coiled on her bowl'] as const;
/** Looks that found something: on that day, so many racks on, with these words; and when it was well again. */
const AGAIN = [
  { on: '2026-11-13' as Day, rack: 6, words: 'clicks when it breathes', well: '2026-11-15' as Day },
  { on: '2026-11-18' as Day, rack: 3, words: 'droppings loose', well: '2026-11-20' as Day },
  { on: '2026-11-23' as Day, rack: 8, words: 'thin along the spine, left its food', well: null },
] as const;

/** The rounds of the house beside feeding: looks, water, pools. */
export class Rounds {
  readonly #chance = new Chance(SEED);
  /** Homes whose water is left out today, with the reason. */
  readonly #skips = new Map<Id, string>();
  readonly #found = new Map<number, Id>();

  /** Pools, sizes and who is opened by two: written when the house is furnished. */
  furnish({ log, room }: House): void {
    log.aside(this.#chance, () => {
      for (const { exhibit, sizeMm, litres, filtered, twoPeople } of POOLS)
        setPlace(log, room.racks[0]?.homes[exhibit], {
          sizeMm,
          pool: { litres, filtered },
          ...(twoPeople && { twoPeople }),
        });
      setPlace(log, room.racks[0]?.homes[NEVER_ALONE], { twoPeople: true });
    });
  }

  /** Before the day begins: who is looked at, rack by rack. */
  look(house: House): void {
    const { log, room } = house;
    if (log.day < LOOKS_FROM) return;
    log.aside(this.#chance, () => {
      for (const rack of room.racks) {
        const homes = inhabited(rack);
        if (homes.length === 0) continue;
        log.round(7, 0, this.#keeper(house, rack));
        const apart = this.#lookAgain(house, rack);
        const others = homes.map((home) => home.id).filter((id) => !apart.includes(id));
        log.write('health-looked', others, { well: true });
      }
    });
  }

  /** Which homes of a rack get water today; some are passed over with a reason. */
  watered({ log }: House, homes: readonly Home[]): readonly Home[] {
    if (log.day < ROUNDS_FROM) return homes;
    const [first] = homes.filter((home) => this.#chance.happens(0.012) && home.lodgers.size > 0);
    if (first !== undefined) this.#skips.set(first.id, this.#chance.pick(SKIPS));
    return first === undefined ? homes : homes.filter((home) => home !== first);
  }

  /** The end of a rack's water round, with what was passed over. */
  endWater(house: House, rack: Rack, done: number): void {
    const { log } = house;
    if (log.day < ROUNDS_FROM) return;
    log.aside(this.#chance, () => {
      const skipped = rack.homes.filter((home) => this.#skips.has(home.id));
      for (const home of skipped)
        log.write('task-skipped', [home.id], { task: 'water', why: this.#skips.get(home.id) ?? '' });
      this.#skips.clear();
      this.#end(house, rack, { task: 'water', done, skipped: skipped.length, left: 0 });
    });
  }

  /** The end of the feeding rounds of the day, with what was refused and used. */
  endFeeding(house: House): void {
    const { log, room, herd } = house;
    if (log.day < ROUNDS_FROM) return;
    log.aside(this.#chance, () => {
      for (const rack of room.racks) {
        const here = [...herd.values()].filter((beast) => beast.home.rack === rack.number);
        const offers = here.flatMap((beast) => log.animal(beast.id).offers.filter((offer) => offer.day === log.day));
        if (offers.length < LEAST_MEALS) continue;
        const used = new Map<string, number>();
        for (const { prey, count } of offers) used.set(prey, (used.get(prey) ?? 0) + count);
        const refused = offers.filter((offer) => !offer.taken).length;
        log.round(12, 30, this.#keeper(house, rack));
        this.#end(house, rack, {
          ...{ task: 'feeding', done: offers.length - refused, refused, skipped: 0, left: 0 },
          used: [...used].sort(([a], [b]) => (a < b ? -1 : 1)).map(([prey, count]) => ({ prey, count })),
        });
      }
    });
  }

  /** Work on the pools: one with a filter is changed in part each Monday, one without is drained every other day. */
  servePools(house: House): void {
    const { log, room } = house;
    if (log.day < POOLS_FROM) return;
    log.aside(this.#chance, () => {
      log.round(16, 0, KEEPERS[dayNumber(log.day) % KEEPERS.length] ?? ORLA);
      for (const { exhibit, filtered } of POOLS) {
        const home = room.racks[0]?.homes[exhibit];
        if (home === undefined) continue;
        if (filtered && weekday(log.day) === 0) {
          log.write('round-started', [home.id], { task: 'pool-part', second: ORLA.keeper });
          log.write('pool-served', [home.id], { work: 'part', percent: this.#chance.pick([25, 30]) });
        }
        if (filtered && daysBetween(POOLS_FROM, log.day) % 29 === 10)
          log.write('pool-served', [home.id], { work: 'filter' });
        if (!filtered && dayNumber(log.day) % 2 === 0) log.write('pool-served', [home.id], { work: 'drain' });
      }
    });
  }

  /** The nursery's days are set by hand, and hold for all tubs of its first rack. */
  setDays({ log, room }: House): void {
    const nursery = room.racks.find((rack) => rack.homes[0]?.size === 'nursery');
    if (nursery === undefined) return;
    log.aside(this.#chance, () => {
      log.round(17, 0, ORLA);
      log.write('interval-set', [nursery.id], { task: 'water', everyDays: [2, 3] });
    });
  }

  /** Whoever is to be looked at again is looked at by itself each day, until it is well; gives their homes. */
  #lookAgain({ log, room }: House, rack: Rack): readonly Id[] {
    const at = room.racks.indexOf(rack);
    return AGAIN.flatMap(({ on, rack: which, words, well }, nth) => {
      if (which !== at || log.day < on || (well !== null && log.day > well)) return [];
      const [first] = log.day === on ? (inhabited(rack)[nth + 2]?.lodgers ?? []) : [];
      if (first !== undefined) this.#found.set(nth, first);
      const animal = this.#found.get(nth);
      const home = rack.homes.find((one) => animal !== undefined && one.lodgers.has(animal));
      if (animal === undefined || home === undefined) return [];
      log.write('health-looked', [animal, home.id], log.day === well ? { well: true } : { well: false, words });
      return [home.id];
    });
  }

  #end({ log }: House, rack: Rack, payload: Payload<'round-ended'>): void {
    // The hall has the giants in it: nobody walks it alone.
    log.write('round-ended', [rack.id], { ...payload, ...(rack.number === 0 && { second: ORLA.keeper }) });
  }

  #keeper({ log }: House, rack: Rack) {
    return keeperOf(rack.number, Math.floor(dayNumber(log.day) / 7));
  }
}

function setPlace(log: Log, home: Home | undefined, facts: Payload<'place-set'>): void {
  const place = home === undefined ? undefined : log.facility.places.get(home.id);
  if (place !== undefined) log.write('place-set', [place.id], { ...keptPlace(place), ...facts });
}

function inhabited(rack: Rack): readonly Home[] {
  return rack.homes.filter((home) => home.lodgers.size > 0);
}

/** The day on which the nursery's days were set. */
export const DAYS_SET_ON = addDays(ROUNDS_FROM, -6);
