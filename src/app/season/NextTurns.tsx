import { type Day, type FemaleSeason, nameOf, REST_DAYS, sayAnimal } from '../../core/index.ts';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { useApp } from '../model/app.ts';
import { pairingAddress } from '../pairing/choice.ts';
import { isHeldForVet, type Turn, turnsOf } from './turns.ts';
import { sayKind, spoken } from './words.ts';

interface NextTurnsProps {
  readonly board: readonly FemaleSeason[];
  readonly species: readonly string[];
}

/** Which male goes to whom next, of the partners of his season. */
export function NextTurns({ board, species }: NextTurnsProps) {
  const { site, clock } = useApp();
  const today = clock.today.value;
  const all = species
    .map((one) => ({ species: one, turns: turnsOf(site.facility.value, board, one, today) }))
    .filter(({ turns }) => turns.length > 0);
  if (all.length === 0) return null;
  return (
    <section class="season-turns" aria-labelledby="season-turns-title">
      <h2 id="season-turns-title">Which male with whom next</h2>
      {all.map(({ species: one, turns }) => (
        <table key={one}>
          <caption>
            {all.length > 1 || species.length > 1 ? sayKind(one) : <span class="unseen">{sayKind(one)}</span>}
          </caption>
          <thead>
            <tr>
              <th scope="col">Male</th>
              <th scope="col">Ready</th>
              <th scope="col">Next</th>
            </tr>
          </thead>
          <tbody>
            {turns.map((turn) => (
              <TurnRow key={turn.animal.id} turn={turn} today={today} />
            ))}
          </tbody>
        </table>
      ))}
      <p class="soft because">
        A male rests {REST_DAYS} days between visits (BREED-REST: common practice, no source). Only the accepted plan’s
        females and partners of this season are named, and nobody who waits for the vet; who is paired at all the
        breeder decides, and on welfare the vet.
      </p>
    </section>
  );
}

function TurnRow({ turn, today }: { readonly turn: Turn; readonly today: Day }) {
  const facility = useApp().site.facility.value;
  const { animal, with: busy, readyOn, next } = turn;
  return (
    <tr>
      <th scope="row">
        <a class="turn-name" href={`/animal/${animal.id}`}>
          {sayAnimal(animal)}
        </a>
      </th>
      <td>
        {isHeldForVet(animal, today) ? (
          'waits for the vet’s word'
        ) : readyOn === null ? (
          `with ${busy.map((id) => nameOf(facility, id)).join(', ')}`
        ) : readyOn <= today ? (
          'ready'
        ) : (
          <SpokenDay day={readyOn} today={today} />
        )}
      </td>
      <td>
        {next === null ? (
          <span class="soft">{readyOn === null ? '' : 'nobody waits for him'}</span>
        ) : (
          <>
            <a href={pairingAddress({ sire: next.male, dam: next.female })}>{nameOf(facility, next.female)}</a>
            <small>{spoken(next.why)}</small>
          </>
        )}
      </td>
    </tr>
  );
}
