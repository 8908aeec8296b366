import {
  addDays,
  type Day,
  type Id,
  mintId,
  offerFault,
  type Payload,
  saleTag,
  shedTag,
  wareTag,
  weekday,
} from '../src/core/index.ts';
import { Chance } from './chance.ts';
import { type Beast, type House, inWalkingOrder } from './herd.ts';
import type { Hand, Log } from './log.ts';
import { KEEPERS } from './staff.ts';

/** The shop table opened on this day; its wares, prices and sales are invented. */
const OPENS = '2026-08-04' as Day;
const SEED = 4_217;
const TAG_STOCK = 'a4-63.5x38.1';

interface DemoWare {
  readonly ware: Payload<'ware-set'>;
  readonly pieces: number;
  /** Sold in a week, on average. */
  readonly aWeek: number;
}

const WARES: readonly DemoWare[] = [
  {
    ware: { name: 'Mug, marsh python', priceMinor: 1290, words: 'stoneware, 300 mL', lowAt: 3 },
    pieces: 24,
    aWeek: 1.2,
  },
  { ware: { name: 'Postcard, four seasons of a rack', priceMinor: 180, lowAt: 20 }, pieces: 120, aWeek: 6 },
  {
    ware: { name: 'Print, Marshlight hatchling', priceMinor: 4500, words: 'framed, 30 × 40 cm', edition: 20 },
    pieces: 20,
    aWeek: 0.9,
  },
  { ware: { name: 'Moist hide, small', priceMinor: 890, lowAt: 4, gtin: '7300011000017' }, pieces: 15, aWeek: 0.7 },
  { ware: { name: 'Feeding tongs, 30 cm', priceMinor: 1150, lowAt: 2 }, pieces: 10, aWeek: 0.4 },
  { ware: { name: 'Badge, Quillmarsh Snake House', priceMinor: 350 }, pieces: 60, aWeek: 2.5 },
];
/** Sheds of the animals that visitors know are sold in pieces. */
const SHED_PRICE_MINOR = 650;
const OFFERED = 14;

/** The shop beside the house: wares, shed skins, animals on offer. It is written with chance of its own. */
export class Shop {
  readonly #chance = new Chance(SEED);
  readonly #wares = new Map<Id, DemoWare>();
  #minted = 0;

  /** What the shop does on a day, in the afternoon. */
  live(house: House): void {
    const { log } = house;
    if (log.day < OPENS) return;
    log.aside(this.#chance, () => {
      log.round(16, 0, hand());
      if (log.day === OPENS) this.#open(log);
      if (weekday(log.day) === 5) this.#sell(log);
      if (weekday(log.day) === 4) this.#makeSheds(house);
      if (weekday(log.day) === 0 && Number(log.day.slice(8)) <= 7) this.#count(log);
    });
  }

  /** The animals on offer, some for weeks; offered on the days on which they were fit to be. */
  offer(house: House): void {
    const { log } = house;
    log.aside(this.#chance, () => {
      log.round(16, 30, hand());
      const fit = inWalkingOrder(house).filter(
        (beast) => beast.use === 'for-sale' && offerFault(log.animal(beast.id), log.day) === null,
      );
      for (const beast of this.#chance.shuffled(fit).slice(0, OFFERED)) this.#offerOne(log, beast);
    });
  }

  #offerOne(log: Log, { id }: Beast): void {
    const priceMinor = this.#chance.whole(6, 60) * 1000;
    log.write('animal-offered', [id], { priceMinor, words: this.#chance.pick(SALE_WORDS) });
    const tag = saleTag(log.facility, log.animal(id));
    if (tag !== null && this.#chance.happens(0.6))
      log.write('tag-printed', [id], { revision: tag.revision, stock: TAG_STOCK });
  }

  #open(log: Log): void {
    for (const one of WARES) {
      const id = this.#mint();
      log.write('ware-set', [id], one.ware);
      log.write('item-stocked', [id], { count: one.pieces });
      this.#wares.set(id, one);
      const item = log.facility.items.get(id);
      if (item === undefined) throw new RangeError(`no item ${id}`);
      log.write('tag-printed', [id], {
        revision: wareTag(log.facility, item).revision,
        stock: TAG_STOCK,
        copies: one.pieces,
      });
    }
  }

  #sell(log: Log): void {
    for (const [id, { aWeek }] of this.#wares) {
      const left = log.facility.items.get(id)?.left ?? 0;
      const count = Math.min(left, Math.floor(aWeek * this.#chance.between(0, 2) + this.#chance.next()));
      const priceMinor = log.facility.items.get(id)?.priceMinor ?? 0;
      for (let piece = 0; piece < Math.min(count, 6); piece++) log.write('item-sold', [id], { count: 1, priceMinor });
      if (
        left < 4 &&
        WARES.some(({ ware }) => ware.edition === undefined && ware.name === log.facility.items.get(id)?.name)
      )
        log.write('item-stocked', [id], { count: this.#wares.get(id)?.pieces ?? 1 });
    }
    for (const item of [...log.facility.items.values()].filter(({ kind, left }) => kind === 'shed' && left > 0))
      if (this.#chance.happens(0.4)) log.write('item-sold', [item.id], { count: 1, priceMinor: item.priceMinor });
  }

  #makeSheds(house: House): void {
    const { log } = house;
    const made = new Set([...log.facility.items.values()].map(({ animal, shedOn }) => `${animal} ${shedOn}`));
    const shown = inWalkingOrder(house)
      .map(({ id }) => log.animal(id))
      .filter(({ name, lastShedOn }) => name !== null && lastShedOn !== null && lastShedOn >= addDays(log.day, -7));
    for (const animal of shown.filter(({ id, lastShedOn }) => !made.has(`${id} ${lastShedOn}`)).slice(0, 1)) {
      const id = this.#mint();
      const { name, species, lastShedOn } = animal;
      if (name === null || lastShedOn === null) continue;
      const count = this.#chance.whole(1, 3);
      log.write('shed-item-made', [id, animal.id], {
        shown: name,
        species,
        shedOn: lastShedOn,
        priceMinor: SHED_PRICE_MINOR,
        count,
      });
      const item = log.facility.items.get(id);
      if (item !== undefined && this.#chance.happens(0.8))
        log.write('tag-printed', [id], {
          revision: shedTag(log.facility, item).revision,
          stock: TAG_STOCK,
          copies: count,
        });
    }
  }

  #count(log: Log): void {
    for (const id of this.#wares.keys()) {
      const left = log.facility.items.get(id)?.left ?? 0;
      const missing = left > 0 && this.#chance.happens(0.15) ? 1 : 0;
      log.write('item-counted', [id], { count: left - missing });
      if (missing > 0) log.write('note-made', [id], { words: 'One fewer than in the book; nobody knows why.' });
    }
  }

  /** Minted by the phone on the shop table, so that the desk's ids stay what they were. */
  #mint(): Id {
    const id = mintId(hand().device, this.#minted);
    this.#minted += 1;
    if (!id.ok) throw new RangeError(id.problem.message);
    return id.value;
  }
}

const SALE_WORDS = [
  'eats frozen and thawed, sheds whole',
  'calm, eats every week',
  'takes rats, parents can be seen',
  'first choice of its clutch',
] as const;

function hand(): Hand {
  const [, tilda] = KEEPERS;
  if (tilda === undefined) throw new RangeError('nobody keeps the shop');
  return tilda;
}
