import { type AnimalRecord, addDays, checkWeighing, type Day, daysBetween } from '../src/core/index.ts';
import { lose } from './body.ts';
import { regurgitate } from './feeding.ts';
import { type Beast, type House, leave } from './herd.ts';
import { VET } from './staff.ts';
import { confirmWeight, weigh } from './weighing.ts';

/** What does not happen every day: fixed days, so that the last of them still stand when the demo opens. */
export function planIncidents(house: House): void {
  for (const day of ['2025-08-05', '2025-12-09', '2026-03-24', '2026-06-16']) onceSick(house, day as Day);
  onceSick(house, '2026-11-18' as Day);
  twiceSick(house, '2026-02-03' as Day, '2026-03-03' as Day, 'cleared');
  twiceSick(house, '2026-09-29' as Day, '2026-11-06' as Day, 'open');
  for (const day of ['2025-10-14', '2026-04-21', '2026-08-25']) findUnlogged(house, day as Day);
  for (const [day, until] of TREATMENTS) treat(house, day as Day, until as Day);
  for (const [day, note] of DEATHS) die(house, day as Day, note);
  planShow(house);
  nameKept(house);
  house.diary.on('2026-11-22' as Day, () => rest(house));
}

const TREATMENTS = [
  ['2025-09-02', '2025-09-16'],
  ['2026-05-12', '2026-05-26'],
  ['2026-11-19', '2026-12-03'],
  ['2026-11-23', '2026-12-07'],
] as const;

const DEATHS = [
  ['2025-08-21', 'Found dead; never fed well since it hatched.'],
  ['2025-10-30', 'Found dead in the tub; sent to the vet, no cause found.'],
  ['2026-01-15', 'Old age, as far as we can tell.'],
  ['2026-04-08', 'Put to sleep by the vet: a growth in the belly.'],
  ['2026-08-12', 'Hatchling, kinked; did not thrive.'],
  ['2026-09-09', 'Hatchling, never fed.'],
  ['2026-10-27', 'Found dead in the tub.'],
] as const;

/** What of the notes is a cause; in the others nobody knows it. */
const CAUSES = ['a growth in the belly', 'kinked'] as const;

/** A young ball python that just ate, is no breeder, and has nothing else in its record. */
function findJustFed(house: House): Beast | undefined {
  return [...house.herd.values()].find((beast) => {
    if (beast.kind.species !== 'Python regius' || beast.use !== 'growing' || beast.home.size !== 'middle') return false;
    const animal = house.log.animal(beast.id);
    return ateLately(house, animal) && animal.regurgitations.length === 0 && animal.holds.length === 0;
  });
}

function ateLately({ log }: House, { lastTaken }: AnimalRecord): boolean {
  if (lastTaken === null) return false;
  const days = daysBetween(lastTaken.day, log.day);
  return days >= 1 && days <= 3;
}

function onceSick(house: House, day: Day): void {
  house.diary.from(day, () => {
    const beast = findJustFed(house);
    return beast !== undefined && regurgitate(house, beast, 'Found this morning, whole.');
  });
}

function twiceSick(house: House, first: Day, second: Day, end: 'cleared' | 'open'): void {
  const { diary, log } = house;
  diary.from(first, () => {
    const beast = findJustFed(house);
    if (beast === undefined || !regurgitate(house, beast, 'Half digested.')) return false;
    diary.from(second, () => {
      if (!ateLately(house, log.animal(beast.id)) || !regurgitate(house, beast, 'The second time; vet called.'))
        return false;
      if (end === 'cleared') diary.on(addDays(log.day, 23), () => clear(house, beast));
      return true;
    });
    return true;
  });
}

function clear({ log }: House, beast: Beast): void {
  log.act(beast.id, { do: 'vet-cleared', by: VET, words: 'Seen and cleared; start with a small meal.' });
  beast.look = log.day;
}

