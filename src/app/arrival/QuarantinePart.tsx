import './arrival.css';
import { useSignal } from '@preact/signals';
import { type AnimalRecord, daysBetween, quarantineOf, sayDayShort } from '../../core/index.ts';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { useApp } from '../model/app.ts';
import { EndSheet } from './EndSheet.tsx';
import { StartSheet } from './StartSheet.tsx';

/** The quarantine of an animal on its record: since when, until when, and the word that ends it; nothing for one that is not in it. */
export function QuarantinePart({ animal }: { readonly animal: AnimalRecord }) {
  const today = useApp().clock.today.value;
  const open = useSignal(false);
  const hold = quarantineOf(animal);
  if (hold === null) return null;
  return (
    <section class="quarantine-part" aria-labelledby="quarantine-part-title">
      <header>
        <h2 id="quarantine-part-title">Quarantine</h2>
        <a class="quarantine-all" href="/quarantine">
          All in quarantine
        </a>
      </header>
      <p>
        Since {sayDayShort(hold.since)}, {daysBetween(hold.since, today)} days;{' '}
        {hold.until === null ? (
          'until somebody ends it'
        ) : (
          <>
            until <SpokenDay day={hold.until} today={today} />
          </>
        )}
        . It ends by the vet’s or the keeper’s word.
      </p>
      <button
        type="button"
        onClick={() => {
          open.value = true;
        }}
      >
        End the quarantine …
      </button>
      {open.value && (
        <EndSheet
          animal={animal}
          onClose={() => {
            open.value = false;
          }}
        />
      )}
    </section>
  );
}

/** The way into quarantine for an animal that is here already; nothing for one that is in it. */
export function IntoQuarantine({ animal }: { readonly animal: AnimalRecord }) {
  const open = useSignal(false);
  if (animal.left !== null || quarantineOf(animal) !== null) return null;
  return (
    <>
      <button
        type="button"
        onClick={() => {
          open.value = true;
        }}
      >
        Put in quarantine …
      </button>
      {open.value && (
        <StartSheet
          animal={animal}
          onClose={() => {
            open.value = false;
          }}
        />
      )}
    </>
  );
}
