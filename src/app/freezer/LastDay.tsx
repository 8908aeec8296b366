import { addDays, type Day, daysBetween, LOT_LIFE_DAYS, type StockLot, sayDay, sayDistance } from '../../core/index.ts';

/** Until when a lot may be fed: the day, how far it is, and whether anybody wrote it. Past ones say what to do. */
export function LastDay({ lot, today }: { readonly lot: StockLot; readonly today: Day }) {
  const { lastDay, isAssumed, state } = lot;
  const day = (
    <time dateTime={lastDay} title={lastDay}>
      {lastDay.slice(0, 4) === today.slice(0, 4) ? sayDay(lastDay).replace(/ \d{4}$/, '') : sayDay(lastDay)}
    </time>
  );
  if (state === 'past') {
    const days = daysBetween(lastDay, today);
    return (
      <span class="lot-past">
        past its day by {days} {days === 1 ? 'day' : 'days'}: throw it away and log it
      </span>
    );
  }
  return (
    <span>
      use by {day}, {sayDistance(today, lastDay)}
      {isAssumed && <span class="soft"> (assumed)</span>}
      {state === 'old' && <span class="lot-old"> older than 6 months</span>}
    </span>
  );
}

/** What is assumed for a lot that has no day of its own, in words. */
export function sayAssumed(receivedOn: Day): string {
  return `No day was written for it: ${LOT_LIFE_DAYS[1]} days from receipt are assumed, until ${sayDay(addDays(receivedOn, LOT_LIFE_DAYS[1]))} (6–12 months at −18 °C; S: a source of low quality).`;
}
