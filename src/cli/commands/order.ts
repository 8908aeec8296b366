import {
  nameOf,
  ORDER_LIMITS,
  type OrderLine,
  type OrderList,
  orderList,
  RESERVE_SHARE,
  STOCK_CAUTION,
  sayDayShort,
  sayPrey,
} from '../../core/index.ts';
import { type Given, noWords, wholeOf } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import { type Io, say, warn } from '../io.ts';
import { orRefuse, refusal } from '../refused.ts';
import { openSite } from '../site.ts';
import { alignedRows } from '../table.ts';

const DEFAULT_LEAD_DAYS = 0;
const MOST_SPACE = 1_000_000;

const HELP = `tubwright order --site FILE|DIR --weeks N [--lead DAYS] [--space ITEMS] [--on DATE] [--json]

What prey to order so that it lasts N weeks after it came: per class what is needed until then (the mean, and the count
that is enough in 90 of 100 cases), what the freezer has of it, what will pass its day first, and why. ${RESERVE_SHARE * 100} % are added for
the spare that is thawed. Animals that are cooled or held without an end are not counted, and named.

  --site FILE|DIR  an event log (NDJSON), or a hub's folder
  --weeks N        for how many weeks, ${ORDER_LIMITS.weeks.join(' to ')}
  --lead DAYS      how many days it takes to come, ${ORDER_LIMITS.leadDays.join(' to ')} (default: ${DEFAULT_LEAD_DAYS})
  --space ITEMS    how many items the freezer holds in all; the order is cut to what has room
  --on DATE        the day of ordering, such as 2026-11-25 (default: today at the site)
  --json           {"comesOn","lastsUntil","room":number|null,
                   "lines":[{"prey","name","animals","need":{"mean","most"},"inStock","expiring","past","toOrder","wanted",
                   "endsOn","why":[…]}],"uncounted":[{"animal","why"}]}

${STOCK_CAUTION}`;

/** What prey to order. */
export const order: Command = {
  help: HELP,
  options: { site: 'text', on: 'text', weeks: 'text', lead: 'text', space: 'text', json: 'bare' },
  run: runOrder,
};

async function runOrder(given: Given, io: Io): Promise<ExitCode> {
  noWords(given);
  const weeks = wholeOf(given, 'weeks', ORDER_LIMITS.weeks);
  if (weeks === undefined) throw refusal('option-missing', { command: given.command, option: '--weeks' });
  const leadDays = wholeOf(given, 'lead', ORDER_LIMITS.leadDays) ?? DEFAULT_LEAD_DAYS;
  const spaceItems = wholeOf(given, 'space', [0, MOST_SPACE]);
  const { facility, on } = await openSite(given, io);
  const space = spaceItems === undefined ? {} : { spaceItems };
  const list = orRefuse(orderList(facility, { weeks, leadDays, reserveShare: RESERVE_SHARE, ...space }, on));
  if (given.bare.has('json')) say(io, JSON.stringify(asJson(list)));
  else sayList(io, list);
  for (const { animal, why } of list.uncounted) warn(io, `${nameOf(facility, animal)} is not counted: ${why}`);
  return 0;
}

function asJson({ lines, ...list }: OrderList) {
  return { ...list, lines: lines.map((line) => ({ name: sayPrey(line.prey), ...line })) };
}

const TITLES = ['prey', 'order', 'mean', 'most', 'in freezer', 'past first', 'ends'];

function sayList(io: Io, { lines, comesOn, lastsUntil, room }: OrderList): void {
  if (lines.length === 0) {
    say(io, 'Nothing to order: no animal is planned to be fed, and the freezer is empty.');
    return;
  }
  const rows = alignedRows([TITLES, ...lines.map(cells)]);
  say(io, rows[0] ?? '');
  for (const [at, line] of lines.entries()) {
    say(io, rows[at + 1] ?? '');
    for (const reason of line.why) say(io, `    ${reason}`);
  }
  const items = lines.reduce((sum, line) => sum + line.toOrder, 0);
  const has = room === null ? '' : `; the freezer has room for ${room}`;
  say(io, `${items} to order, to come by ${sayDayShort(comesOn)} and last until ${sayDayShort(lastsUntil)}${has}`);
  say(io, STOCK_CAUTION);
}

function cells(line: OrderLine): readonly string[] {
  const { prey, toOrder, need, inStock, expiring, endsOn } = line;
  const figures = [toOrder, Math.round(need.mean), need.most, inStock, expiring].map(String);
  return [sayPrey(prey), ...figures, endsOn ?? 'lasts'];
}
