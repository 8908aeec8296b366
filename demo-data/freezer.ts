import { addDays, type Id, PREY_CLASSES } from '../src/core/index.ts';
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

/** The feeder freezer: what really lies in it, and what its counts say. */
export class Freezer {
  readonly #log: Log;
  readonly #lots: Lot[] = [];
  readonly #used = new Map<string, number>();
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
    }
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
