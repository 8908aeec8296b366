import { useEffect } from 'preact/hooks';
import { type OrderQuestion, STOCK_CAUTION, sayNumber } from '../../core/index.ts';
import '../look/parts.css';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import './freezer.css';
import { OrderForm } from './OrderForm.tsx';
import { OrderResult } from './OrderResult.tsx';
import { questionOf } from './orderDraft.ts';
import { type ForecastState, useForecast } from './useForecast.ts';

/** What prey to order, so that it lasts: the need of the weeks to come against the freezer. */
export function OrderScreen() {
  const { site, clock } = useApp();
  const { state, begin, cancel } = useForecast();
  const facility = site.facility.value;
  const question = questionOf(facility.site.rules);
  const today = clock.today.value;
  // What is written while the list is looked at does not turn it over: only other figures or another day do.
  useEffect(() => begin(site.facility.value, question, today), [JSON.stringify(question), today]);
  return (
    <section class="screen freezer order" aria-labelledby="order-title">
      <p class="soft">
        <a href="/freezer">Freezer</a>
      </p>
      <h1 id="order-title">What to order</h1>
      <div class="freezer-body">
        <div>
          <details class="order-part" open={facility.site.rules.orderWeeks === null}>
            <summary>{sayQuestion(question)}</summary>
            <OrderForm question={question} />
          </details>
        </div>
        <div>
          <Working state={state} cancel={cancel} again={() => begin(site.facility.value, question, today)} />
          {state.at === 'done' && <OrderResult question={state.question} answer={state.answer} />}
        </div>
      </div>
      <p class="caution">{STOCK_CAUTION}</p>
    </section>
  );
}

function sayQuestion({ weeks, leadDays, spaceItems, reserveShare }: OrderQuestion): string {
  const space = spaceItems === undefined ? '' : `, the freezer holds ${sayNumber(spaceItems)}`;
  const reserve = Number((100 * reserveShare).toFixed(6));
  return `For ${weeks} ${weeks === 1 ? 'week' : 'weeks'}, ${leadDays} days on the way${space}, ${reserve} % in reserve`;
}

interface WorkingProps {
  readonly state: ForecastState;
  cancel(): void;
  again(): void;
}

function Working({ state, cancel, again }: WorkingProps) {
  switch (state.at) {
    case 'working':
      return (
        <div class="order-work">
          <p role="status">
            {state.progress === null
              ? 'Working out the need …'
              : `Working out the need: ${sayNumber(state.progress.done)} of ${sayNumber(state.progress.of)}`}
          </p>
          <progress
            aria-label="How far the forecast is"
            {...(state.progress === null || state.progress.of === 0
              ? {}
              : { max: state.progress.of, value: state.progress.done })}
          />
          <button type="button" class="secondary" onClick={cancel}>
            Cancel
          </button>
        </div>
      );
    case 'failed':
      return <ProblemLine problem={state.problem} />;
    case 'none':
      return (
        <button type="button" class="primary" onClick={again}>
          Work it out
        </button>
      );
    case 'done':
      return null;
    default:
      return state satisfies never;
  }
}
