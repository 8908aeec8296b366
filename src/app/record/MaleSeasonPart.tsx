import { type AnimalRecord, type Id, maleRota, marksOfSeason, REST_DAYS, sayDayShort } from '../../core/index.ts';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { useApp } from '../model/app.ts';
import { Because } from './Because.tsx';
import { Fact, Marks, Mate } from './FemaleSeasonPart.tsx';

/** A male's season: with whom he is, from when he may go on, and who his partners are. */
export function MaleSeasonPart({ animal }: { readonly animal: AnimalRecord }) {
  const { site, clock } = useApp();
  const today = clock.today.value;
  const turn = maleRota(site.facility.value, animal.species, today).find((one) => one.animal.id === animal.id);
  const marks = marksOfSeason(animal, today);
  const readyOn = turn?.readyOn ?? null;
  const isResting = readyOn !== null && readyOn > today;
  const visits = (id: Id): number => marks.filter((mark) => mark.kind === 'paired' && mark.with === id).length;
  return (
    <>
      <header class="breeding-head">
        <h2 id="season-title">Season</h2>
        <p>
          <strong>{animal.together.length > 0 ? 'With a female' : isResting ? 'Resting' : 'Ready'}</strong>
        </p>
      </header>
      <dl class="breeding-facts">
        {animal.together.map((one) => (
          <Fact key={one.with} term="With him">
            <Mate id={one.with} /> <span class="breeding-soft">since {sayDayShort(one.since)}</span>
          </Fact>
        ))}
        {readyOn !== null && (
          <Fact term="Ready">
            <div class="window-line window-plain">
              <p>
                <SpokenDay day={readyOn} today={today} />
              </p>
              <Because
                about="ready"
                why={[
                  animal.apartOn === null
                    ? 'Counted from his last mark.'
                    : `Last apart on ${sayDayShort(animal.apartOn)}.`,
                  `A male rests ${REST_DAYS} days between pairings (BREED-REST; C: common practice, no source).`,
                ]}
              />
            </div>
          </Fact>
        )}
        {turn !== undefined && turn.partners.length > 0 && (
          <Fact term="Partners">
            {turn.partners.map((id, at) => (
              <span key={id}>
                {at > 0 && ', '}
                <Mate id={id} /> <span class="breeding-soft">{sayVisits(visits(id))}</span>
              </span>
            ))}
          </Fact>
        )}
      </dl>
      <Marks marks={marks} />
    </>
  );
}

function sayVisits(count: number): string {
  return count === 0 ? '' : count === 1 ? 'once' : `${count} times`;
}
