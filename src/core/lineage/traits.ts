import type { AnimalRecord } from '../animal/index.ts';
import type { EventDraft } from '../care/index.ts';
import type { Day } from '../days.ts';
import type { Facility } from '../facility/index.ts';
import {
  type ComboOffer,
  type LocusTable,
  offerCombo,
  parseTraits,
  printTraits,
  readTrade,
  type Sex,
  sayTrade,
  type TradeWords,
  type Traits,
  type WelfareWord,
  welfareNotes,
} from '../genetics/index.ts';
import { ok, type Result } from '../problems.ts';
import { lociFor } from './loci.ts';

/** What was typed of an animal's traits, read and said back in both ways, with everything that is to be told of it. */
export interface TraitSaying {
  readonly traits: Traits;
  readonly code: string;
  readonly words: TradeWords;
  /** Combo names that fit; the card may take one in place of the genes. */
  readonly offers: readonly ComboOffer[];
  /** What was taken for granted in reading the words. */
  readonly notes: readonly string[];
  readonly welfare: readonly WelfareWord[];
}

/** The sex as genetics counts it; null for unsexed. */
export function geneticSex(sex: AnimalRecord['sex']): Sex | null {
  return sex === 'male' ? 'M' : sex === 'female' ? 'F' : null;
}

/** Only the trait code holds these. */
const MARKS_OF_CODE = /[/;[\]]|^\s*wt\s*$/i;

/**
 * Reads traits as somebody types them: the trait code, or trade words. Nothing is guessed. Errors, at `char n`: those
 * of the trait code where the text holds its marks, else those of trade words.
 */
export function readTraits(text: string, loci: LocusTable, sex: Sex | null): Result<TraitSaying> {
  const code = parseTraits(text, loci, sex);
  if (code.ok) return ok(sayTraits(code.value, loci, sex));
  const words = readTrade(text, loci, sex);
  if (words.ok) return ok({ ...sayTraits(words.value.traits, loci, sex), notes: words.value.notes });
  return MARKS_OF_CODE.test(text) && words.problem.code !== 'trade-ambiguous' ? code : words;
}

/** Everything that is said of known traits. */
export function sayTraits(traits: Traits, loci: LocusTable, sex: Sex | null): TraitSaying {
  return {
    traits,
    code: printTraits(traits),
    words: sayTrade(traits, loci),
    offers: offerCombo(traits, loci),
    notes: [],
    welfare: welfareNotes(traits, loci, sex),
  };
}

/** What the record says of an animal's traits; null where nobody has written any. Errors of the trait code. */
export function traitsOf(facility: Facility, animal: AnimalRecord): Result<TraitSaying | null> {
  if (animal.traits === null) return ok(null);
  const { loci } = lociFor(facility, animal.species);
  const sex = geneticSex(animal.sex);
  const read = parseTraits(animal.traits.code, loci, sex);
  return read.ok ? ok(sayTraits(read.value, loci, sex)) : read;
}

/** The code and the words that a card prints; null where nothing is known. Never fails: a code that no table knows stands as it was written. */
export function cardTraits(
  facility: Facility,
  animal: AnimalRecord,
): { readonly code: string; readonly words: TradeWords | null } | null {
  if (animal.traits === null) return null;
  const { code, words } = animal.traits;
  const said = traitsOf(facility, animal);
  if (!said.ok || said.value === null) return { code, words: words === null ? null : same(words) };
  const chosen = said.value.offers.find((offer) => offer.words.long === words);
  return { code: said.value.code, words: chosen?.words ?? said.value.words };
}

/** The event that sets traits. `offer` is the combo name that the card shall print, if one was chosen. */
export function traitsDraft(animal: AnimalRecord, said: TraitSaying, day: Day, offer: ComboOffer | null): EventDraft {
  const payload = { code: said.code, words: (offer?.words ?? said.words).long };
  return { kind: 'traits-set', subjects: [animal.id], payload, day };
}

function same(words: string): TradeWords {
  const medium = words.replaceAll('possible het', 'poss het').replaceAll(' %', '%');
  return { long: words, medium, short: medium.replaceAll(', ', ' ') };
}
