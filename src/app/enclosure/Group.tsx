import {
  type EnclosureGroup,
  type EnclosureRule,
  type LongestAnimal,
  nameOf,
  OLD_LENGTH_DAYS,
  type SizeMm,
  sayLength,
} from '../../core/index.ts';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { useApp } from '../model/app.ts';
import { TypedLength } from './TypedLength.tsx';
import { Verdicts } from './Verdicts.tsx';

interface GroupProps {
  readonly group: EnclosureGroup;
  /** All that live in the place. */
  readonly animals: number;
  readonly sizeMm: SizeMm | null;
  readonly picked: EnclosureRule | null;
}

/** The animals of one species in a place: by which length they are compared, and what comes of it. */
export function Group({ group, animals, sizeMm, picked }: GroupProps) {
  const { species, longest, unmeasured, verdicts } = group;
  const others = animals - group.animals.length;
  const typed = <TypedLength species={species} animals={animals} sizeMm={sizeMm} picked={picked} />;
  return (
    <section class="enclosure-group" aria-label={species}>
      <h3>
        {species}
        {group.animals.length > 1 && `, ${group.animals.length} animals`}
      </h3>
      {others > 0 && (
        <p class="soft">
          {others} of another species {others === 1 ? 'lives' : 'live'} here too. No rule here speaks of that: this
          compares as if all {animals} were of this kind.
        </p>
      )}
      {longest === null ? <NoLength ids={unmeasured} /> : <By longest={longest} unmeasured={unmeasured} />}
      {longest === null ? (
        typed
      ) : (
        <>
          <Verdicts verdicts={verdicts} picked={picked} />
          <details>
            <summary>At another length, such as when it has grown</summary>
            {typed}
          </details>
        </>
      )}
    </section>
  );
}

function By({ longest, unmeasured }: { readonly longest: LongestAnimal; readonly unmeasured: readonly string[] }) {
  const { site, clock } = useApp();
  const { animal, measured, isLeast, isOld } = longest;
  return (
    <p class="soft">
      By <a href={`/animal/${animal}`}>{nameOf(site.facility.value, animal)}</a>,{' '}
      <strong>{sayLength(measured.lengthMm)}</strong>
      {measured.guessed && ' (guessed)'}, <SpokenDay day={measured.day} today={clock.today.value} />
      {isLeast && '; only snout to vent is known, so the rules ask for more than this'}
      {isOld && `; older than ${OLD_LENGTH_DAYS} days, and animals grow: measure again`}
      {unmeasured.length > 0 && `; ${unmeasured.length} ${unmeasured.length === 1 ? 'was' : 'were'} never measured`}.
    </p>
  );
}

function NoLength({ ids }: { readonly ids: EnclosureGroup['unmeasured'] }) {
  const { site } = useApp();
  return (
    <p>
      No length is known. Measure{' '}
      {ids.map((id, at) => (
        <span key={id}>
          {at > 0 && ', '}
          <a href={`/animal/${id}`}>{nameOf(site.facility.value, id)}</a>
        </span>
      ))}{' '}
      on the record, or compare at a length here.
    </p>
  );
}
