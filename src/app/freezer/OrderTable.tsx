import { type OrderLine, type PreyForecast, sayDayShort, sayNumber, sayPrey } from '../../core/index.ts';
import { NeedChart } from './NeedChart.tsx';

/** What to order at a glance: one class of prey a line. */
export function OrderTable({ lines }: { readonly lines: readonly OrderLine[] }) {
  return (
    <table class="order-list">
      <thead>
        <tr>
          <th scope="col">Prey</th>
          <th scope="col">Order</th>
          <th scope="col">Mean</th>
          <th scope="col">90 %</th>
          <th scope="col">In freezer</th>
          <th scope="col">Ends</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.prey}>
            <th scope="row">{sayPrey(line.prey)}</th>
            <Ordered line={line} />
            <td>{sayNumber(Math.round(line.need.mean))}</td>
            <td>{sayNumber(line.need.most)}</td>
            <td>{sayNumber(line.inStock)}</td>
            <td>{line.endsOn === null ? <span class="soft">lasts</span> : <Ends day={line.endsOn} />}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Ordered({ line: { toOrder, wanted } }: { readonly line: OrderLine }) {
  return (
    <td class={toOrder === 0 && wanted === 0 ? 'order-none' : 'order-count'}>
      {toOrder === 0 && wanted === 0 ? 'none' : sayNumber(toOrder)}
      {toOrder < wanted && <span class="order-cut">of {sayNumber(wanted)}</span>}
    </td>
  );
}

/** The year stands in the reasons. */
function Ends({ day }: { readonly day: NonNullable<OrderLine['endsOn']> }) {
  return (
    <time dateTime={day} title={day}>
      {sayDayShort(day).replace(/ \d{4}$/, '')}
    </time>
  );
}

interface OrderReasonsProps {
  readonly lines: readonly OrderLine[];
  readonly classes: readonly PreyForecast[];
}

/** Why so much: one class of prey under another, with its weeks. */
export function OrderReasons({ lines, classes }: OrderReasonsProps) {
  return (
    <ol class="order-lines">
      {lines.map((line) => (
        <Reasons key={line.prey} line={line} need={classes.find((one) => one.prey === line.prey)} />
      ))}
    </ol>
  );
}

function Reasons({ line, need }: { readonly line: OrderLine; readonly need: PreyForecast | undefined }) {
  return (
    <li class="order-line">
      <h3>{sayPrey(line.prey)}</h3>
      <ul class="because">
        {line.why.map((why) => (
          <li key={why}>{why}</li>
        ))}
      </ul>
      {need !== undefined && <NeedChart need={need} />}
    </li>
  );
}
