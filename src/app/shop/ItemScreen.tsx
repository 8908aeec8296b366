import '../look/parts.css';
import './shop.css';
import { useSignal } from '@preact/signals';
import {
  type ItemRecord,
  isTagStale,
  numberOf,
  type Problem,
  parseId,
  problem,
  sayDayShort,
  sayId,
} from '../../core/index.ts';
import { Notch } from '../look/Notch.tsx';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { Ledger } from '../record/Ledger.tsx';
import { ItemDeeds } from './ItemDeeds.tsx';
import { textOf, WareForm } from './WareForm.tsx';
import { itemStanding, priceWords } from './words.ts';

/** One ware or shed item: what is left, what is done with it, and its ledger. */
export function ItemScreen({ id }: { readonly id?: string }) {
  const { site } = useApp();
  const read = parseId(id ?? '');
  const item = read.ok ? site.facility.value.items.get(read.value.id) : undefined;
  if (item === undefined)
    return <Missing why={read.ok ? problem('unknown-id', { id: sayId(read.value.id) }) : read.problem} />;
  return <Item key={item.id} item={item} />;
}

function Item({ item }: { readonly item: ItemRecord }) {
  const { site } = useApp();
  const again = useSignal(0);
  const facility = site.facility.value;
  const { currency } = facility.site;
  const number = numberOf(item);
  return (
    <section class="screen shop" aria-labelledby="item-title">
      <h1 id="item-title">{item.kind === 'shed' ? `Shed of ${item.name}` : item.name}</h1>
      <p class="shop-figures">
        <strong>{priceWords(item.priceMinor, currency)}</strong>
        <span>{itemStanding(item).words}</span>
        {isTagStale(facility, item) && <Notch kind="look" word="tag out of date" />}
      </p>
      <Facts item={item} number={number} />
      <ItemDeeds item={item} />
      <a class="secondary shop-print" href={`/print?what=${item.kind}&only=${item.id}`}>
        Print its tags
      </a>
      {item.kind === 'ware' && (
        <a class="secondary shop-print" href={`/print?what=shelf&only=${item.id}`}>
          Print its shelf tag
        </a>
      )}
      {item.kind === 'ware' && (
        <WareForm
          key={again.value}
          item={item}
          start={textOf(item, currency)}
          onDone={() => {
            again.value += 1;
          }}
        />
      )}
      <Ledger id={item.id} />
    </section>
  );
}

function Facts({ item, number }: { readonly item: ItemRecord; readonly number: string | null }) {
  const facts: readonly (readonly [string, string])[] = [
    ['Id', sayId(item.id)],
    ...(number === null ? [] : ([[item.gtin === null ? 'Our number' : 'Maker’s number', number]] as const)),
    ...(item.species === null ? [] : ([['Species', item.species]] as const)),
    ...(item.shedOn === null ? [] : ([['Shed on', sayDayShort(item.shedOn)]] as const)),
    ...(item.words === null ? [] : ([['Tag says', item.words]] as const)),
    ['Made or received', String(item.made)],
    ['Sold', item.lastSoldOn === null ? String(item.sold) : `${item.sold}, last on ${sayDayShort(item.lastSoldOn)}`],
    ...(item.wasted === 0 ? [] : ([['Gone otherwise', String(item.wasted)]] as const)),
    ...(item.countedOn === null ? [] : ([['Counted on', sayDayShort(item.countedOn)]] as const)),
    ['Tag', item.printed === null ? 'not printed yet' : `printed ${sayDayShort(item.printed.day)}`],
  ];
  return (
    <dl class="shop-facts">
      {facts.map(([term, words]) => (
        <div key={term}>
          <dt>{term}</dt>
          <dd>{words}</dd>
        </div>
      ))}
    </dl>
  );
}

function Missing({ why }: { readonly why: Problem }) {
  return (
    <section class="screen shop">
      <h1>No such item</h1>
      <ProblemLine problem={why} />
      <a class="primary" href="/shop">
        Shop
      </a>
    </section>
  );
}
