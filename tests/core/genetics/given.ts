import fc from 'fast-check';
import {
  type LocusRow,
  type LocusTable,
  lociOf,
  makeTraits,
  PLAIN_ROW,
  type Second,
  type Sex,
  type Slot,
  type Traits,
} from '../../../src/core/genetics/index.ts';
import type { Result } from '../../../src/core/problems.ts';

/** The value of a result; a test that gives bad input by mistake fails with the problem's words. */
export function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`${result.problem.path ?? ''} ${result.problem.message} ${result.problem.remedy}`);
  return result.value;
}

/** What a refused result says: its code, its place, and all its words. */
export function fault<T>(result: Result<T>): { code: string; path: string | undefined; words: string } {
  if (result.ok) throw new Error(`expected a problem, got ${JSON.stringify(result.value)}`);
  const { code, path, message, remedy } = result.problem;
  return { code, path, words: `${message} ${remedy}` };
}

export const BALL = value(lociOf('Python regius'));
export const CORN = value(lociOf('Pantherophis guttatus'));
export const BOA = value(lociOf('Boa imperator'));
export const HOGNOSE = value(lociOf('Heterodon nasicus'));

const own = (species: string, locus: string, symbol: string, more: Partial<LocusRow> = {}): LocusRow => ({
  ...PLAIN_ROW,
  species,
  locus,
  inheritance: symbol === symbol.toLowerCase() ? 'recessive' : 'incomplete-dominant',
  alleles: [{ symbol, names: [`Site ${symbol}`] }],
  sources: ['the site'],
  confidence: 'memory',
  ...more,
});

/** An invented species rich in what the tables have none of: two linked loci, one on Z. */
export const INVENTED = value(
  lociOf('Fictiserpens exemplaris', [
    own('Fictiserpens exemplaris', 'AAA', 'aa', { linkage: { group: 'one', r: null } }),
    own('Fictiserpens exemplaris', 'SEX', 'Zed', { sexLink: { system: 'ZW', kind: 'full', r: null } }),
    own('Fictiserpens exemplaris', 'BBB', 'Bb', { linkage: { group: 'one', r: '1/10' } }),
    own('Fictiserpens exemplaris', 'CCC', 'cc', { linkage: { group: 'one', r: '1/5' } }),
    own('Fictiserpens exemplaris', 'ZRE', 'zre', { sexLink: { system: 'ZW', kind: 'full', r: null } }),
  ]),
);
export const siteRow = own;

const slotAt = (row: LocusRow): fc.Arbitrary<Slot> => {
  const symbol = fc.constantFrom(...row.alleles.map((one) => one.symbol));
  return fc.oneof(
    { weight: 3, arbitrary: symbol.map((one): Slot => ({ kind: 'allele', symbol: one })) },
    { weight: 2, arbitrary: fc.constant<Slot>({ kind: 'wild' }) },
    { weight: 1, arbitrary: fc.constant<Slot>({ kind: 'unknown' }) },
    {
      weight: 1,
      arbitrary: fc
        .tuple(symbol, fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }))
        .map(([one, p, more]): Slot => ({ kind: 'maybe', symbol: one, p, q: p + more })),
    },
  );
};

const pieceAt = (row: LocusRow, sex: Sex): fc.Arbitrary<{ copies: [Slot[], Slot[]]; second: Second }> =>
  fc
    .tuple(slotAt(row), slotAt(row), fc.constantFrom<Second>('Y', 'Y?'))
    .map(([first, second, onY]): { copies: [Slot[], Slot[]]; second: Second } => {
      const named: Slot =
        first.kind === 'wild' || first.kind === 'unknown'
          ? { kind: 'allele', symbol: row.alleles[0]?.symbol ?? '' }
          : first;
      if (row.sexLink?.system === 'ZW' && sex === 'F') return { copies: [[named], [{ kind: 'absent' }]], second: 'W' };
      if (row.sexLink?.system === 'XY' && sex === 'M') return { copies: [[second], [named]], second: onY };
      return { copies: [[named], [second]], second: 'same' };
    });

/** Any animal of a table: each locus named or not, every kind of copy. */
export function anyTraits(loci: LocusTable): fc.Arbitrary<{ traits: Traits; sex: Sex }> {
  return fc.constantFrom<Sex>('M', 'F').chain((sex) =>
    fc
      .subarray([...loci.rows], { minLength: 0, maxLength: Math.min(6, loci.rows.length) })
      .chain((rows) => fc.tuple(...rows.map((row) => pieceAt(row, sex))))
      .map((pieces) => ({ traits: value(makeTraits(pieces, loci, sex)), sex })),
  );
}
