import { useMemo } from 'preact/hooks';
import { type AnimalRecord, type Fraction, pedigreeAround, sayAnimal, sayFraction } from '../../core/index.ts';
import { type Share, useAsked } from '../genetics/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { type Relation, relationOf } from './relation.ts';
import { isNothing, ShareWords } from './ShareWords.tsx';

interface KinshipWordsProps {
  readonly animal: AnimalRecord;
  readonly other: AnimalRecord;
}

/** Kinship of two animals: the figure, and the everyday word where there is one. */
export function KinshipWords({ animal, other }: KinshipWordsProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const pedigree = useMemo(() => pedigreeAround(facility, [animal.id, other.id]), [facility, animal, other]);
  const of = [animal.id, other.id];
  const asked = useAsked({ ask: 'lineage', animals: pedigree, of }, JSON.stringify([of, pedigree]));
  if (asked === null || asked.at === 'working') return <p role="status">Working it out …</p>;
  if (asked.at === 'failed') return <ProblemLine problem={asked.problem} />;
  const answer = asked.value;
  const share = answer.kinship[0]?.share ?? 0;
  const areInbred = [...answer.inbreeding.values()].some((one) => !isNothing(one));
  return (
    <div role="status">
      <p class="ped-figure">
        <ShareWords share={share} />
      </p>
      <p>{sayRelation(relationOf(pedigree, animal.id, other.id), share, areInbred)}</p>
      {!isNothing(share) && <PairLink animal={animal} other={other} />}
    </div>
  );
}

/** The everyday word says how much is usual, and the figure whether it is so here. */
export function sayRelation(relation: Relation | null, share: Share, areInbred: boolean): string {
  if (relation === null)
    return isNothing(share)
      ? 'No common ancestor is known. That is not yet unrelated: nobody knows more than is written.'
      : 'Related through common ancestors; there is no everyday word for it.';
  const { says, usual } = relation;
  const begins = `${says.charAt(0).toUpperCase()}${says.slice(1)}`;
  if (!areInbred && isUsual(share, usual))
    return `${begins}, neither of them inbred: ${sayFraction(usual)}, as is usual.`;
  return `${begins}: ${sayFraction(usual)} is usual where neither is inbred and they are related on no other line. Here it is not so.`;
}

function isUsual(share: Share, usual: Fraction): boolean {
  return typeof share !== 'number' && share.top === usual.top && share.bottom === usual.bottom;
}

/** Where the two could be parents, what the figure means for young. */
function PairLink({ animal, other }: KinshipWordsProps) {
  const [sire, dam] = animal.sex === 'male' ? [animal, other] : [other, animal];
  if (sire.sex !== 'male' || dam.sex !== 'female') return null;
  return (
    <p class="soft">
      The same figure is the inbreeding that young of {sayAnimal(sire)} and {sayAnimal(dam)} would have.{' '}
      <a href={`/pairing?sire=${sire.id}&dam=${dam.id}`}>The pairing</a>
    </p>
  );
}
