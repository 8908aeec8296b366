import { type Day, isYoung, lastWeight, sayAnimal, treatmentsOn, weightFault } from '../src/core/index.ts';
import { Chance } from './chance.ts';
import { type Beast, type House, inWalkingOrder } from './herd.ts';
import { KEEPERS, ORLA, VET } from './staff.ts';

/** Chance of its own, so that a vet’s visit changes no other animal’s life. */
const SEED = 2_611;
/** What the vet writes is on the vet’s paper: the demo names no drug, and its figures are invented. */
const DRUG = 'as the vet wrote it (the paper is in the folder)';
/**
 * The last evening: the vet has been, and two animals are under treatment, one of them by tube. Their cards are out of date by it.
 */
export function treatTwo(house: House, today: Day): void {
  const { log } = house;
  log.aside(new Chance(SEED), () => {
    log.round(19, 10, ORLA);
    const [first, second] = inWalkingOrder(house).filter((beast) => isFit(house, beast, today));
    if (first === undefined || second === undefined) throw new RangeError('nobody is fit to be treated');
    const paper = { drug: DRUG, prescriber: VET, startsOn: log.day, recheckOn: '2026-12-04', withholdFood: false };
    log.write('prescription-written', [first.id], {
      ...paper,
      ...{ amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: { mgPerMl: 10 } }, route: 'by injection' },
      ...{ everyHours: 24, count: 5, lot: 'B 7' },
    });
    log.round(19, 20, KEEPERS[0] ?? ORLA);
    giveFirst(house, first);
    log.write('prescription-written', [second.id], {
      ...paper,
      ...{ amount: { by: 'volume', ml: 4 }, route: 'by stomach tube', everyHours: 48, count: 3, startsOn: today },
    });
  });
}

function giveFirst({ log }: House, { id }: Beast): void {
  const [treatment] = treatmentsOn(log.animal(id), log.day, log.nowMs);
  if (!treatment?.dose.ok) throw new RangeError(`no volume for ${sayAnimal(log.animal(id))}`);
  log.write('dose-given', [id], { prescription: treatment.record.id, ml: treatment.dose.value.ml, lot: 'B 7' });
}

/** Well, and weighed so lately that a dose can be worked out on the day of the demo; 200 g take 4 mL (CARE-CAP). */
function isFit({ log }: House, { id, kind }: Beast, today: Day): boolean {
  const animal = log.animal(id);
  const weight = lastWeight(animal);
  if (weight === null || weight.weightG < 250 || kind.species !== 'Python regius') return false;
  const young = isYoung(animal.species, weight.weightG);
  const isRecent = weightFault({ massDate: weight.day, flagged: weight.doubted }, { on: today, young }) === null;
  const isWell = animal.holds.length === 0 && animal.regurgitations.length === 0 && animal.gravidSince === null;
  return isRecent && isWell;
}
