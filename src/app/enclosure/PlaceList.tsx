import { useState } from 'preact/hooks';
import {
  ENCLOSURE_TITLES,
  type EnclosureComparison,
  type EnclosureRule,
  type EnclosureState,
  type EnclosureVerdict,
  enclosureState,
  nameOf,
  sayPlace,
  saySize,
  sayVerdict,
} from '../../core/index.ts';
import { Lens } from '../look/Lens.tsx';
import { useApp } from '../model/app.ts';
import { State } from './Verdict.tsx';

const LENSES = ['all', 'short', 'no size', 'no length', 'no figures', 'enough'] as const;
type LensId = (typeof LENSES)[number];
/** More lines than this are not read at once, and slow a phone down. */
const PAGE = 60;

interface PlaceListProps {
  readonly all: readonly EnclosureComparison[];
  readonly picked: EnclosureRule | null;
}

/** Every place that somebody lives in, in walking order, by how it stands. */
export function PlaceList({ all, picked }: PlaceListProps) {
  const [lens, setLens] = useState<LensId>('all');
  const [shown, setShown] = useState(PAGE);
  const stands = all.map((one) => ({ one, state: enclosureState(one, picked) }));
  const count = (id: LensId): number => stands.filter(({ state }) => id === 'all' || state === id).length;
  const seen = stands.filter(({ state }) => lens === 'all' || state === lens);
  const lenses = LENSES.filter((id) => id === 'all' || count(id) > 0);
  return (
    <>
      <Lens
        label="Which places"
        choices={lenses.map((id) => ({ id, words: id, count: count(id) }))}
        chosen={lens}
        choose={(id) => {
          setLens(id);
          setShown(PAGE);
        }}
      />
      <ol class="enclosure-list">
        {seen.slice(0, shown).map(({ one, state }) => (
          <Line key={one.place} comparison={one} state={state} picked={picked} />
        ))}
      </ol>
      {seen.length > shown && (
        <button type="button" class="secondary" onClick={() => setShown(shown + PAGE)}>
          {Math.min(PAGE, seen.length - shown)} more of {seen.length}
        </button>
      )}
    </>
  );
}

interface LineProps {
  readonly comparison: EnclosureComparison;
  readonly state: EnclosureState;
  readonly picked: EnclosureRule | null;
}

function Line({ comparison, state, picked }: LineProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const { place, sizeMm, groups } = comparison;
  const animals = groups.flatMap((group) => group.animals).map((id) => nameOf(facility, id));
  return (
    <li>
      <a href={`/place/${place}`}>{sayPlace(facility, place)}</a>{' '}
      <span class="soft">{sizeMm === null ? unmeasured(state) : saySize(sizeMm)}</span> <Standing state={state} />
      <span class="enclosure-who">
        {animals.join(', ')} · {groups.map(({ species }) => species).join(', ')}
      </span>
      {groups.flatMap(({ species, verdicts }) =>
        says(verdicts, picked).map((words) => (
          <span key={species + words} class="soft">
            {groups.length > 1 && <i>{species}: </i>}
            {words}
          </span>
        )),
      )}
    </li>
  );
}

/** The state says it already where it is the size that is missing. */
function unmeasured(state: EnclosureState): string {
  return state === 'no size' ? '' : 'not measured';
}

function Standing({ state }: { readonly state: EnclosureState }) {
  if (state === 'short' || state === 'enough') return <State has={state} />;
  return <span class="verdict-state">{state}</span>;
}

/** By the picked rule set in full; by all of them in a word each. */
function says(verdicts: readonly EnclosureVerdict[], picked: EnclosureRule | null): readonly string[] {
  if (picked !== null) return verdicts.filter(({ rule }) => rule === picked).map((one) => `${sayVerdict(one)}.`);
  if (verdicts.length === 0) return [];
  return [verdicts.map(({ rule, has }) => `${ENCLOSURE_TITLES[rule]}: ${has}`).join(' · ')];
}
