import { type Day, type GrowthPlot, sayDay, sayDayShort, sayGrams } from '../../../core/index.ts';

interface GrowthTableProps {
  readonly plot: GrowthPlot;
  readonly on: Day;
}

interface Row {
  readonly day: Day;
  readonly what: string;
  readonly grams: string;
}

/** The same as a table, the newest first, for readers of the page and for who wants the figures. */
export function GrowthTable({ plot, on }: GrowthTableProps) {
  const rows = rowsOf(plot);
  return (
    <details class="growth-table">
      <summary>The same as a table</summary>
      <table>
        <caption class="unseen">{`Weights, feeds, sheds, layings and treatments up to ${sayDayShort(on)}`}</caption>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">What</th>
            <th scope="col" class="growth-figure">
              Grams
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ day, what, grams }, at) => (
            <tr key={`${at} ${day}`}>
              <td>
                <time dateTime={day} title={`${day} · ${sayDay(day)}`}>
                  {sayDayShort(day)}
                </time>
              </td>
              <td>{what}</td>
              <td class="growth-figure">{grams}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

function rowsOf({ weights, feeds, sheds, layings, treatments }: GrowthPlot): readonly Row[] {
  const rows: readonly Row[] = [
    ...layings.map(({ day, words }) => ({ day, what: words, grams: '' })),
    ...weights.map(({ day, weightG, doubted }) => ({
      day,
      what: doubted === true ? 'weighed, asked about and confirmed' : 'weighed',
      grams: sayGrams(weightG),
    })),
    ...feeds.map(({ day, grams, taken }) => ({
      day,
      what: taken ? 'fed' : 'refused',
      grams: grams === null ? '' : sayGrams(grams),
    })),
    ...sheds.map((day) => ({ day, what: 'shed', grams: '' })),
    ...treatments.map(({ day, words }) => ({ day, what: words, grams: '' })),
  ];
  return rows.toSorted((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : 0));
}
