import { nameOf, needCsv, type OrderQuestion, orderCsv, sayDayShort, sayNumber } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { saveText } from '../model/files.ts';
import type { ForecastAnswer } from '../workers/forecastMessages.ts';
import { OrderReasons, OrderTable } from './OrderTable.tsx';

interface OrderResultProps {
  readonly question: OrderQuestion;
  readonly answer: ForecastAnswer;
}

/** The order list as it was worked out, and the ways to keep it. */
export function OrderResult({ question, answer: { order, forecast } }: OrderResultProps) {
  const { clock } = useApp();
  const items = order.lines.reduce((sum, line) => sum + line.toOrder, 0);
  const day = clock.today.value;
  return (
    <section class="order-result" aria-labelledby="order-says">
      <h2 id="order-says">{items === 0 ? 'Nothing to order' : `${sayNumber(items)} items to order`}</h2>
      <p>
        Ordered today it comes by {sayDayShort(order.comesOn)} and is to last until {sayDayShort(order.lastsUntil)}:{' '}
        {question.weeks} {question.weeks === 1 ? 'week' : 'weeks'} after it came.
        {order.room !== null && ` The freezer then has room for ${sayNumber(order.room)}.`}
      </p>
      {order.lines.length === 0 ? (
        <p class="empty">No animal is planned to be fed, and the freezer is empty.</p>
      ) : (
        <>
          <OrderTable lines={order.lines} />
          <p class="freezer-links">
            <button type="button" class="secondary" onClick={() => saveText(`order-${day}.csv`, orderCsv(order))}>
              Save the order as CSV
            </button>
            <button type="button" class="secondary" onClick={() => saveText(`need-${day}.csv`, needCsv(forecast))}>
              Save the weeks as CSV
            </button>
          </p>
          <h3>Why so much</h3>
          <p class="because">
            Bars: the mean of a week. Lines: what is enough in 90 of 100 weeks, by the exact sum of all animals’ own
            chances. What each took so far is counted in; refused prey is used up as well.
          </p>
          <OrderReasons lines={order.lines} classes={forecast.classes} />
        </>
      )}
      <Uncounted uncounted={order.uncounted} />
    </section>
  );
}

function Uncounted({ uncounted }: Pick<ForecastAnswer['order'], 'uncounted'>) {
  const { site } = useApp();
  if (uncounted.length === 0) return null;
  return (
    <details class="uncounted">
      <summary>
        {uncounted.length} {uncounted.length === 1 ? 'animal is' : 'animals are'} not counted
      </summary>
      <ul>
        {uncounted.map(({ animal, why }) => (
          <li key={animal}>
            <a href={`/animal/${animal}`}>{nameOf(site.facility.value, animal)}</a> {why}
          </li>
        ))}
      </ul>
    </details>
  );
}
