import '../look/parts.css';
import './arrival.css';
import { useSignal } from '@preact/signals';
import {
  decideLookedWell,
  type Id,
  type QuarantineLine,
  quarantineBoard,
  sayAnimal,
  sayDayShort,
  sayId,
  sayPlace,
} from '../../core/index.ts';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { useApp } from '../model/app.ts';
import { EndSheet } from './EndSheet.tsx';
import { momentNow } from './moment.ts';

/** Who is in quarantine, since when and until when, and what is due: the last walk of the day, with tools of its own. */
export function QuarantineScreen() {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const lines = quarantineBoard(facility, clock.today.value);
  const ending = useSignal<Id | null>(null);
  const animal = ending.value === null ? undefined : facility.animals.get(ending.value);
  return (
    <section class="screen quarantine" aria-labelledby="quarantine-title">
      <h1 id="quarantine-title">Quarantine</h1>
      <p class="soft">
        Last in the walk, with tools of its own; wash your hands before you go anywhere else. It ends by the vet’s or
        the keeper’s word, whatever day was written.
      </p>
      <a class="secondary" href="/arrive">
        An animal arrives
      </a>
      {lines.length === 0 ? (
        <p class="empty">Nobody is in quarantine. A new animal goes in when its arrival is written.</p>
      ) : (
        <ol class="quarantine-lines">
          {lines.map((line) => (
            <Line
              key={line.animal.id}
              line={line}
              end={() => {
                ending.value = line.animal.id;
              }}
            />
          ))}
        </ol>
      )}
      {animal !== undefined && (
        <EndSheet
          animal={animal}
          onClose={() => {
            ending.value = null;
          }}
        />
      )}
    </section>
  );
}

function Line({ line, end }: { readonly line: QuarantineLine; readonly end: () => void }) {
  const app = useApp();
  const { animal, hold } = line;
  const today = app.clock.today.value;
  const place = sayPlace(app.site.facility.value, animal.place);
  return (
    <li class="quarantine-line">
      <header>
        <h2>
          <a href={`/animal/${animal.id}`}>{sayAnimal(animal)}</a>
        </h2>
        <p class="soft">
          {sayId(animal.id)} · <i>{animal.species}</i>
          {place === null ? ' · no place yet' : ''}
          {place !== null && (
            <>
              {' '}
              · <a href={`/place/${animal.place}`}>{place}</a>
            </>
          )}
        </p>
      </header>
      <p>
        Since {sayDayShort(hold.since)}, {line.days} {line.days === 1 ? 'day' : 'days'};{' '}
        {hold.until === null ? (
          'until somebody ends it'
        ) : (
          <>
            until <SpokenDay day={hold.until} today={today} />
          </>
        )}
        {line.isOver && <strong class="quarantine-over"> The day has come: it can be ended, by word.</strong>}
      </p>
      {line.vet !== null && <p class="look-at">A vet’s word is needed: {line.vet}.</p>}
      {!line.isApart && <p class="look-at">Its place is no quarantine place.</p>}
      <Due line={line} />
      <div class="quarantine-actions">
        <button type="button" onClick={() => app.desk.weigh(animal.id)}>
          Weighed
        </button>
        <button
          type="button"
          onClick={() => void app.desk.decided(animal.id, decideLookedWell(animal, momentNow(app)))}
        >
          Looked well
        </button>
        <button type="button" onClick={end}>
          End it …
        </button>
      </div>
    </li>
  );
}

function Due({ line: { weighOn, lookDue } }: { readonly line: QuarantineLine }) {
  const today = useApp().clock.today.value;
  const isWeighed = weighOn > today;
  return (
    <ul class="quarantine-due">
      <li class={isWeighed ? 'soft' : ''}>
        <Sign due={!isWeighed} /> Weigh: {isWeighed ? <SpokenDay day={weighOn} today={today} /> : <strong>due</strong>}
      </li>
      <li class={lookDue ? '' : 'soft'}>
        <Sign due={lookDue} /> Look: {lookDue ? <strong>due today</strong> : 'done today'}
      </li>
    </ul>
  );
}

/** A filled dot for what is due, an open one for what is not. */
function Sign({ due }: { readonly due: boolean }) {
  return (
    <svg class="state-dot" viewBox="0 0 24 24" width="20" height="20" aria-hidden="true">
      <circle class={due ? 'fill' : 'stroke'} cx="12" cy="12" r={due ? 6 : 5} />
    </svg>
  );
}
