import '../look/parts.css';
import './shop.css';
import { useSignal } from '@preact/signals';
import { useLocation } from 'preact-iso';
import {
  type Decision,
  type Id,
  makeShedItem,
  type Problem,
  parseId,
  parsePrice,
  problem,
  sayAnimal,
  sayDay,
  sayId,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { FormLine } from './WareForm.tsx';

/** The pieces of one animal’s last shed: how many, at what price. */
export function ShedItemScreen({ id }: { readonly id?: string }) {
  const app = useApp();
  const { route } = useLocation();
  const read = parseId(id ?? '');
  const animal = read.ok ? app.site.facility.value.animals.get(read.value.id) : undefined;
  const count = useSignal('1');
  const price = useSignal('');
  const words = useSignal('');
  const failed = useSignal<Problem | null>(null);
  const doubt = useSignal<Problem | null>(null);
  if (animal === undefined)
    return <Missing why={read.ok ? problem('unknown-id', { id: sayId(read.value.id) }) : read.problem} />;
  const maker = animal;
  async function make(isSure: boolean): Promise<void> {
    const cost = parsePrice(price.value, app.site.facility.value.site.currency);
    failed.value = cost.ok ? null : { ...cost.problem, path: 'price' };
    doubt.value = null;
    if (!cost.ok) return;
    const today = app.clock.today.value;
    const pieces = {
      priceMinor: cost.value,
      count: Number(count.value || Number.NaN),
      ...(words.value.trim() && { words: words.value.trim() }),
    };
    const decide = (item: Id): Decision =>
      makeShedItem(app.site.facility.value, item, maker, pieces, { day: today, today, nowMs: app.clock.nowMs() });
    let made: Id | null = null;
    const written = await app.site.writeNew((mint) => {
      const item = mint();
      const decision = decide(item);
      if (decision.kind === 'refused') failed.value = decision.problem;
      if (decision.kind === 'asks') doubt.value = decision.problem;
      if (decision.kind === 'refused' || (decision.kind === 'asks' && !isSure)) return [];
      made = item;
      return decision.drafts;
    });
    if (!written.ok) failed.value = written.problem;
    else if (made !== null) route(`/item/${made}`);
  }
  return (
    <section class="screen shop" aria-labelledby="shed-title">
      <h1 id="shed-title">Shed of {sayAnimal(animal)}</h1>
      <p class="soft">
        <i>{animal.species}</i>
        {animal.lastShedOn === null ? ', no shed written yet' : `, shed on ${sayDay(animal.lastShedOn)}`}
      </p>
      <form
        class="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void make(false);
        }}
      >
        <FormLine
          label="Pieces"
          hint="Each gets a tag."
          value={count.value}
          fault={faultAt(failed.value, 'count')}
          onInput={(text) => {
            count.value = text;
          }}
        />
        <FormLine
          label="Price of each"
          value={price.value}
          fault={faultAt(failed.value, 'price')}
          onInput={(text) => {
            price.value = text;
          }}
        />
        <FormLine
          label="A line more for the tag"
          hint="Length, whole or in part."
          value={words.value}
          fault={null}
          onInput={(text) => {
            words.value = text;
          }}
        />
        {failed.value !== null && failed.value.path === undefined && <ProblemLine problem={failed.value} />}
        {doubt.value !== null && <ProblemLine problem={doubt.value} />}
        {doubt.value !== null ? (
          <button type="button" class="primary" onClick={() => void make(true)}>
            Yes, make them all the same
          </button>
        ) : (
          <button type="submit" class="primary">
            Make the shed item
          </button>
        )}
      </form>
      <p class="shop-caution">
        From a live reptile: it may carry Salmonella. Dry it, keep it in its sleeve, wash your hands, and keep it from
        food and from children under 5. Its tag says so. Check the rules for the species before it goes abroad.
      </p>
    </section>
  );
}

function faultAt(failed: Problem | null, path: string): Problem | null {
  return failed?.path === path ? failed : null;
}

function Missing({ why }: { readonly why: Problem }) {
  return (
    <section class="screen shop">
      <h1>No such animal</h1>
      <ProblemLine problem={why} />
      <a class="primary" href="/shop">
        Shop
      </a>
    </section>
  );
}
