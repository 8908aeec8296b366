import {
  ORDER_LIMITS,
  type OrderQuestion,
  ok,
  RESERVE_SHARE,
  type Result,
  refuse,
  type SiteRules,
} from '../../core/index.ts';
import { written } from '../books/Field.tsx';

/** An order where a site has said nothing: for a month, a week's wait. */
const USUAL = { orderWeeks: 4, leadDays: 7 } as const;

/** The site's own figures for an order; what it has not said is the usual. */
export function questionOf({ orderWeeks, leadDays, freezerItems, reservePercent }: SiteRules): OrderQuestion {
  return {
    weeks: orderWeeks ?? USUAL.orderWeeks,
    leadDays: leadDays ?? USUAL.leadDays,
    reserveShare: reservePercent === null ? RESERVE_SHARE : reservePercent / 100,
    ...(freezerItems !== null && { spaceItems: freezerItems }),
  };
}

type OrderRules = Pick<SiteRules, 'orderWeeks' | 'leadDays' | 'freezerItems' | 'reservePercent'>;

/** Reads the form of an order. Errors: `order-malformed`. */
export function orderRulesIn(form: FormData): Result<OrderRules> {
  const [leastWeeks, mostWeeks] = ORDER_LIMITS.weeks;
  const [leastLead, mostLead] = ORDER_LIMITS.leadDays;
  const orderWeeks = wholeIn(written(form, 'weeks'), leastWeeks, mostWeeks);
  if (orderWeeks === null) return malformed(`the weeks must be a whole number from ${leastWeeks} to ${mostWeeks}`);
  const leadDays = wholeIn(written(form, 'lead'), leastLead, mostLead);
  if (leadDays === null)
    return malformed(`the days until it comes must be a whole number from ${leastLead} to ${mostLead}`);
  const space = written(form, 'space');
  const freezerItems = space === '' ? null : wholeIn(space, 0, MOST_ITEMS);
  if (space !== '' && freezerItems === null)
    return malformed('the items that the freezer holds must be a whole number');
  const reservePercent = Number(written(form, 'reserve').replace(',', '.'));
  if (!(reservePercent >= 0 && reservePercent <= 100)) return malformed('the reserve must be from 0 to 100 %');
  return ok({ orderWeeks, leadDays, freezerItems, reservePercent });
}

const MOST_ITEMS = 1_000_000;

function wholeIn(text: string, least: number, most: number): number | null {
  const value = Number(text);
  return text !== '' && Number.isInteger(value) && value >= least && value <= most ? value : null;
}

function malformed(why: string): Result<never> {
  return refuse('order-malformed', { why });
}
