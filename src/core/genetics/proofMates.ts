import { showsInOneDose } from './loci/index.ts';
import { makeTraits, printTraits, type Slot, type TraitPiece } from './notation/index.ts';
import { outcomesOf } from './outcomes.ts';
import { crossWith, type Mate, type ProofCase, type ProofWay } from './proofCase.ts';
import { sayTrade } from './words/index.ts';

/**
 * The mates whose young can tell: what shows in one dose shows in young of a normal one; a recessive needs a mate that
 * shows it or is het, or on a sex chromosome one whose sons or daughters have no other copy. Mates with which eggs die
 * are left out.
 */
export function matesFor(one: ProofCase): readonly Mate[] {
  const { symbol } = one.doubt;
  const kinds = showsInOneDose(symbol) ? (['normal'] as const) : (['shows', 'het', 'normal'] as const);
  return kinds.flatMap((kind) => mateOf(one, kind)).filter((mate) => allLive(one, mate));
}

function mateOf({ doubt, row, animal, loci }: ProofCase, kind: ProofWay['mate']): readonly Mate[] {
  const sex = animal.sex === 'M' ? 'F' : 'M';
  const [own, wild]: readonly Slot[] = [{ kind: 'allele', symbol: doubt.symbol }, { kind: 'wild' }];
  const unlike = row.sexLink !== null && sex === (row.sexLink.system === 'XY' ? 'M' : 'F');
  if (own === undefined || wild === undefined || (unlike && kind === 'het')) return [];
  const second: TraitPiece['second'] = !unlike ? 'same' : row.sexLink?.system === 'XY' ? 'Y' : 'W';
  const other: Slot = second === 'W' ? { kind: 'absent' } : kind === 'shows' ? own : wild;
  const traits = makeTraits(kind === 'normal' ? [] : [{ copies: [[own], [other]], second }], loci, sex);
  if (!traits.ok) return [];
  const mateWords = sayTrade(traits.value, loci).long;
  return [{ mate: kind, mateWords, mateCode: printTraits(traits.value), parent: { traits: traits.value, sex } }];
}

/** Whether all eggs live, as far as the table knows; by the whole animal where its other traits can be crossed. */
function allLive({ animal, whole, loci }: ProofCase, { parent }: Mate): boolean {
  return [animal, whole].every((one) => {
    const cross = crossWith(one, parent, loci);
    if (cross === null) return true;
    const { viable } = outcomesOf(cross);
    return viable.top === viable.bottom;
  });
}
