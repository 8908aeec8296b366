import { addDays, lastWeight, speciesOf, weighEveryDays } from '../src/core/index.ts';
import { type Beast, type House, scales } from './herd.ts';

/** Weighs an animal and plans the next time: fasting and gravid ones sooner. */
export function weigh(house: House, beast: Beast): void {
  const { log, chance } = house;
  const weightG = scales(beast, chance);
  const slips = chance.happens(0.0016);
  const [event] = log.act(beast.id, { do: 'weighed', weightG: slips ? misread(weightG) : weightG });
  if (event === undefined) throw new RangeError(`the entry check stopped ${weightG} g for ${beast.id} on ${log.day}`);
  if (slips) log.write('slip-made', [beast.id], { corrects: event.id, how: 'amend', payload: { weightG } });
  beast.weighOn = addDays(log.day, interval(house, beast));
}

/** A weighing that the entry check asks about and that the keeper, having weighed again, confirms. */
export function confirmWeight(house: House, beast: Beast, words: string): void {
  const { log, chance } = house;
  log.act(beast.id, { do: 'weighed', weightG: scales(beast, chance) }, 'insists');
  log.act(beast.id, { do: 'note', words });
  beast.weighOn = addDays(log.day, interval(house, beast));
}

function interval({ log, chance }: House, beast: Beast): number {
  const animal = log.animal(beast.id);
  if (animal.gravidSince !== null) return 7;
  const every = weighEveryDays(speciesOf(beast.kind.species), lastWeight(animal)?.weightG ?? beast.body.massG);
  const refused = animal.offers.slice(-4).filter((offer) => !offer.taken).length;
  const usual = refused >= 3 ? Math.min(every, 14) : every;
  return usual - chance.whole(0, Math.floor(usual / 8));
}

/** A digit read wrong: a few percent too little, which no check can find. */
function misread(weightG: number): number {
  return weightG < 50 ? Math.max(1, Math.round(weightG * 9.4) / 10) : Math.round(weightG * 0.94);
}
