import { type CarriedChance, carriedAt, type KeyChances } from './carried.ts';
import { add, type Fraction, fraction, multiply, ZERO } from './fraction.ts';
import { type LocusRow, type LocusTable, showsInOneDose } from './loci/index.ts';
import { type Cross, locusOrder, type Sex } from './model.ts';
import { HIDDEN, type Outcomes, type Part, type PartPhenotype } from './outcomes.ts';
import type { OnProgress } from './pedigreeArrays.ts';
import { lookOf, NORMAL_LOOK, namedPair, WILD } from './phenotype.ts';
import { countsOf, type Phenotype, topPhenotypes } from './product.ts';
import { addWeight } from './weights.ts';
import { pairAside } from './words/index.ts';

/** A look that young of a pairing can have, both sexes together. */
export interface YoungLook {
  /** A label per locus, in the order of the chromosomes. */
  readonly labels: readonly string[];
  /** Among those that hatch. */
  readonly p: Fraction;
  /** The chance of a male, and of a female, that looks so; together they are `p`. */
  readonly males: Fraction;
  readonly females: Fraction;
  /** Trade words, `normal` where nothing shows. */
  readonly shows: string;
  /** What another trait hides, in words, empty if nothing. */
  readonly hidden: readonly string[];
  readonly carries: readonly CarriedChance[];
  /** True where only raising and breeding can tell what it carries. */
  readonly needsProving: boolean;
  /** The genotypes behind it, per locus, mixed over the sexes; sex-linked ones keep their `X|Y` and `Z|W` keys. */
  readonly within: ReadonlyMap<string, KeyChances>;
}

/** The looks of a pairing's young, at most so many of them. */
export interface YoungLooks {
  readonly looks: readonly YoungLook[];
  /** The share of all young that these are. */
  readonly shown: Fraction;
  /** How many looks there are in all. */
  readonly count: bigint;
}

/**
 * The likeliest looks that young of a pairing can have, in falling order; none where no egg can live. Sexes are told apart
 * in `males` and `females` only, 0 both where the cross does not say how sex comes about.
 */
export function youngLooks(
  outcomes: Outcomes,
  loci: LocusTable,
  limit: number,
  onProgress: OnProgress = () => undefined,
): YoungLooks {
  const merged: Outcomes = { ...outcomes, parts: outcomes.parts.map(sexesTogether) };
  const sexed = outcomes.parts.find((part) => part.phenotypes.some((one) => one.sex !== null));
  const looks = topPhenotypes(merged, limit).map((one, at, { length }) => {
    if (at % REPORT_EVERY === 0) onProgress(at, length);
    const seen = seenIn(outcomes.cross, one, loci);
    const ofSex = (sex: Sex): Fraction =>
      sexed === undefined ? ZERO : multiply(one.p, sexShare(sexed, seen.labels, sex));
    return lookOfYoung(seen, loci, { males: ofSex('M'), females: ofSex('F') });
  });
  return { looks, shown: looks.map(({ p }) => p).reduce(add, ZERO), count: countsOf(merged).phenotypes };
}

const REPORT_EVERY = 64;

/** A phenotype with its labels by locus, and the same in the order of the table. */
interface Seen {
  readonly cross: Cross;
  readonly one: Phenotype;
  readonly labels: ReadonlyMap<string, string>;
  readonly rows: readonly { readonly row: LocusRow; readonly label: string; readonly keys: KeyChances }[];
}

function seenIn(cross: Cross, one: Phenotype, loci: LocusTable): Seen {
  const labels = new Map(locusOrder(cross).map((locus, at) => [locus, one.labels[at] ?? ''] as const));
  const rows = loci.rows.flatMap((row) => {
    const label = labels.get(row.locus);
    return label === undefined ? [] : [{ row, label, keys: one.within.get(row.locus) ?? new Map() }];
  });
  return { cross, one, labels, rows };
}

function lookOfYoung(seen: Seen, loci: LocusTable, sexes: Pick<YoungLook, 'males' | 'females'>): YoungLook {
  const { labels, p, within } = seen.one;
  const carries = seen.rows.flatMap(({ row, label, keys }) => carriedAt(row, label, keys, loci));
  return {
    labels,
    p,
    ...sexes,
    shows: showsWords(seen),
    hidden: seen.rows.flatMap((at) => (at.label === HIDDEN ? hiddenWords(seen, at.row, at.keys) : [])),
    carries,
    needsProving: carries.some((one) => !one.sure),
    within,
  };
}

/** Every egg has a sex, so only the part that decides it lists a look twice. */
function sexesTogether(part: Part): Part {
  const found = new Map<string, { -readonly [K in keyof PartPhenotype]: PartPhenotype[K] }>();
  for (const one of part.phenotypes) {
    const key = one.labels.join('\u0000');
    const same = found.get(key);
    if (same === undefined) found.set(key, { ...one, sex: null });
    else {
      same.weight += one.weight;
      same.within = same.within.map((keys, at) => summed(keys, one.within[at] ?? new Map()));
    }
  }
  const phenotypes = [...found.values()].sort((a, b) => (a.weight < b.weight ? 1 : a.weight > b.weight ? -1 : 0));
  return { ...part, phenotypes };
}

function summed(a: ReadonlyMap<string, bigint>, b: ReadonlyMap<string, bigint>): ReadonlyMap<string, bigint> {
  const of = new Map(a);
  for (const [key, weight] of b) addWeight(of, key, weight);
  return of;
}

/** The share of one sex among the young that look so. */
function sexShare(part: Part, labels: ReadonlyMap<string, string>, sex: Sex): Fraction {
  const alike = part.phenotypes.filter((one) => part.loci.every((locus, at) => labels.get(locus) === one.labels[at]));
  const sum = (all: readonly PartPhenotype[]): bigint => all.reduce((weight, one) => weight + one.weight, 0n);
  return fraction(sum(alike.filter((one) => one.sex === sex)), sum(alike));
}

function showsWords({ rows }: Seen): string {
  const shown = rows.flatMap(({ row, label, keys }) =>
    label === NORMAL_LOOK || label === HIDDEN ? [] : [shownAt(row, label, keys)],
  );
  return shown.length === 0 ? NORMAL_LOOK : shown.join(', ');
}

/** Two visible alleles of one locus without a name of their own are said as a pair. */
function shownAt(row: LocusRow, label: string, keys: KeyChances): string {
  const [a = WILD, b = WILD] = [...keys.keys()][0]?.split(/[/|]/) ?? [];
  const isNameless = a !== b && [a, b].every(showsInOneDose) && namedPair(row, a, b) === null;
  return isNameless ? pairAside(row, [a, b]) : label;
}

/** What hides it and what there may be to see; nothing where it would be normal anyway. */
function hiddenWords({ cross, labels }: Seen, row: LocusRow, keys: KeyChances): readonly string[] {
  const behind = new Set([...keys.keys()].map((key) => lookOf(row, key)));
  const names = [...behind].filter((look) => look !== NORMAL_LOOK);
  if (names.length === 0) return [];
  const rule = cross.mask.find(
    (one) =>
      one.hide.includes(row.locus) && [...one.when].every(([locus, wanted]) => wanted.has(labels.get(locus) ?? '')),
  );
  const by =
    rule === undefined ? 'Another trait' : [...rule.when.keys()].map((locus) => labels.get(locus)).join(' with ');
  return [
    `${by} hides ${names.length === behind.size && names.length === 1 ? '' : 'whether it is '}${names.join(' or ')}`,
  ];
}
