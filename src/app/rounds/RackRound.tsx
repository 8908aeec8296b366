import { useState } from 'preact/hooks';
import { feedRack, type Id, nameOf, type Problem, sayFew, walkingOrder } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import type { OpenRound } from '../model/rackRound.ts';
import './rackRound.css';

/** A rack's feeding in one touch, and after it the exceptions: scan who refused, then end the round. */
export function RackRound({ place }: { readonly place: Id }) {
  const { round } = useApp();
  const open = round.open.value;
  return open?.place === place ? <Running round={open} /> : <Begin place={place} />;
}

function Begin({ place }: { readonly place: Id }) {
  const { site, clock, round } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  const today = clock.today.value;
  const { fed, left } = feedRack(site.facility.value, place, { day: today, today, nowMs: clock.nowMs() });
  if (fed.length === 0 && left.length === 0) return null;
  return (
    <section class="rack-round" aria-label="Feeding round of this rack">
      <button
        type="button"
        class="now"
        aria-disabled={fed.length === 0}
        onClick={() =>
          fed.length > 0 && void round.begin(place).then((done) => setFailed(done.ok ? null : done.problem))
        }
      >
        All as planned
        <small>
          {fed.length === 0
            ? 'nobody can be fed with one touch'
            : `${fed.length} due: ${sayFew(fed.map((one) => one.animal))}`}
        </small>
      </button>
      {left.length > 0 && (
        <details class="rack-round-left">
          <summary>{left.length === 1 ? '1 is left out' : `${left.length} are left out`}, each by its own card</summary>
          <ul>
            {left.map(({ animal, problem }) => (
              <li key={animal.id}>
                <a href={`/animal/${animal.id}`}>{nameOf(site.facility.value, animal.id)}</a> {problem.message}
              </li>
            ))}
          </ul>
        </details>
      )}
      {failed !== null && <ProblemLine problem={failed} />}
    </section>
  );
}

/** The open round: its figures, who refused, and its end. */
export function Running({ round }: { readonly round: OpenRound }) {
  const app = useApp();
  const { site } = app;
  const offers = Object.entries(round.offers) as [Id, OpenRound['offers'][Id]][];
  const order = walkingOrder(site.facility.value);
  const placeOf = (id: Id): number => order.get(site.facility.value.animals.get(id)?.place ?? id) ?? order.size;
  const refused = offers.filter(([, offer]) => offer.refused).sort(([a], [b]) => placeOf(a) - placeOf(b));
  return (
    <section class="rack-round rack-round-open" aria-label={`Round of ${round.name}`}>
      <p role="status">
        <strong>{round.name}</strong>: fed {offers.length - refused.length}, refused {refused.length}, skipped{' '}
        {round.left.length}. Scan each one that refused; scanned again it is fed after all.
      </p>
      {round.used.length > 0 && <p class="soft">Offered: {round.used.join(', ')}. Refused prey is not frozen again.</p>}
      {refused.length > 0 && (
        <ul class="rack-round-refused">
          {refused.map(([id]) => (
            <li key={id}>
              <a href={`/animal/${id}`}>{nameOf(site.facility.value, id)}</a> refused
            </li>
          ))}
        </ul>
      )}
      <button type="button" class="secondary" onClick={app.round.end}>
        End the round
      </button>
    </section>
  );
}
