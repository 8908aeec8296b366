import { useMemo } from 'preact/hooks';
import {
  type AnimalRecord,
  type Facility,
  holdsOn,
  type LocusTable,
  type Parentage,
  type ProofWay,
  pedigreeAround,
  sayAnimal,
  sayId,
} from '../../core/index.ts';
import { Chance, type Share, useAsked } from '../genetics/index.ts';
import { useApp } from '../model/app.ts';
import { pairingAddress } from '../pairing/choice.ts';
import { type SiteMate, siteMates, youngWarnings } from './mates.ts';
import { relationOf } from './relation.ts';
import { isNothing, ShareWords } from './ShareWords.tsx';

interface SiteMatesProps {
  readonly animal: AnimalRecord;
  readonly locus: string;
  readonly way: ProofWay;
  readonly loci: LocusTable;
}

const FEW = 5;

/** Which animals of the site are such mates, with what is to be known of each pair. */
export function SiteMates({ animal, locus, way, loci }: SiteMatesProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const all = useMemo(() => siteMates(facility, animal, locus, way, loci), [facility, animal, locus, way, loci]);
  const shown = all.slice(0, FEW);
  const of = [animal.id, ...shown.map((mate) => mate.animal.id)];
  const pedigree = useMemo(() => pedigreeAround(facility, of), [facility, of.join()]);
  const asked = useAsked(
    shown.length === 0 ? null : { ask: 'lineage', animals: pedigree, of },
    JSON.stringify([of, pedigree]),
  );
  if (animal.sex === 'unsexed')
    return <p class="soft">Which animals here could be such mates shows once its sex is written.</p>;
  if (all.length === 0) return <p class="soft">No such mate is written at this site.</p>;
  const kinshipWith = (id: string): Share | null => {
    if (asked?.at !== 'done') return null;
    return asked.value.kinship.find(({ pair }) => pair.includes(animal.id) && pair.includes(id))?.share ?? null;
  };
  return (
    <ul class="site-mates" aria-label={`Mates at this site: ${way.mateWords}`}>
      {shown.map((mate) => (
        <Mate
          key={mate.animal.id}
          mate={mate}
          own={animal}
          facility={facility}
          pedigree={pedigree}
          kinship={kinshipWith(mate.animal.id)}
        />
      ))}
      {all.length > FEW && <li class="soft">and {all.length - FEW} more: find them by their traits</li>}
    </ul>
  );
}

interface MateProps {
  readonly mate: SiteMate;
  readonly own: AnimalRecord;
  readonly facility: Facility;
  readonly pedigree: readonly Parentage[];
  /** Null while it is worked out. */
  readonly kinship: Share | null;
}

function Mate({ mate, own, facility, pedigree, kinship }: MateProps) {
  const { clock } = useApp();
  const { animal, sire, dam } = mate;
  const relation = relationOf(pedigree, own.id, animal.id);
  const holds = holdsOn(animal, clock.today.value);
  return (
    <li>
      <p>
        <a href={`/animal/${animal.id}`}>{sayAnimal(animal)}</a> <span class="soft">{sayId(animal.id)}</span>
        <a class="mate-pairing" href={pairingAddress({ sire: sire.id, dam: dam.id })}>
          the pairing
        </a>
      </p>
      {kinship !== null && !isNothing(kinship) && (
        <p class="mate-kin">
          Related{relation === null ? '' : `, ${relation.says}`}: kinship <ShareWords share={kinship} />
        </p>
      )}
      {holds.map((hold) => (
        <p key={hold.kind} class="soft">
          On hold: {hold.reason}
        </p>
      ))}
      {youngWarnings(facility, mate).map((one) => (
        <p key={one.says} class={`mate-warning warning-${one.kind}`}>
          <strong>{one.kind === 'lethal' ? 'Stop and look, lethal: ' : 'Look at this: '}</strong>
          {one.says}.{' '}
          {one.share !== null && (
            <>
              Young: <Chance of={one.share} />.{' '}
            </>
          )}
          <small>Source: {one.source}.</small>
        </p>
      ))}
    </li>
  );
}
