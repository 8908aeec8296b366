import { addDays, type Day, type DueState, dayNumber, nextFeedDue, weekday } from '../src/core/index.ts';
import { eat, lose } from './body.ts';
import type { Freezer } from './freezer.ts';
import { type Beast, type House, inWalkingOrder } from './herd.ts';
import { keeperOf } from './staff.ts';
import { weigh } from './weighing.ts';

/** Feeding days by thirds of the racks; the young are looked at three times a week. Monday is 0. */
const TWICE = [
  [0, 3],
  [1, 4],
  [2, 5],
] as const;
const THRICE = [
  [0, 2, 4],
  [1, 3, 5],
] as const;

/** The feeding round of a day: what is due on the racks whose day it is, and whatever became overdue. */
export function feedRound(house: House, freezer: Freezer): void {
  const { log } = house;
  const week = Math.floor(dayNumber(log.day) / 7);
  let rack = -1;
  for (const beast of inWalkingOrder(house)) {
    if (log.day < beast.look) continue;
    if (beast.home.rack !== rack) log.round(9, 0, keeperOf(beast.home.rack, week));
    rack = beast.home.rack;
    tend(house, beast, freezer);
  }
}

function tend(house: House, beast: Beast, freezer: Freezer): void {
  const { log, chance } = house;
  const due = nextFeedDue(log.animal(beast.id), log.day);
  if (!due.ok) throw new RangeError(due.problem.message);
  const { state, next } = due.value;
  if (state === 'soon') beast.look = next ?? addDays(log.day, 1);
  if (state === 'hold' || state === 'vet') weighAnyway(house, beast);
  if (!isTime(house, beast, state)) return;
  if (log.day >= beast.weighOn) weigh(house, beast);
  if (chance.happens(0.0008)) mistakeAnother(house, beast);
  offer(house, beast, freezer);
}

function isTime({ log, chance }: House, beast: Beast, state: DueState): boolean {
  if (state === 'overdue') return chance.happens(0.4);
  return state === 'due' && feedsOn(beast, weekday(log.day)) && chance.happens(0.9);
}

function feedsOn(beast: Beast, day: number): boolean {
  const { size, rack } = beast.home;
  const days: readonly number[] = size === 'nursery' ? (THRICE[rack % 2] ?? []) : (TWICE[rack % 3] ?? []);
  return days.includes(day);
}

/** Sick and resting animals are weighed as well, but not cooled ones. */
function weighAnyway(house: House, beast: Beast): void {
  const animal = house.log.animal(beast.id);
  const cooled = animal.cooling !== null && animal.cooling.to === null;
  if (!cooled && house.log.day >= addDays(beast.weighOn, 4)) weigh(house, beast);
}

function offer(house: House, beast: Beast, freezer: Freezer): void {
  const { log, chance } = house;
  const wants = !chance.happens(refusal(house, beast));
  const mistaken = !wants && chance.happens(0.008);
  const [event] = log.act(beast.id, { do: wants || mistaken ? 'fed-as-planned' : 'refused' });
  if (event?.kind !== 'prey-offered') return;
  const { prey, count, totalG = 0 } = event.payload;
  freezer.use(prey, count);
  if (wants) eat(beast.body, totalG);
  if (!mistaken) return;
  // The later check finds the prey still lying there: the line is amended, not overwritten.
  house.diary.on(addDays(log.day, 1), () => {
    const payload = { ...event.payload, outcome: 'refused' };
    log.write('slip-made', [beast.id], { corrects: event.id, how: 'amend', payload });
    beast.look = log.day;
  });
}

/** The chance that it leaves its meal. */
function refusal({ log, herd }: House, beast: Beast): number {
  const animal = log.animal(beast.id);
  if (beast.fastsUntil !== null && log.day < beast.fastsUntil) return 0.95;
  if (animal.gravidSince !== null) return 0.7;
  if (animal.mealsTaken < 2 && animal.acquiredOn === null && herd.size > 0) return 0.3;
  if (beast.inSeason && isPairingTime(log.day)) return beast.sex === 'male' ? 0.42 : 0.2;
  return Math.min(0.5, beast.fussy);
}

/** November to March, as the calendar of the facts has it for ball pythons. */
export function isPairingTime(day: Day): boolean {
  const month = Number(day.slice(5, 7));
  return month >= 11 || month <= 3;
}

/** The stamp went onto the neighbour's card: seen at once and taken back. */
function mistakeAnother(house: House, beast: Beast): void {
  const { log, chance, herd } = house;
  const neighbours = [...herd.values()].filter((one) => one !== beast && one.home.rack === beast.home.rack);
  if (neighbours.length === 0) return;
  const other = chance.pick(neighbours);
  const [event] = log.act(other.id, { do: 'fed-as-planned' });
  if (event !== undefined) log.write('slip-made', [other.id], { corrects: event.id, how: 'undo' });
}

/** A meal comes up again: it and a little more is lost. Returns false where the log cannot say so. */
export function regurgitate(house: House, beast: Beast, note: string): boolean {
  const { lastTaken } = house.log.animal(beast.id);
  const events = house.log.act(beast.id, { do: 'regurgitated', note });
  if (events.length === 0 || lastTaken === null) return false;
  lose(beast.body, Math.min(0.06, ((lastTaken.totalG ?? 0) * 0.35) / beast.body.massG));
  beast.look = house.log.day;
  return true;
}
