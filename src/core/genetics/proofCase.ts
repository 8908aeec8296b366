import { crossOf } from './cross.ts';
import type { Fraction } from './fraction.ts';
import type { LocusRow, LocusTable } from './loci/index.ts';
import type { Cross, Strands } from './model.ts';
import type { Parent } from './parents.ts';

/** One way to find out: a mate, what its young would show, and how long doubt lasts. */
export interface ProofWay {
  readonly mate: 'shows' | 'het' | 'normal';
  readonly mateWords: string;
  readonly mateCode: string;
  /** In words: which young would settle it, and what it would say where that is not that the animal carries it. */
  readonly sign: string;
  /** The chance that one young shows the sign, if what the sign says is so. */
  readonly perYoung: Fraction;
  /** The chance of {@link Proof.what} after 1, 2, .. young none of which shows the sign (12 of them). */
  readonly after: readonly Fraction[];
  /** The fewest such young that leave less than 1 in 20, and less than 1 in 100, to what the sign says. */
  readonly youngFor: { readonly in20: number; readonly in100: number };
}

/** Something that is not known of an animal, and what would prove it. */
export interface Proof {
  readonly locus: string;
  /** `het Clown`, `two copies of Pinstripe`. */
  readonly what: string;
  readonly prior: Fraction;
  /** None where no mate would tell, or every such mate would give eggs that die. */
  readonly ways: readonly ProofWay[];
}

/** Something that may hold of an animal's two strands at a locus. */
export interface Doubt {
  readonly symbol: string;
  readonly what: string;
  /** What the sign is: a young that cannot come unless it holds, one that cannot come if it holds, or one that is likelier if it does not. */
  readonly sign: 'for' | 'against' | 'likelier';
  /** What the sign says where it does not say that it holds. */
  readonly says: string | null;
  readonly holds: (strands: Strands) => boolean;
}

/** What a proof is worked out from: the animal at this locus alone, and all of it for eggs that would die. */
export interface ProofCase {
  readonly doubt: Doubt;
  readonly row: LocusRow;
  readonly animal: Parent;
  readonly whole: Parent;
  readonly loci: LocusTable;
}

/** A kind of mate for a test. */
export interface Mate extends Pick<ProofWay, 'mate' | 'mateWords' | 'mateCode'> {
  readonly parent: Parent;
}

/** The cross of an animal and a mate; null where it cannot be worked out. On autosomes the sex system does not matter. */
export function crossWith(animal: Parent, mate: Parent, loci: LocusTable): Cross | null {
  const setting = { loci, sexSystem: loci.sexSystem ?? 'XY' } as const;
  const planned = animal.sex === 'F' ? crossOf(mate, animal, setting) : crossOf(animal, mate, setting);
  return planned.ok ? planned.value.cross : null;
}
