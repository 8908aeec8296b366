import { byLocus, holds } from './carrying.ts';
import { crossOf } from './cross.ts';
import { add, type Fraction, isZero, multiply, ONE, ZERO } from './fraction.ts';
import type { Carrying, LocusRow, LocusTable } from './loci/index.ts';
import type { Sex } from './model.ts';
import { symbolIn, type Traits } from './notation/index.ts';
import { outcomesOf, type Part } from './outcomes.ts';
import type { CrossSetting, Parent } from './parents.ts';
import { shareOf } from './weights.ts';

/** A welfare note that applies: what is said, on what ground, and whether the genotype is sure or only possible. */
export interface WelfareWord {
  readonly says: string;
  readonly source: string;
  readonly kind: 'welfare' | 'lethal';
  readonly sure: boolean;
  /** The alleles it is about. */
  readonly carrying: Carrying;
  /** Where it is said of one sex alone. */
  readonly sex: Sex | null;
  readonly locus: string;
}

/** What is to be told of one animal. A note for the other sex is left out; for an unsexed animal it is possible. */
export function welfareNotes(traits: Traits, loci: LocusTable, sex: Sex | null = null): readonly WelfareWord[] {
  const { sure, possible } = copiesOf(traits);
  return notesOf(loci).flatMap((note) => {
    if (note.sex !== null && sex !== null && note.sex !== sex) return [];
    const carrying = note.anyOf.find((one) => holds(sure, one)) ?? note.anyOf.find((one) => holds(possible, one));
    if (carrying === undefined) return [];
    const isSure = holds(sure, carrying) && (note.sex === null || sex !== null);
    return [{ ...wordOf(note, carrying), sure: isSure }];
  });
}

/** What is to be warned of before two animals are put together. */
export interface PairingWarning extends WelfareWord {
  readonly who: 'sire' | 'dam' | 'young';
  /** For young: the share of eggs with it before anything dies; null where it cannot be worked out. */
  readonly share: Fraction | null;
}

/**
 * Everything the table says of the parents and of what their eggs can carry, lethal genotypes included. Nothing is left
 * out for being unsure: where no share can be worked out, what is possible is still told, with share null.
 */
export function pairingWelfare(sire: Parent, dam: Parent, setting: CrossSetting): readonly PairingWarning[] {
  const { loci } = setting;
  const own = (
    [
      ['sire', sire, 'M'],
      ['dam', dam, 'F'],
    ] as const
  ).flatMap(([who, parent, sex]) =>
    welfareNotes(parent.traits, loci, sex).map((word) => ({ ...word, who, share: null })),
  );
  return [...own, ...youngWarnings(sire, dam, setting)];
}

function youngWarnings(sire: Parent, dam: Parent, setting: CrossSetting): readonly PairingWarning[] {
  const { loci } = setting;
  const planned = crossOf(sire, dam, setting);
  const parts = planned.ok ? outcomesOf({ ...planned.value.cross, lethal: [], mask: [] }).parts : null;
  const given = [copiesOf(sire.traits).possible, copiesOf(dam.traits).possible] as const;
  return notesOf(loci).flatMap((note) =>
    note.anyOf.flatMap((carrying) => {
      if (!canGive(given, carrying, loci)) return [];
      const share = parts === null ? null : shareHolding(parts, carrying, loci);
      if (share !== null && isZero(share)) return [];
      return [{ ...wordOf(note, carrying), sure: share !== null && isOne(share), who: 'young' as const, share }];
    }),
  );
}

function isOne(share: Fraction): boolean {
  return share.top === share.bottom;
}

interface Note {
  readonly row: LocusRow;
  readonly kind: 'welfare' | 'lethal';
  readonly anyOf: readonly Carrying[];
  readonly sex: Sex | null;
  readonly says: string;
  readonly source: string;
}

function notesOf(loci: LocusTable): readonly Note[] {
  return loci.rows.flatMap((row): readonly Note[] => [
    ...row.welfare.map((one) => ({ ...one, row, kind: 'welfare' as const })),
    ...row.lethal.map((one) => ({
      row,
      kind: 'lethal' as const,
      anyOf: [one.carrying],
      sex: null,
      says: one.says,
      source: one.basis,
    })),
  ]);
}

function wordOf({ says, source, kind, sex, row }: Note, carrying: Carrying): Omit<WelfareWord, 'sure'> {
  return { says, source, kind, carrying, sex, locus: row.locus };
}

/** The copies that are there for sure, and all that may be; an unknown copy may be the named allele again. */
function copiesOf(traits: Traits): { readonly sure: readonly string[]; readonly possible: readonly string[] } {
  const [sure, possible]: [string[], string[]] = [[], []];
  for (const { loci, copies } of traits.pieces) {
    loci.forEach((_, at) => {
      const pair = copies.flatMap((copy) => copy[at] ?? []);
      const named = pair.flatMap((slot) => symbolIn(slot) ?? []);
      possible.push(...named, ...(pair.some((slot) => slot.kind === 'unknown') ? named.slice(0, 1) : []));
      sure.push(...pair.flatMap((slot) => (slot.kind === 'allele' ? [slot.symbol] : [])));
    });
  }
  return { sure, possible };
}

/** Whether an egg can get these alleles: one at a locus from either side, two only one from each. */
function canGive(
  given: readonly [readonly string[], readonly string[]],
  carrying: Carrying,
  loci: LocusTable,
): boolean {
  const has = (side: 0 | 1, symbol = ''): boolean => given[side].includes(symbol);
  return [...byLocus(carrying, loci).values()].every(([a, b]) =>
    b === undefined ? has(0, a) || has(1, a) : (has(0, a) && has(1, b)) || (has(0, b) && has(1, a)),
  );
}

function shareHolding(parts: readonly Part[], carrying: Carrying, loci: LocusTable): Fraction {
  const wanted = byLocus(carrying, loci);
  return parts.reduce((all, part) => multiply(all, shareInPart(part, wanted)), ONE);
}

function shareInPart(part: Part, wanted: ReadonlyMap<LocusRow, Carrying>): Fraction {
  const here = [...wanted].flatMap(([row, symbols]) =>
    part.loci.includes(row.locus) ? [{ at: part.loci.indexOf(row.locus), symbols }] : [],
  );
  if (here.length === 0) return ONE;
  const fitting = part.genotypes.filter(([egg]) =>
    here.every(({ at, symbols }) => holds((egg.keys[at] ?? '').split(/[/|]/), symbols)),
  );
  return fitting.reduce((sum, [, weight]) => add(sum, shareOf(weight, part.total)), ZERO);
}
