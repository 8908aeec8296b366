import { addDays, dayNumber, weekday } from '../src/core/index.ts';
import { sizesFor } from './founders.ts';
import { type Beast, type House, inWalkingOrder, move } from './herd.ts';
import { freeHome } from './room.ts';
import type { Rounds } from './rounds.ts';
import { keeperOf } from './staff.ts';

const WATER_EVERY_DAYS = 3;
const NOTES = [
  'Calm, good grip.',
  'Out and about in the evening.',
  'Hide changed for a larger one.',
  'Soaked in the water bowl over night.',
  'Retained eye cap came off with this shed.',
  'Striking at the tongs today.',
  'Humidity raised a little before the shed.',
  'Musked when lifted.',
  'Nose rub on the left, keep an eye on it.',
  'Lid clip replaced.',
  'Quick on the draw: hook first.',
  'Photographed for the book.',
  'Heat mat checked, 31 °C at the warm end.',
  'Substrate too wet at the back, exchanged.',
];

/** Water: a rack in one go, all its inhabited tubs together. */
export function waterRound(house: House, rounds: Rounds): void {
  const { log, room } = house;
  const today = dayNumber(log.day);
  const week = Math.floor(today / 7);
  for (const rack of room.racks) {
    const inhabited = rack.homes.filter((home) => home.lodgers.size > 0);
    if ((today + rack.number) % WATER_EVERY_DAYS !== 0 || inhabited.length === 0) continue;
    log.round(7, 30, keeperOf(rack.number, week));
    const watered = rounds.watered(house, inhabited);
    log.write('water-changed', [rack.id, ...watered.map((home) => home.id)], {});
    rounds.endWater(house, rack, watered.length);
  }
}

/** Full changes by each tub's own rhythm, and what is seen in passing; Sundays are for looking only. */
export function cleanRound(house: House): void {
  const { log, chance } = house;
  if (weekday(log.day) === 6) return;
  const week = Math.floor(dayNumber(log.day) / 7);
  for (const beast of inWalkingOrder(house)) {
    const full = log.day >= beast.cleanOn;
    if (!full && !chance.happens(0.003)) continue;
    log.round(13, 0, keeperOf(beast.home.rack + 1, week));
    log.act(beast.id, { do: 'cleaned', how: full ? 'full' : 'spot' });
    if (full) beast.cleanOn = addDays(log.day, chance.whole(24, 32));
    if (chance.happens(0.012)) log.act(beast.id, { do: 'note', words: chance.pick(NOTES) });
  }
}

/** Sheds: some are seen coming, most are found, a few are missed. */
export function shedRound(house: House): void {
  const { log, chance } = house;
  const week = Math.floor(dayNumber(log.day) / 7);
  for (const beast of inWalkingOrder(house)) {
    const daysLeft = dayNumber(beast.shedOn) - dayNumber(log.day);
    if (daysLeft !== 0 && !(daysLeft === 6 || daysLeft === 8)) continue;
    log.round(8, 10, keeperOf(beast.home.rack, week));
    if (daysLeft > 0) noticeOpaque(house, beast);
    else shed(house, beast);
    if (daysLeft === 0) beast.shedOn = addDays(log.day, shedInterval(house, beast));
    if (daysLeft === 0 && chance.happens(0.004))
      log.act(beast.id, { do: 'note', words: 'Shed kept for the sales tag.' });
  }
}

function noticeOpaque({ log, chance }: House, beast: Beast): void {
  const animal = log.animal(beast.id);
  if (animal.opaqueOn !== null || isCooled(animal) || !chance.happens(0.17)) return;
  log.act(beast.id, { do: 'opaque' });
}

function shed({ log, chance }: House, beast: Beast): void {
  if (isCooled(log.animal(beast.id)) || chance.happens(0.03)) return;
  log.act(beast.id, { do: 'shed', whole: !chance.happens(0.07) });
  beast.look = log.day;
}

function isCooled(animal: { readonly cooling: { readonly to: unknown } | null }): boolean {
  return animal.cooling !== null && animal.cooling.to === null;
}

function shedInterval({ chance }: House, beast: Beast): number {
  const grown = Math.min(1, beast.body.massG / (0.6 * beast.body.adultG));
  return Math.round(beast.kind.shedDays * (0.5 + 0.5 * grown) * chance.between(0.85, 1.2));
}

/** Once a week those that outgrew their tub get a larger one, if there is one. */
export function moveUp(house: House): void {
  house.log.round(15, 30, keeperOf(0, Math.floor(dayNumber(house.log.day) / 7)));
  for (const beast of inWalkingOrder(house)) {
    const [wanted] = sizesFor(beast.kind, beast.body.massG);
    const { size } = beast.home;
    const outgrown = (size === 'nursery' && wanted !== 'nursery') || (size === 'middle' && wanted === 'large');
    const home = outgrown && wanted !== undefined ? freeHome(house.room, [wanted]) : null;
    if (home !== null) move(house, beast, home);
    flagGiant(house, beast);
  }
}

/** A giant is not opened alone: from this mass on a snake is near the length at which two people are asked for. */
const GIANT_FROM_G = 8000;

function flagGiant({ log }: House, beast: Beast): void {
  if (beast.kind.species !== 'Malayopython reticulatus' || beast.body.massG < GIANT_FROM_G) return;
  const { flags } = log.animal(beast.id);
  if (!flags.includes('two-people')) log.write('animal-flagged', [beast.id], { flags: [...flags, 'two-people'] });
}
