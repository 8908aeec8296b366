import { addDays, type Day, daysBetween, sayDayShort } from '../days.ts';
import type { Facility } from '../facility/index.ts';
import { ok, type Result, refuse } from '../problems.ts';
import type { Uncounted } from './eaters.ts';
import { type OnAnimals, type WholeNeed, wholeNeed } from './forecast.ts';
import { LOT_LIFE_DAYS, lotsInFreezer, type StockLot } from './lots.ts';
import { WEEK_DAYS } from './renewal.ts';

/** What an order is for. */
export interface OrderQuestion {
  /** It is to last so many weeks after it came, 1 to 26. */
  readonly weeks: number;
  /** It comes after so many days, 0 to 90. */
  readonly leadDays: number;
  /** Items that the freezer holds in all; left out where nobody counts that. */
  readonly spaceItems?: number;
  /** So much more than the 90 % figure, as a share. */
  readonly reserveShare: number;
}

/** Rule CARE-ORDER: the reserve is the spare of the thaw list (CARE-THAW), which is thawed and used up as well. */
export const RESERVE_SHARE = 0.05;
/** The limits of {@link OrderQuestion}. */
export const ORDER_LIMITS = { weeks: [1, 26], leadDays: [0, 90] } as const;

/** One class of prey of an order. */
export interface OrderLine {
  readonly prey: string;
  readonly animals: number;
  /** Items until the order is used up: from today over the wait and the weeks. */
  readonly need: { readonly mean: number; readonly most: number };
  /** Items in the freezer that are not past their day. */
  readonly inStock: number;
  /** Of these, items that will pass their day before anybody needs them. */
  readonly expiring: number;
  /** Items past their day: to be thrown away. */
  readonly past: number;
  readonly toOrder: number;
  /** What would be ordered if the freezer had room. */
  readonly wanted: number;
  /** The day on which the stock ends at the mean need; null if it lasts. */
  readonly endsOn: Day | null;
  readonly why: readonly string[];
}

/** An order list. */
export interface OrderList {
  readonly comesOn: Day;
  /** The last day that it is for. */
  readonly lastsUntil: Day;
  readonly lines: readonly OrderLine[];
  /** Items that the freezer has room for when the order comes; null where nobody said what it holds. */
  readonly room: number | null;
  readonly uncounted: readonly Uncounted[];
}

/**
 * Rule CARE-ORDER: per class the 90 % figure from today until the end of the weeks that begin when the order comes, and
 * the reserve, less what is in stock and will not pass its day first; cut in proportion where the freezer is too small.
 * Errors: `order-malformed`.
 */
export function orderList(
  facility: Facility,
  question: OrderQuestion,
  on: Day,
  onAnimals?: OnAnimals,
): Result<OrderList> {
  const wrong = whatIsWrong(question);
  if (wrong !== null) return refuse('order-malformed', { why: wrong });
  const days = question.leadDays + question.weeks * WEEK_DAYS;
  const { classes, uncounted } = wholeNeed(facility, on, days, onAnimals);
  const stock = lotsInFreezer(facility, on);
  const prey = [...new Set([...classes.map((one) => one.prey), ...stock.keys()])].sort();
  const drafts = prey.map((one) => {
    const need = classes.find((known) => known.prey === one) ?? noNeed(one, days);
    return draftOf(need, stock.get(one) ?? [], question, on);
  });
  const room = question.spaceItems === undefined ? null : Math.max(0, question.spaceItems - stays(drafts));
  const orders = room === null ? drafts.map((one) => one.wanted) : shared(drafts, room);
  return ok({
    comesOn: addDays(on, question.leadDays),
    lastsUntil: addDays(on, days - 1),
    lines: drafts.map((draft, at) => lineOf(draft, orders[at] ?? 0, question, on)),
    room,
    uncounted,
  });
}

interface Draft {
  readonly need: WholeNeed;
  readonly inStock: number;
  readonly past: number;
  readonly expiring: number;
  readonly wanted: number;
  /** Items that are still there when the order comes, at the mean need. */
  readonly stays: number;
  readonly endsOn: Day | null;
  readonly assumed: number;
}

function draftOf(need: WholeNeed, lots: readonly StockLot[], question: OrderQuestion, on: Day): Draft {
  const good = lots.filter((lot) => lot.state !== 'past');
  const [inStock, past] = [itemsOf(good), itemsOf(lots) - itemsOf(good)];
  const { expiring, stays, endsOn } = usedUp(good, need.byDay, question.leadDays, on);
  const level = Math.ceil(roundedUp(need.most * (1 + question.reserveShare)));
  const wanted = Math.max(0, level - (inStock - expiring));
  const assumed = good.filter((lot) => lot.isAssumed).length;
  return { need, inStock, past, expiring, wanted, stays, endsOn, assumed };
}

/** 105.00000000000001 is 105. */
function roundedUp(items: number): number {
  return Number(items.toFixed(9));
}

