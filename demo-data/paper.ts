import { cardContent, type Id, isCardStale } from '../src/core/index.ts';
import { type Beast, type House, inWalkingOrder } from './herd.ts';
import { ORLA } from './staff.ts';

/** The card stock of the house. */
const STOCK = 'a4-85x54';

/** Prints every card that no longer says what is known, in walking order, but leaves so many at the end. */
export function printRun(house: House, leaves = 0): void {
  const { log } = house;
  log.round(17, 30, ORLA);
  const stale = inWalkingOrder(house).flatMap(({ id }) => {
    const animal = log.animal(id);
    const content = cardContent(log.facility, animal, log.day);
    return isCardStale(animal, content) ? [{ id, revision: content.revision }] : [];
  });
  for (const { id, revision } of stale.slice(0, Math.max(0, stale.length - leaves))) print(house, id, revision);
}

/** Prints one card now, as for a new animal. */
export function printCard(house: House, { id }: Beast): void {
  const { log } = house;
  print(house, id, cardContent(log.facility, log.animal(id), log.day).revision);
}

function print({ log }: House, id: Id, revision: string): void {
  log.write('card-printed', [id], { revision, stock: STOCK });
}
