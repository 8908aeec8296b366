import '../look/parts.css';
import './shop.css';
import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { type ItemRecord, saleList } from '../../core/index.ts';
import { Lens } from '../look/Lens.tsx';
import { useApp } from '../model/app.ts';
import { ItemList } from './ItemList.tsx';
import { MakeShed } from './MakeShed.tsx';
import { SaleList } from './SaleList.tsx';
import { SaveTables } from './SaveTables.tsx';
import { ScanModes } from './ScanModes.tsx';
import { WareForm } from './WareForm.tsx';

type Shelf = 'wares' | 'sheds' | 'animals';

/** The shop: what is on the shelves, selling and counting by scan, and the animals on offer. */
export function ShopScreen({ gtin }: { readonly gtin?: string }) {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const shelf = useSignal<Shelf>('wares');
  const today = clock.today.value;
  const offered = useMemo(() => saleList(facility, today), [facility, today]);
  const items = [...facility.items.values()].filter((item) => item.retiredOn === null).sort(byName);
  const wares = items.filter((item) => item.kind === 'ware');
  const sheds = items.filter((item) => item.kind === 'shed');
  const { currency } = facility.site;
  return (
    <section class="screen shop" aria-labelledby="shop-title">
      <h1 id="shop-title">Shop</h1>
      {currency === null && (
        <p class="shop-first">
          The site has no currency yet. <a href="/books">Set it in Books</a>, and prices can be written.
        </p>
      )}
      <ScanModes />
      <Lens
        label="Shelf"
        choices={[
          { id: 'wares', words: 'Wares', count: wares.length },
          { id: 'sheds', words: 'Shed items', count: sheds.length },
          { id: 'animals', words: 'On offer', count: offered.length },
        ]}
        chosen={shelf.value}
        choose={(next) => {
          shelf.value = next;
        }}
      />
      {shelf.value === 'wares' && (
        <>
          <ItemList items={wares} empty="No ware yet. Add the first one below; its tag comes off the press." />
          <WareForm start={gtin === undefined ? {} : { gtin }} />
        </>
      )}
      {shelf.value === 'sheds' && (
        <>
          <MakeShed />
          <ItemList items={sheds} empty="No shed item yet. Log a shed, then scan the animal’s card here." />
        </>
      )}
      {shelf.value === 'animals' && <SaleList offered={offered} />}
      <SaveTables offered={offered} />
    </section>
  );
}

function byName(a: ItemRecord, b: ItemRecord): number {
  return a.name < b.name ? -1 : a.name > b.name ? 1 : a.id < b.id ? -1 : 1;
}
