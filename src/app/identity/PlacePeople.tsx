import './identity.css';
import { companyFor, type PlaceRecord, sayPeople } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

/** So many reasons are read at a door; the rest is behind a touch. */
const FEW = 2;

/** How many people open what stands here, and by which animal, length or word; nothing where one is enough. */
export function PlacePeople({ place }: { readonly place: PlaceRecord }) {
  const { site } = useApp();
  const { people, reasons, cautions } = companyFor(site.facility.value, place.id, { task: 'clean' });
  if (people < 2) return null;
  const worst = [...reasons].sort((a, b) => b.people - a.people);
  const more = worst.slice(FEW);
  return (
    <div class="people people-many place-people" role="note" aria-label="Never alone">
      <p>
        <strong>{sayPeople(people)}: do not open alone.</strong>
      </p>
      {worst.slice(0, FEW).map(({ words }) => (
        <p key={words}>{words}</p>
      ))}
      {more.length > 0 && (
        <details>
          <summary>and {more.length} more</summary>
          {more.map(({ words }) => (
            <p key={words}>{words}</p>
          ))}
        </details>
      )}
      {cautions.map((words) => (
        <p key={words}>{words}</p>
      ))}
    </div>
  );
}
