import { useSignal } from '@preact/signals';
import {
  type Decision,
  type PlaceRecord,
  type Problem,
  partLitres,
  type RoundTask,
  sayNumber,
  servePool,
  setPlaceFacts,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { TextLine } from '../treatment/TextLine.tsx';
import { IntervalPart } from './IntervalPart.tsx';
import { DeedState } from './PlaceDone.tsx';
import { useDeed } from './useDeed.tsx';

const SHARES = [10, 25, 50];

/** The pool of a place: a share of it changed with its litres, the filter, draining; and what the keeper says of the place. */
export function PoolPart({ place }: { readonly place: PlaceRecord }) {
  return (
    <section class="pool" aria-labelledby="pool-title">
      <h2 id="pool-title">{place.pool === null ? 'Pool and people' : 'Pool'}</h2>
      {place.pool !== null && <PoolWork place={place} pool={place.pool} />}
      <PlaceFactsForm key={JSON.stringify([place.pool, place.twoPeople])} place={place} />
    </section>
  );
}

interface PoolWorkProps {
  readonly place: PlaceRecord;
  readonly pool: NonNullable<PlaceRecord['pool']>;
}

function PoolWork({ place, pool }: PoolWorkProps) {
  const { clock } = useApp();
  const { log, failed, sheet } = useDeed(place);
  const percent = useSignal('25');
  const today = clock.today.value;
  const share = Number(percent.value.replace(',', '.'));
  const litres = share > 0 && share <= 100 ? `, ${sayNumber(partLitres(pool.litres, share))} L` : '';
  const serve = (task: RoundTask, work: Parameters<typeof servePool>[1]): void =>
    log({ task, decide: (): Decision => servePool(place, work, { day: today, today }) });
  return (
    <>
      <p class="pool-size">
        {sayNumber(pool.litres)} L, {pool.filtered ? 'filtered' : 'no filter'}
      </p>
      <ul class="deed-lines">
        <li class="deed-line">
          <DeedState place={place} task="pool-part" words="Changed in part" />
          <fieldset class="pool-shares">
            <legend>How much is changed</legend>
            {SHARES.map((one) => (
              <button
                key={one}
                type="button"
                aria-pressed={share === one}
                onClick={() => {
                  percent.value = String(one);
                }}
              >
                {one} %
              </button>
            ))}
            <TextLine label="Percent" value={percent} most={5} inputMode="decimal" />
          </fieldset>
          <button
            type="button"
            class="secondary pool-part-do"
            onClick={() => serve('pool-part', { do: 'part', percent: share })}
          >
            Part-change {sayShare(percent.value)}
            {litres}
          </button>
          {pool.filtered && <IntervalPart place={place} task="pool-part" />}
        </li>
        {pool.filtered && (
          <li class="deed-line">
            <DeedState place={place} task="pool-filter" words="Filter" />
            <button type="button" class="secondary" onClick={() => serve('pool-filter', { do: 'filter' })}>
              Filter cleaned
            </button>
            <IntervalPart place={place} task="pool-filter" />
          </li>
        )}
        <li class="deed-line">
          <DeedState place={place} task="pool-drain" words="Drained" />
          <button type="button" class="secondary" onClick={() => serve('pool-drain', { do: 'drain' })}>
            Drained and filled
          </button>
          <IntervalPart place={place} task="pool-drain" />
        </li>
      </ul>
      {failed !== null && <ProblemLine problem={failed} />}
      {sheet}
    </>
  );
}

function sayShare(text: string): string {
  return text.trim() === '' ? '' : `${text.trim()} %`;
}

/** What a place is, beyond its size: its pool and whether it is opened alone. Whatever else is known of it stays. */
function PlaceFactsForm({ place }: { readonly place: PlaceRecord }) {
  const { site, clock, strip, signs } = useApp();
  const litres = useSignal(place.pool === null ? '' : String(place.pool.litres));
  const filtered = useSignal(place.pool?.filtered ?? false);
  const twoPeople = useSignal(place.twoPeople);
  const failed = useSignal<Problem | null>(null);
  async function save(): Promise<void> {
    const text = litres.value.trim().replace(',', '.');
    const pool = text === '' ? null : { litres: Number(text), filtered: filtered.value };
    const decision = setPlaceFacts(place, { pool, twoPeople: twoPeople.value }, clock.today.value);
    const written = decision.kind === 'accepted' ? await site.write(decision.drafts) : null;
    failed.value = decision.kind === 'refused' ? decision.problem : written?.ok === false ? written.problem : null;
    signs.give(failed.value === null ? 'accepted' : 'refused');
    if (decision.kind !== 'accepted' || written?.ok !== true) return;
    const entry = { subject: place.id, name: place.name, said: decision.said, problem: null };
    strip.add({ ...entry, result: 'accepted', events: written.value });
  }
  return (
    <details class="place-facts">
      <summary>
        {place.pool === null ? 'Write down a pool, or that it takes two people' : 'Change pool and people'}
      </summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void save();
        }}
      >
        <TextLine label="Pool, in litres; empty where there is none" value={litres} most={9} inputMode="decimal" />
        <Check words="The pool is filtered" value={filtered} />
        <Check words="Never opened alone: two people" value={twoPeople} />
        {failed.value !== null && <ProblemLine problem={failed.value} />}
        <button type="submit" class="secondary">
          Save the place
        </button>
      </form>
    </details>
  );
}

function Check({ words, value }: { readonly words: string; readonly value: { value: boolean } }) {
  return (
    <label class="check-line">
      <input
        type="checkbox"
        checked={value.value}
        onChange={(event) => {
          value.value = event.currentTarget.checked;
        }}
      />
      <span>{words}</span>
    </label>
  );
}
