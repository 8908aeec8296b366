import {
  homozygoteName,
  type LocusRow,
  type LocusTable,
  locusWords,
  makeTraits,
  printTraits,
  type Result,
  readTraits,
  type Second,
  type Sex,
  type Slot,
  sayTraits,
  showsInOneDose,
  type TraitPiece,
  type Traits,
} from '../../core/index.ts';

/** The copies of one locus, before their order is settled. */
export type Copies = Omit<TraitPiece, 'loci'>;

/** One choice of copies at a locus: what it is called there, the same in full trade words, and its code. */
export interface Pick {
  readonly words: string;
  readonly says: string;
  readonly code: string;
  readonly copies: Copies;
}

/** What may be chosen of one allele, and the copies for a chance of one's own. */
export interface AllelePicks {
  readonly symbol: string;
  readonly name: string;
  readonly picks: readonly Pick[];
  possible(p: number, q: number): Copies;
}

/** What may be chosen at a locus: by allele, and two alleles of a series together. */
export interface LocusPicks {
  readonly alleles: readonly AllelePicks[];
  readonly pairs: readonly Pick[];
}

/** The choices of a locus for an animal of this sex; what core refuses of that sex is not among them. */
export function picksOf(row: LocusRow, loci: LocusTable, sex: Sex | null): LocusPicks {
  const kept = (all: readonly (readonly [string, Copies])[]): readonly Pick[] =>
    all.flatMap(([words, copies]) => pickOf(words, copies, loci, sex));
  const side = sideOf(row, sex);
  return {
    alleles: row.alleles.map(({ symbol, names }) => ({
      symbol,
      name: names[0] ?? symbol,
      picks: kept(doses(row, symbol, side)),
      possible: (p, q) => beside({ kind: 'maybe', symbol, p, q }, side),
    })),
    pairs: side === 'Z' ? [] : kept(pairsOf(row, side)),
  };
}

/** Traits with other copies at one locus, wild type where null. Errors: those of the trait code. */
export function withPick(
  traits: Traits,
  locus: string,
  copies: Copies | null,
  loci: LocusTable,
  sex: Sex | null,
): Result<Traits> {
  const others = traits.pieces.flatMap((piece) => withoutLocus(piece, locus));
  return makeTraits(copies === null ? others : [...others, copies], loci, sex);
}

/** The code of what is written at one locus; null for wild type. What stands in phase with others has no code alone. */
export function codeAt(traits: Traits, locus: string): string | null {
  const piece = traits.pieces.find((one) => one.loci.includes(locus));
  return piece === undefined ? null : printTraits({ species: traits.species, pieces: [piece] });
}

/** Traits as a keeper would type them: trade words if these read back as the same, else the trait code. */
export function textOf(traits: Traits, loci: LocusTable, sex: Sex | null): string {
  const { words, code } = sayTraits(traits, loci, sex);
  const back = readTraits(words.long, loci, sex);
  return back.ok && back.value.code === code ? words.long : code;
}

/** Where an allele of this locus lies in this animal: on two like chromosomes, on X and Y, or on one Z. */
type Side = 'same' | 'XY' | 'Z';

function sideOf({ sexLink }: LocusRow, sex: Sex | null): Side {
  if (sexLink?.system === 'XY' && sex === 'M') return 'XY';
  return sexLink?.system === 'ZW' && sex === 'F' ? 'Z' : 'same';
}

const WILD: Slot = { kind: 'wild' };
const UNKNOWN: Slot = { kind: 'unknown' };
const ABSENT: Slot = { kind: 'absent' };

function pair(first: Slot, other: Slot, second: Second = 'same'): Copies {
  return { copies: [[first], [other]], second };
}

function beside(slot: Slot, side: Side): Copies {
  switch (side) {
    case 'same':
      return pair(slot, WILD);
    case 'XY':
      return pair(slot, WILD, 'Y?');
    case 'Z':
      return pair(slot, ABSENT, 'W');
    default:
      return side satisfies never;
  }
}

function doses(row: LocusRow, symbol: string, side: Side): readonly (readonly [string, Copies])[] {
  const one: Slot = { kind: 'allele', symbol };
  const shows = showsInOneDose(symbol);
  const chances = [
    ['66 % possible', 2, 3],
    ['50 % possible', 1, 2],
  ] as const;
  const possible = chances.map(
    ([words, p, q]) => [shows ? words : `${words} het`, beside({ kind: 'maybe', symbol, p, q }, side)] as const,
  );
  if (side === 'Z') return [[shows ? 'on its one Z' : 'visual', pair(one, ABSENT, 'W')], ...possible];
  const two = [twoWords(row, symbol), pair(one, one, side === 'XY' ? 'Y' : 'same')] as const;
  if (side === 'XY') return [...makers(one, shows), two, ...(shows ? [] : possible)];
  return shows
    ? [['one copy', pair(one, WILD)], two, ['other copy unknown', pair(one, UNKNOWN)]]
    : [['het', pair(one, WILD)], two, ...possible];
}

function makers(one: Slot, shows: boolean): readonly (readonly [string, Copies])[] {
  const het = shows ? '' : 'het, ';
  return [
    [`${het}male-maker`, pair(WILD, one, 'Y')],
    [`${het}female-maker`, pair(one, WILD, 'Y')],
    [`${het}X or Y not known`, pair(one, WILD, 'Y?')],
  ];
}

function twoWords(row: LocusRow, symbol: string): string {
  const name = homozygoteName(row, symbol);
  const plain = row.alleles.find((one) => one.symbol === symbol)?.names[0] ?? symbol;
  if (!showsInOneDose(symbol)) return name === plain ? 'visual' : `visual: ${name}`;
  if (name === `Super ${plain}`) return 'super';
  return name === plain ? 'two copies' : `super: ${name}`;
}

function pairsOf(row: LocusRow, side: Side): readonly (readonly [string, Copies])[] {
  return row.alleles.flatMap(({ symbol, names }, at) =>
    row.alleles.slice(at + 1).map((other) => {
      const slots = [symbol, other.symbol].map((one): Slot => ({ kind: 'allele', symbol: one }));
      const [first = WILD, second = WILD] = slots;
      return [
        `${names[0] ?? symbol} with ${other.names[0] ?? other.symbol}`,
        pair(first, second, side === 'XY' ? 'Y?' : 'same'),
      ] as const;
    }),
  );
}

function pickOf(words: string, copies: Copies, loci: LocusTable, sex: Sex | null): readonly Pick[] {
  const made = makeTraits([copies], loci, sex);
  if (!made.ok) return [];
  const says = locusWords(made.value, loci)[0]?.long ?? words;
  return [{ words, says, code: printTraits(made.value), copies }];
}

/** A locus taken out of its piece; what was in phase with it stays, unless it names no allele. */
function withoutLocus(piece: TraitPiece, locus: string): readonly TraitPiece[] {
  const at = piece.loci.indexOf(locus);
  if (at < 0) return [piece];
  const rest = (copy: readonly Slot[]): readonly Slot[] => copy.filter((_, place) => place !== at);
  const copies = [rest(piece.copies[0]), rest(piece.copies[1])] as const;
  const named = copies.flat().some((slot) => slot.kind === 'allele' || slot.kind === 'maybe');
  return named ? [{ ...piece, loci: piece.loci.filter((one) => one !== locus), copies }] : [];
}