/** Uses the lots up at the mean need, oldest first; what is in a lot after its day is lost. */
function usedUp(lots: readonly StockLot[], byDay: Float64Array, leadDays: number, on: Day) {
  const left = lots.map((lot) => ({ items: lot.left, days: daysBetween(on, lot.lastDay) }));
  let [lost, stays]: [number, number] = [0, itemsOf(lots)];
  let endsOn: Day | null = null;
  for (const [day, need] of byDay.entries()) {
    for (const lot of left) if (lot.days < day) [lost, lot.items] = [lost + lot.items, 0];
    if (day === leadDays) stays = left.reduce((sum, lot) => sum + lot.items, 0);
    let wanted = need;
    for (const lot of left) {
      const taken = Math.min(lot.items, wanted);
      lot.items -= taken;
      wanted -= taken;
    }
    if (wanted > 1e-9 && endsOn === null) endsOn = addDays(on, day);
  }
  return { expiring: Math.floor(roundedUp(lost)), stays: Math.ceil(roundedUp(stays)), endsOn };
}

function itemsOf(lots: readonly StockLot[]): number {
  return lots.reduce((sum, lot) => sum + lot.left, 0);
}

/** What lies past its day takes room until somebody throws it away. */
function stays(drafts: readonly Draft[]): number {
  return drafts.reduce((sum, draft) => sum + draft.stays + draft.past, 0);
}

/** Each class gets its share of the room, whole items; what is left over goes to the largest remainders. */
function shared(drafts: readonly Draft[], room: number): readonly number[] {
  const all = drafts.reduce((sum, draft) => sum + draft.wanted, 0);
  if (all <= room) return drafts.map((draft) => draft.wanted);
  const exact = drafts.map((draft) => (draft.wanted * room) / all);
  const whole = exact.map(Math.floor);
  const byRest = exact.map((items, at) => ({ at, rest: items - Math.floor(items) })).sort((a, b) => b.rest - a.rest);
  const over = room - whole.reduce((sum, items) => sum + items, 0);
  for (const { at } of byRest.slice(0, over)) whole[at] = (whole[at] ?? 0) + 1;
  return whole;
}

function lineOf(draft: Draft, toOrder: number, question: OrderQuestion, on: Day): OrderLine {
  const { need, inStock, expiring, past, wanted, endsOn } = draft;
  return {
    prey: need.prey,
    animals: need.animals,
    need: { mean: need.mean, most: need.most },
    inStock,
    expiring,
    past,
    toOrder,
    wanted,
    endsOn,
    why: reasons(draft, toOrder, question, on),
  };
}

function reasons(draft: Draft, toOrder: number, question: OrderQuestion, on: Day): readonly string[] {
  const { need, inStock, expiring, past, wanted, endsOn, assumed } = draft;
  const { leadDays, weeks, reserveShare } = question;
  const comesOn = addDays(on, leadDays);
  const words: string[] = [];
  if (need.animals === 0) words.push('no animal is planned to get it');
  else
    words.push(
      `${counted(need.animals, 'animal')}: about ${Math.round(need.mean)} in ${leadDays} days and ${weeks} weeks, ${need.most} are enough in 90 of 100 cases, and ${roundedUp(reserveShare * 100)} % more`,
    );
  if (endsOn !== null && endsOn < comesOn)
    words.push(`the stock ends about ${sayDayShort(endsOn)}, before an order comes on ${sayDayShort(comesOn)}`);
  if (expiring > 0)
    words.push(`${expiring} of ${inStock} will pass their day first: use them, or plan them for others`);
  if (past > 0) words.push(`${past} past their day: throw them away and log it`);
  if (assumed > 0)
    words.push(`${counted(assumed, 'lot')} without a use-by day: ${LOT_LIFE_DAYS[1]} days from receipt are assumed`);
  if (toOrder < wanted) words.push(`${wanted} wanted, but the freezer has no room for more: order again in between`);
  return words;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

function noNeed(prey: string, days: number): WholeNeed {
  return { prey, animals: 0, byDay: new Float64Array(days), mean: 0, most: 0 };
}

function whatIsWrong({ weeks, leadDays, spaceItems, reserveShare }: OrderQuestion): string | null {
  if (!isWhole(weeks, ORDER_LIMITS.weeks))
    return `the weeks must be a whole number from ${ORDER_LIMITS.weeks.join(' to ')}`;
  if (!isWhole(leadDays, ORDER_LIMITS.leadDays))
    return `the days until it comes must be a whole number from ${ORDER_LIMITS.leadDays.join(' to ')}`;
  if (spaceItems !== undefined && !isWhole(spaceItems, [0, 10_000_000]))
    return 'the items that the freezer holds must be a whole number';
  return reserveShare >= 0 && reserveShare <= 1 ? null : 'the reserve must be a share from 0 to 1';
}

function isWhole(value: number, [least, most]: readonly [number, number]): boolean {
  return Number.isInteger(value) && value >= least && value <= most;
}