/** Food that nobody wrote down: the scales show more than the log explains, and the keeper confirms. */
function findUnlogged(house: House, day: Day): void {
  house.diary.from(day, () => {
    const beast = [...house.herd.values()].find((one) => {
      const { massG, adultG } = one.body;
      const grows = one.use === 'growing' && one.home.size === 'middle' && massG * 1.3 < adultG;
      return grows && checkWeighing(house.log.animal(one.id), massG * 1.22, house.log.day) !== null;
    });
    if (beast === undefined) return false;
    beast.body.massG *= 1.25;
    confirmWeight(house, beast, 'Weighed twice, same figure: fed by the stand-in in our week off, never written down.');
    return true;
  });
}

/** Under treatment: what is given stands on the vet's paper, not here. */
function treat(house: House, day: Day, until: Day): void {
  const { log, diary, chance } = house;
  diary.on(day, () => {
    const fit = [...house.herd.values()].filter((one) => one.use === 'growing' && isWell(log.animal(one.id)));
    const beast = chance.pick(fit);
    lose(beast.body, chance.between(0.08, 0.12));
    weigh(house, beast);
    const words = 'as the vet wrote; the paper is in the folder';
    log.write('hold-placed', [beast.id], { reason: 'treatment', words, until, by: VET });
    log.act(beast.id, {
      do: 'note',
      words: chance.pick(['Wheezes a little when lifted.', 'Scale infection on the belly.']),
    });
    diary.on(until, () => {
      log.write('hold-lifted', [beast.id], { reason: 'treatment', by: VET });
      beast.look = log.day;
    });
  });
}

function isWell(animal: AnimalRecord): boolean {
  return animal.holds.length === 0 && animal.regurgitations.length === 0 && animal.cooling === null;
}

function die(house: House, day: Day, note: string): void {
  house.diary.on(day, () => {
    const young = note.includes('atch');
    const fit = [...house.herd.values()].filter((one) =>
      young ? one.home.size === 'nursery' : one.use === 'breeding' && !one.inSeason && one.home.size !== 'exhibit',
    );
    const poorly = fit.filter((one) => house.log.animal(one.id).gravidSince === null);
    const cause = CAUSES.find((word) => note.includes(word));
    leave(house, house.chance.pick(poorly), { how: 'died', ...(cause !== undefined && { cause }), note });
  });
}

/** A show in October: three animals travelled and rest for three days. */
function planShow({ diary, log, herd, chance }: House): void {
  diary.on('2026-10-12' as Day, () => {
    const shown = [...herd.values()].filter((beast) => beast.use === 'for-sale' && isWell(log.animal(beast.id)));
    for (const beast of chance.shuffled(shown).slice(0, 3)) {
      const until = addDays(log.day, 3);
      log.write('hold-placed', [beast.id], { reason: 'transport', words: 'back from the show', until });
      diary.on(until, () => herd.has(beast.id) && log.write('hold-lifted', [beast.id], { reason: 'transport' }));
    }
  });
}

/** What is kept gets a name in its second year. */
function nameKept({ diary, log, herd, names }: House): void {
  diary.on('2026-06-02' as Day, () => {
    const kept = [...herd.values()].filter((beast) => beast.use === 'growing' && log.animal(beast.id).name === null);
    for (const beast of kept.slice(0, 9)) {
      const name = names.shift();
      if (name !== undefined) log.write('animal-named', [beast.id], { name });
    }
  });
}

/** One has lost a tenth of its mass and is left alone until the vet comes. */
function rest(house: House): void {
  const { log, herd } = house;
  const beast = [...herd.values()].find((one) => one.use === 'growing' && isWell(log.animal(one.id)));
  if (beast === undefined) return;
  lose(beast.body, 0.17);
  weigh(house, beast);
  const words = 'thin, left alone until looked at again';
  log.write('hold-placed', [beast.id], { reason: 'keeper', words, until: '2026-12-01' });
}
