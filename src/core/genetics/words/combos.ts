import { alleleOf, type Carrying, type Combo, type LocusTable } from '../loci/index.ts';
import type { Traits } from '../notation/index.ts';
import { joinWords, type LocusWords, locusWords, type TradeWords } from './sayTrade.ts';

/** A combo name that fits an animal, and all its words with that name in place of its genes. */
export interface ComboOffer {
  readonly name: string;
  readonly basis: string;
  readonly words: TradeWords;
}

/** The combo names that fit, those of most genes first; an offer, since the trade is not of one mind about names. */
export function offerCombo(traits: Traits, loci: LocusTable): readonly ComboOffer[] {
  return loci.combos
    .filter((combo) => combo.means.every((carrying) => fits(traits, carrying, loci)))
    .sort((a, b) => b.means.length - a.means.length)
    .map((combo) => ({ name: combo.name, basis: combo.basis, words: wordsWith(combo, traits, loci) }));
}

/** One allele fits a single dose or a dose that nobody has counted; two fit these two. */
function fits(traits: Traits, carrying: Carrying, loci: LocusTable): boolean {
  const locus = alleleOf(loci, carrying[0] ?? '')?.row.locus ?? '';
  return traits.pieces.some((piece) => {
    const at = piece.loci.indexOf(locus);
    const pair = piece.copies.flatMap((copy) => copy[at] ?? []);
    const symbols = pair.flatMap((slot) => (slot.kind === 'allele' ? [slot.symbol] : []));
    const rest = pair.filter((slot) => slot.kind !== 'allele');
    if (symbols.length !== carrying.length || !carrying.every((symbol) => symbols.includes(symbol))) return false;
    return rest.every((slot) => slot.kind === 'wild' || slot.kind === 'unknown');
  });
}

function wordsWith(combo: Combo, traits: Traits, loci: LocusTable): TradeWords {
  const covered = new Set(combo.means.map((carrying) => alleleOf(loci, carrying[0] ?? '')?.row.locus));
  const name: LocusWords = { locus: '', standing: 'shows', long: combo.name, medium: combo.name, short: combo.name };
  return joinWords([name, ...locusWords(traits, loci).filter((one) => !covered.has(one.locus))]);
}
