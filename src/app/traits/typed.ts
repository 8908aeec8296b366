import { type LocusTable, type Problem, readTraits, type Sex, type TraitSaying } from '../../core/index.ts';
import { type Offered, offeredBy } from './offered.ts';

/** What a text of traits comes to while it is typed. */
export type Typed =
  | { readonly kind: 'empty' }
  | { readonly kind: 'said'; readonly said: TraitSaying }
  | { readonly kind: 'fault'; readonly problem: Problem; readonly offered: readonly Offered[] };

/** Reads a text of traits: the trait code or trade words. */
export function readTyped(text: string, loci: LocusTable, sex: Sex | null): Typed {
  if (text.trim() === '') return { kind: 'empty' };
  const read = readTraits(text, loci, sex);
  if (read.ok) return { kind: 'said', said: read.value };
  return { kind: 'fault', problem: read.problem, offered: offeredBy(read.problem, text, loci, sex) };
}
