import { addDays, type Day, decideThrow, type Id, PREY_CLASSES } from '../src/core/index.ts';
import { Chance } from './chance.ts';
import { CORNER_LOTS, type CornerLot, cornerId } from './cornerLots.ts';
import type { Log } from './log.ts';
import { ORLA } from './staff.ts';

interface Lot {
  readonly id: Id;
  readonly prey: string;
  left: number;
  counted: number;
}

/** Feeders keep 6 to 12 months at -18 °C (facts: common practice). */
const KEEPS_DAYS = 270;
/** A new lot is for about so many weeks. */
const WEEKS = 9;
const LEAST_LOT = 60;
/** From then on what is thawed and what is thrown away is written day by day; before that the Monday count said it all. */
const WRITTEN_FROM = '2026-10-01' as Day;
/** The figures of the order list: for six weeks, ten days on the way, and what the chests hold. */
const ORDER_RULES = { orderWeeks: 6, leadDays: 10, freezerItems: 3200 } as const;
/** Chance of its own, so that the book of the freezer can change without changing the lives of the animals. */
const SEED = 4_418;

/** The feeder freezer: what really lies in it, and what its counts say. */
export class Freezer {
  readonly #log: Log;
  readonly #lots: Lot[] = [];
  readonly #used = new Map<string, number>();
  /** What was taken out of each lot today. */
  readonly #today = new Map<Id, number>();
  readonly #chance = new Chance(SEED);
  #weeks = 0;

  constructor(log: Log) {
    this.#log = log;
  }

  /** Fills it for the first time. */
  fill(): void {
    this.#log.round(16, 0, ORLA);
    for (const { id } of PREY_CLASSES) this.#receive(id, id.startsWith('rat-jumbo') ? 60 : 250);
  }

  /** Prey is thawed, oldest lot first; an empty lot is left at nothing. */
  use(prey: string, count: number): void {
    this.#used.set(prey, (this.#used.get(prey) ?? 0) + count);
    let wanted = count;
    for (const lot of this.#lots.filter((one) => one.prey === prey)) {
      const taken = Math.min(lot.left, wanted);
      lot.left -= taken;
      wanted -= taken;
      if (taken > 0) this.#today.set(lot.id, (this.#today.get(lot.id) ?? 0) + taken);
    }
  }

  /** The evening: what was thawed is written, and what nobody ate is thrown away; lots in the corner have days of their own. */
  endDay(): void {
    const { day } = this.#log;
    this.#log.aside(this.#chance, () => {
      this.#log.round(14, 45, ORLA);
      for (const lot of CORNER_LOTS) this.#corner(lot);
      if (day === WRITTEN_FROM) this.#log.write('site-rules-set', [], ORDER_RULES);
      if (day < WRITTEN_FROM) return;
      for (const [lot, count] of this.#today) this.#log.write('lot-used', [lot], { count });
      const moment = { day, today: day, nowMs: Date.parse(`${day}T18:00:00Z`) };
      const thrown = decideThrow(this.#log.facility, day, [], moment);
      if (thrown.kind === 'accepted')
        for (const { kind, subjects, payload } of thrown.drafts) this.#log.write(kind, subjects, payload);
    });
    this.#today.clear();
  }

  /** What happens to a lot in the corner today. */
  #corner(lot: CornerLot): void {
    for (const { on, kind, payload } of lot.deeds)
      if (on === this.#log.day) this.#log.write(kind, [cornerId(lot)], payload);
  }

  /** Monday: count what changed, order what runs out within three weeks. */
  count(): void {
    this.#weeks += 1;
    this.#log.round(16, 30, ORLA);
    for (const lot of this.#lots) {
      if (lot.counted === lot.left) continue;
      this.#log.write('stock-counted', [lot.id], { count: lot.left });
      lot.counted = lot.left;
    }
    for (const [prey, used] of this.#used) {
      const aWeek = used / this.#weeks;
      const left = this.#lots.filter((lot) => lot.prey === prey).reduce((sum, lot) => sum + lot.left, 0);
      if (left < 3 * aWeek) this.#receive(prey, Math.max(LEAST_LOT, Math.ceil((aWeek * WEEKS) / 10) * 10));
    }
  }

  #receive(prey: string, count: number): void {
    const found = PREY_CLASSES.find((one) => one.id === prey);
    if (found === undefined) return;
    const id = this.#log.mint();
    const useBy = addDays(this.#log.day, KEEPS_DAYS);
    const eachG: [number, number] = [found.eachG[0], found.eachG[1]];
    this.#log.write('lot-received', [id], { prey, eachG, count, useBy, source: 'Saltpan Feeders' });
    this.#lots.push({ id, prey, left: count, counted: count });
  }
}
