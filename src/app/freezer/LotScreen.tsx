import {
  type Day,
  type LotRecord,
  parseId,
  problem,
  STOCK_CAUTION,
  sayDayShort,
  sayGramRange,
  sayId,
  sayNumber,
  sayPrey,
  stockLot,
} from '../../core/index.ts';
import '../look/parts.css';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import './freezer.css';
import { LastDay, sayAssumed } from './LastDay.tsx';
import { LotActs } from './LotActs.tsx';
import { LotLedger } from './LotLedger.tsx';

/** One lot: what it is, how much is left and until when, what is done with it, and its ledger. */
export function LotScreen({ id }: { readonly id: string }) {
  const { site, clock } = useApp();
  const read = parseId(id);
  const lot = read.ok ? site.facility.value.lots.get(read.value.id) : undefined;
  if (lot !== undefined) return <Lot lot={lot} today={clock.today.value} />;
  return (
    <section class="screen freezer">
      <h1>Lot</h1>
      <ProblemLine problem={read.ok ? problem('lot-unknown', { id: sayId(read.value.id) }) : read.problem} />
    </section>
  );
}

function Lot({ lot, today }: { readonly lot: LotRecord; readonly today: Day }) {
  return (
    <section class="screen freezer" aria-labelledby="lot-title">
      <p class="soft">
        <a href="/freezer">Freezer</a> · lot {sayId(lot.id)}
      </p>
      <h1 id="lot-title">{sayPrey(lot.prey)}</h1>
      <p class="lot-figure">
        <strong>{sayNumber(lot.left)}</strong> left of {sayNumber(lot.received)}
      </p>
      <p class="lot-day">
        {lot.left === 0 ? (
          <span class="soft">empty by the book</span>
        ) : (
          <LastDay lot={stockLot(lot, today)} today={today} />
        )}
      </p>
      <div class="freezer-body">
        <div>
          <LotActs lot={lot} today={today} />
          <p class="caution">{STOCK_CAUTION}</p>
        </div>
        <div>
          <LotFacts lot={lot} />
          <a class="secondary" href={`/print?what=lot&only=${lot.id}`}>
            Print its label
          </a>
          <LotLedger id={lot.id} />
        </div>
      </div>
    </section>
  );
}

function LotFacts({ lot }: { readonly lot: LotRecord }) {
  const facts: readonly (readonly [string, string | null])[] = [
    ['one item', sayGramRange(lot.eachG)],
    ['came', `${sayDayShort(lot.receivedOn)}, ${sayNumber(lot.received)} items`],
    ['from', lot.source],
    ['treated on the outside', lot.topical],
    ['taken out', sayNumber(lot.used)],
    ['thrown away', sayNumber(lot.wasted)],
    ['counted last', lot.countedOn === null ? 'never' : sayDayShort(lot.countedOn)],
  ];
  return (
    <>
      <dl class="lot-facts">
        {facts.map(([about, says]) =>
          says === null ? null : (
            <div key={about}>
              <dt>{about}</dt>
              <dd>{says}</dd>
            </div>
          ),
        )}
      </dl>
      {lot.useBy === null && <p class="because">{sayAssumed(lot.receivedOn)}</p>}
    </>
  );
}
