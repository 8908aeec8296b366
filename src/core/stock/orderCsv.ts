import { csvText } from '../pack/index.ts';
import { roundTo } from '../units.ts';
import type { SiteForecast } from './forecast.ts';
import type { OrderList } from './order.ts';
import { sayPrey } from './prey.ts';

const ORDER_HEADS = [
  ...['prey', 'name', 'animals', 'order', 'wanted', 'need_mean', 'need_90_percent', 'in_freezer', 'past_first'],
  ...['past', 'stock_ends_on', 'because'],
];

/** The order list as a CSV file, one class of prey a row; no cell is read as a formula. */
export function orderCsv({ lines }: OrderList): string {
  const rows = lines.map((line) => [
    ...[line.prey, sayPrey(line.prey), line.animals, line.toOrder, line.wanted, roundTo(line.need.mean, 2)],
    ...[line.need.most, line.inStock, line.expiring, line.past, line.endsOn, line.why.join('; ')],
  ]);
  return csvText([ORDER_HEADS, ...rows]);
}

/** The need of each class and week as a CSV file. */
export function needCsv({ classes }: SiteForecast): string {
  const rows = classes.flatMap(({ prey, animals, weeks }) =>
    weeks.map(({ from, mean, most }) => [prey, sayPrey(prey), animals, from, roundTo(mean, 2), most]),
  );
  return csvText([['prey', 'name', 'animals', 'week_from', 'need_mean', 'need_90_percent'], ...rows]);
}
