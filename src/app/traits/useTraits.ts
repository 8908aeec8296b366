import { type Signal, useSignal } from '@preact/signals';
import {
  type Facility,
  type LocusTable,
  lociFor,
  ok,
  type Problem,
  type Result,
  type Sex,
  type Traits,
} from '../../core/index.ts';
import { type Copies, textOf, withPick } from './picks.ts';
import { readTyped, type Typed } from './typed.ts';

/** A text of traits with everything that is read from it; picking rewrites the text, so that both are always one. */
export interface Reading {
  readonly loci: LocusTable;
  readonly sex: Sex | null;
  /** The loci whose row is the site's own, and what was wrong with rows that had to be set aside. */
  readonly own: ReadonlySet<string>;
  readonly setAside: readonly Problem[];
  readonly text: Signal<string>;
  readonly typed: Typed;
  /** Null where the text cannot be read; an empty text is wild type to pick on. */
  readonly traits: Traits | null;
  /** Why the last pick could not be put in. */
  readonly refused: Signal<Problem | null>;
  put(locus: string, copies: Copies | null): void;
}

/** Reads a text of traits for a species and sex, again at every change. */
export function useTraits(facility: Facility, species: string, sex: Sex | null, start = ''): Reading {
  const text = useSignal(start);
  const refused = useSignal<Problem | null>(null);
  const { loci, setAside } = lociFor(facility, species);
  const typed = readTyped(text.value, loci, sex);
  const traits = traitsIn(typed, species);
  return {
    loci,
    sex,
    own: new Set(facility.site.loci.filter((row) => row.species === species).map((row) => row.locus)),
    setAside,
    text,
    typed,
    traits,
    refused,
    put(locus, copies) {
      if (traits === null) return;
      const picked: Result<string> = picking(traits, locus, copies, { loci, sex });
      refused.value = picked.ok ? null : picked.problem;
      if (picked.ok) text.value = picked.value;
    },
  };
}

function traitsIn(typed: Typed, species: string): Traits | null {
  if (typed.kind === 'fault') return null;
  return typed.kind === 'said' ? typed.said.traits : { species, pieces: [] };
}

function picking(
  traits: Traits,
  locus: string,
  copies: Copies | null,
  { loci, sex }: Pick<Reading, 'loci' | 'sex'>,
): Result<string> {
  const picked = withPick(traits, locus, copies, loci, sex);
  return picked.ok ? ok(textOf(picked.value, loci, sex)) : picked;
}
