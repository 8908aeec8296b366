import './shop.css';
import { useSignal } from '@preact/signals';
import {
  type AnimalRecord,
  daysBetween,
  endOffer,
  LONG_OFFER_DAYS,
  offerAnimal,
  offerFault,
  type Problem,
  parsePrice,
  sayAnimal,
  sayDayShort,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { Sheet } from '../shell/Sheet.tsx';
import { FormLine } from './WareForm.tsx';
import { priceWords } from './words.ts';

/** Whether an animal is on offer, at what price and since when; and why it cannot be. */
export function OfferPart({ animal }: { readonly animal: AnimalRecord }) {
  const app = useApp();
  const open = useSignal(false);
  const today = app.clock.today.value;
  const moment = { day: today, today, nowMs: app.clock.nowMs() };
  if (animal.left !== null) return null;
  const fault = offerFault(animal, today);
  const { offer } = animal;
  return (
    <section class="offer-part" aria-labelledby="offer-title">
      <h2 id="offer-title">On offer</h2>
      {offer === null ? (
        <p class="soft">{fault === null ? 'not on offer' : 'not on offer, and cannot be now'}</p>
      ) : (
        <p>
          <strong>{priceWords(offer.priceMinor, app.site.facility.value.site.currency)}</strong> since{' '}
          {sayDayShort(offer.since)}, {sayDays(daysBetween(offer.since, today))}
          {offer.words === null ? '' : `: ${offer.words}`}
        </p>
      )}
      {fault !== null && <ProblemLine problem={fault} />}
      <div class="shop-two">
        {fault === null && (
          <button
            type="button"
            onClick={() => {
              open.value = true;
            }}
          >
            {offer === null ? 'Put on offer …' : 'New price …'}
          </button>
        )}
        {offer !== null && (
          <>
            <a href={`/print?what=sale&only=${animal.id}`}>Print its sale tag</a>
            <button type="button" onClick={() => void app.desk.decided(animal.id, endOffer(animal, undefined, moment))}>
              Take off the list
            </button>
          </>
        )}
      </div>
      {open.value && (
        <OfferSheet
          animal={animal}
          onClose={() => {
            open.value = false;
          }}
        />
      )}
    </section>
  );
}

function OfferSheet({ animal, onClose }: { readonly animal: AnimalRecord; readonly onClose: () => void }) {
  const app = useApp();
  const price = useSignal('');
  const words = useSignal(animal.offer?.words ?? '');
  const failed = useSignal<Problem | null>(null);
  function write(event: Event): void {
    event.preventDefault();
    const cost = parsePrice(price.value, app.site.facility.value.site.currency);
    failed.value = cost.ok ? null : cost.problem;
    if (!cost.ok) return;
    const today = app.clock.today.value;
    const decision = offerAnimal(
      animal,
      { priceMinor: cost.value, words: words.value },
      { day: today, today, nowMs: app.clock.nowMs() },
    );
    failed.value = decision.kind === 'refused' ? decision.problem : null;
    if (decision.kind === 'refused') return;
    onClose();
    void app.desk.decided(animal.id, decision);
  }
  return (
    <Sheet title={`Offer ${sayAnimal(animal)}`} onClose={onClose}>
      <form onSubmit={write} noValidate>
        <FormLine
          label="Price"
          value={price.value}
          fault={failed.value}
          onInput={(text) => {
            price.value = text;
          }}
        />
        <FormLine
          label="A line for the list"
          hint="Eats, sheds, what a buyer should know."
          value={words.value}
          fault={null}
          onInput={(text) => {
            words.value = text;
          }}
        />
        <button type="submit" class="primary">
          Put on offer
        </button>
      </form>
    </Sheet>
  );
}

function sayDays(days: number): string {
  const words = days === 0 ? 'today' : days === 1 ? '1 day' : `${days} days`;
  return days >= LONG_OFFER_DAYS ? `${words}, long` : words;
}
