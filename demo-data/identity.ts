import { cardContent, isCardStale, type Payload, quarantineOf } from '../src/core/index.ts';
import { type Beast, type House, inWalkingOrder } from './herd.ts';
import { printCard } from './paper.ts';
import { ORLA } from './staff.ts';

/** What came with the animals that are in quarantine on the last evening; all invented. */
const ORIGINS: readonly Omit<Payload<'origin-set'>, 'source'>[] = [
  { licence: 'seller’s licence 26/0471', papers: 'invoice 1183, the seller’s feeding card' },
  { licence: 'seller’s licence 25/0209', papers: 'hand-over sheet of the seller' },
  { papers: 'invoice 77' },
];
const GIANT = 'Malayopython reticulatus';
/** A rough length of a reticulated python from its mass (our choice; it only has to look right). */
const KG_PER_CUBIC_M = 0.2;

/** The last evening: the desk files what came with new animals, reads chips, and measures the giants with two people. */
export function fileIdentity(house: House): void {
  const { log } = house;
  log.round(18, 0, ORLA);
  const herd = inWalkingOrder(house);
  const apart = herd.filter(({ id }) => quarantineOf(log.animal(id)) !== null);
  for (const [at, { id }] of apart.slice(-ORIGINS.length).reverse().entries()) {
    const { source } = log.animal(id);
    log.write('origin-set', [id], { ...(source !== null && { source }), ...ORIGINS[at] });
  }
  const giants = herd.filter(({ kind }) => kind.species === GIANT);
  for (const [at, { id }] of [...giants, ...apart].entries()) {
    log.write('microchip-set', [id], { code: `900255${String(700_411_038 + 1_309 * at)}` });
  }
  for (const giant of giants) measure(house, giant);
}

/** Its card says from now on how many people open its tub, so it is printed anew. */
function measure(house: House, beast: Beast): void {
  const { log } = house;
  const lengthMm = Math.round(Math.cbrt(beast.body.massG / 1000 / KG_PER_CUBIC_M) * 100) * 10;
  const isGuess = beast.use === 'breeding';
  log.write('animal-measured', [beast.id], { lengthMm, of: 'total', ...(isGuess && { guessed: true }) });
  const animal = log.animal(beast.id);
  if (isCardStale(animal, cardContent(log.facility, animal, log.day))) printCard(house, beast);
}
