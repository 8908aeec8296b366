import { type Day, sayAnimal } from '../../../core/index.ts';
import { SpokenDay } from '../../look/SpokenDay.tsx';
import { sayProgress } from '../standings.ts';
import type { CallLine } from './todayView.ts';

interface CallsProps {
  readonly calls: readonly CallLine[];
  readonly today: Day;
}

/** Which courses end, whom the vet wants to see again, and which papers ran out before their course was done. */
export function Calls({ calls, today }: CallsProps) {
  return (
    <section class="calls" aria-labelledby="calls-title">
      <h2 id="calls-title">Course ends and rechecks, next 14 days</h2>
      {calls.length === 0 ? (
        <p class="soft">None is written down.</p>
      ) : (
        <ul>
          {calls.map((call) => (
            <li
              key={`${call.treatment.record.id} ${call.why}`}
              class={call.on <= today && call.why !== 'ends' ? 'call-now' : ''}
            >
              <a href={`/animal/${call.animal.id}`}>
                <strong>{sayAnimal(call.animal)}</strong>
                <span>{sayCall(call, today)}</span>
                <SpokenDay day={call.on} today={today} />
              </a>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function sayCall({ why, on, treatment }: CallLine, today: Day): string {
  const { drug, prescriber } = treatment.record.written;
  switch (why) {
    case 'expired':
      return `${drug}: paper or drug ran out before the course was done; call ${prescriber}`;
    case 'recheck':
      return on < today ? `recheck by ${prescriber} was due` : `recheck by ${prescriber}`;
    case 'ends':
      return `${drug}: the last dose is due; ${sayProgress(treatment)}`;
    case 'over':
      return `${drug}: the course is done; write how it went`;
    default:
      return why satisfies never;
  }
}
