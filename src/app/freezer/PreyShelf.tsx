import { type Day, type StockLot, sayDayShort, sayId, sayNumber, sayPrey } from '../../core/index.ts';
import { LastDay } from './LastDay.tsx';

interface PreyShelfProps {
  readonly prey: string;
  /** The oldest first. */
  readonly lots: readonly StockLot[];
  readonly today: Day;
}

/** One class of prey: its lots, the oldest first, each opening its own page. */
export function PreyShelf({ prey, lots, today }: PreyShelfProps) {
  const good = lots.filter(({ state }) => state !== 'past').reduce((sum, lot) => sum + lot.left, 0);
  return (
    <section class="shelf" aria-labelledby={`shelf-${prey}`}>
      <h2 id={`shelf-${prey}`}>
        {sayPrey(prey)} <span class="shelf-count">{sayNumber(good)}</span>
      </h2>
      <ol class="lots">
        {lots.map((lot) => (
          <li key={lot.id} class={`lot lot-is-${lot.state}`}>
            <a class="lot-link" href={`/lot/${lot.id}`}>
              <strong class="lot-left">{sayNumber(lot.left)}</strong>
              <span class="lot-words">
                <span>
                  {sayId(lot.id)} <span class="soft">came {sayDayShort(lot.receivedOn)}</span>
                </span>
                <LastDay lot={lot} today={today} />
                {lot.topical !== null && <span class="soft">treated: {lot.topical}</span>}
              </span>
            </a>
          </li>
        ))}
      </ol>
    </section>
  );
}
