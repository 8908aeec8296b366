import { ok, type Result, refuse } from '../../problems.ts';
import { holds } from '../carrying.ts';
import { alleleOf, type LocusRow, type LocusTable, showsInOneDose } from '../loci/index.ts';
import type { Sex } from '../model.ts';
import {
  type DraftPiece,
  type PlacedSlot,
  pathAt,
  readPieces,
  type Slot,
  settleTraits,
  type Traits,
} from '../notation/index.ts';
import { homozygoteName, nameOf } from '../phenotype.ts';
import { type Contribution, contributionsOf, SIDES } from './contribution.ts';
import { dictionaryOf } from './dictionary.ts';
import { type Said, sentenceOf } from './sentence.ts';
import { tokensOf } from './tokens.ts';

/** What a text in trade words says, and in `notes` what was taken for granted in reading it: to be shown for a yes. */
export interface TradeReading {
  readonly traits: Traits;
  readonly notes: readonly string[];
}

/**
 * Reads trade words such as `Pastel, het Clown, 66 % possible het Piebald`; nothing is guessed: what can mean two things
 * is refused with the choices. Parts in the trait code are read as such. Errors, at `char n`: the `trade-` problems and
 * those of the trait code.
 */
export function readTrade(text: string, loci: LocusTable, sex: Sex | null = null): Result<TradeReading> {
  const tokens = tokensOf(text, (word) => alleleOf(loci, word) !== null);
  if (tokens.length === 0) return refuse('trade-incomplete', { word: text.trim(), why: 'there is no name in it' });
  const sentence = sentenceOf(tokens, dictionaryOf(loci), loci.species);
  if (!sentence.ok) return sentence;
  const { said, codes } = sentence.value;
  const read = contributions(said);
  if (!read.ok) return read;
  const side = sideOf(said, sentence.value.maker);
  const placed = placedPieces(read.value, sex, side);
  if (side !== null && !read.value.some((one) => one.row.sexLink?.system === 'XY')) {
    return refuse('trade-unfit', {
      modifier: `${side}-maker`,
      name: 'this animal',
      why: 'none of the names is of a locus on X and Y',
      instead: 'it without',
    });
  }
  const written = codePieces(codes);
  if (!written.ok) return written;
  const traits = settleTraits([...placed, ...written.value], loci, sex);
  return traits.ok ? ok({ traits: traits.value, notes: notesOn(said, read.value, { sex, side }) }) : traits;
}

type Side = 'male' | 'female' | null;

function sideOf(said: readonly Said[], maker: Side): Side {
  const told = said.map((one) => SIDES[one.aside ?? '']).find((one) => one === 'male' || one === 'female');
  return told === 'male' || told === 'female' ? told : maker;
}

function contributions(said: readonly Said[]): Result<readonly Contribution[]> {
  const all: Contribution[] = [];
  for (const one of said) {
    const read = contributionsOf(one);
    if (!read.ok) return read;
    all.push(...read.value);
  }
  return ok(all);
}

/** One piece per locus: alleles of one locus named apart make a pair; too many are left for the check to refuse. */
function placedPieces(all: readonly Contribution[], sex: Sex | null, side: Side): readonly DraftPiece[] {
  const byRow = new Map<LocusRow, Contribution[]>();
  const apart: Contribution[] = [];
  for (const one of all) {
    const same = byRow.get(one.row) ?? [];
    const taken = same.flatMap((other) => other.alleles);
    const fits = taken.length + one.alleles.length <= 2 && !one.alleles.some((symbol) => taken.includes(symbol));
    if (fits) byRow.set(one.row, [...same, one]);
    else apart.push(one);
  }
  return [...[...byRow.values()], ...apart.map((one) => [one])].map((group) => pieceOf(group, sex, side));
}

function pieceOf(group: readonly Contribution[], sex: Sex | null, side: Side): DraftPiece {
  const at = group[0]?.at ?? 0;
  const slots = group.flatMap((one) =>
    one.alleles.map(
      (symbol): Slot => (one.chance === null ? { kind: 'allele', symbol } : { kind: 'maybe', symbol, ...one.chance }),
    ),
  );
  const beside: Slot = { kind: group.some((one) => one.beside === 'unknown') ? 'unknown' : 'wild' };
  const [first = beside, second = beside] = slots;
  const place = (slot: Slot): readonly PlacedSlot[] => [{ slot, at }];
  const like: DraftPiece = { copies: [place(first), place(second)], second: 'same', at, markAt: at };
  const system = group[0]?.row.sexLink?.system ?? null;
  if (system === 'ZW' && sex === 'F' && onOneZ(group)) return { ...like, copies: [place(first), []], second: 'W' };
  if (system !== 'XY' || (sex !== 'M' && side === null)) return like;
  if (side === null) return { ...like, second: 'Y?' };
  return side === 'female' ? { ...like, second: 'Y' } : { ...like, copies: [place(second), place(first)], second: 'Y' };
}

/** A female shows with her one copy what a male shows with two; a recessive het she cannot be. */
function onOneZ(group: readonly Contribution[]): boolean {
  const [one, ...more] = group;
  if (one === undefined || more.length > 0) return false;
  const [symbol = ''] = one.alleles;
  return one.alleles.length === 2 ? one.shows : showsInOneDose(symbol) || one.chance !== null;
}

function codePieces(codes: readonly { readonly text: string; readonly at: number }[]): Result<readonly DraftPiece[]> {
  const all: DraftPiece[] = [];
  for (const { text, at } of codes) {
    const pieces = readPieces(text);
    if (!pieces.ok) return { ok: false, problem: { ...pieces.problem, path: movedPath(pieces.problem.path, at - 1) } };
    all.push(...pieces.value.map((piece) => moved(piece, at - 1)));
  }
  return ok(all);
}

function movedPath(path: string | undefined, by: number): string {
  return pathAt(Number(path?.replace('char ', '') ?? '1') + by) ?? '';
}

function moved(piece: DraftPiece, by: number): DraftPiece {
  const shift = (slots: readonly PlacedSlot[]): readonly PlacedSlot[] =>
    slots.map((one) => ({ ...one, at: one.at + by }));
  return {
    ...piece,
    copies: [shift(piece.copies[0]), shift(piece.copies[1])],
    at: piece.at + by,
    markAt: piece.markAt + by,
  };
}

function notesOn(
  said: readonly Said[],
  all: readonly Contribution[],
  known: { readonly sex: Sex | null; readonly side: Side },
): readonly string[] {
  const combos = said.flatMap((one) => (one.entries[0]?.meaning.kind === 'combo' ? [one] : []));
  return [
    ...combos.map(
      (one) =>
        `${one.text} was read as ${all
          .filter((part) => part.at === one.at)
          .map(nameIn)
          .join(', ')}.`,
    ),
    ...said
      .filter((one) => one.modifier.dose === 'het')
      .flatMap((one) =>
        all
          .filter((part) => part.at === one.at && showsInOneDose(part.alleles[0] ?? ''))
          .map((part) => `One copy of ${nameIn(part)} shows; het was read as one copy.`),
      ),
    ...all
      .filter((one) => one.beside === 'unknown')
      .map((one) => `Whether ${nameIn(one)} is there once or twice is left open.`),
    ...all
      .filter((one) => one.row.lethal.some(({ carrying }) => holds(one.alleles, carrying)))
      .map((one) => `${nameIn(one)} in two copies is taken as lethal; look again.`),
    ...all
      .filter(
        (one) =>
          one.row.sexLink?.system === 'XY' && known.side === null && one.alleles.length === 1 && known.sex !== 'F',
      )
      .map((one) => sideNote(one, known.sex)),
  ];
}

function sideNote(one: Contribution, sex: Sex | null): string {
  const name = nameIn(one);
  return sex === 'M'
    ? `Whether ${name} lies on X or Y is left open: say male-maker or female-maker if the father or the young tell.`
    : `${name} is sex-linked: give the animal’s sex.`;
}

function nameIn({ row, alleles }: Contribution): string {
  const [a = '', b] = alleles;
  if (b === undefined) return nameOf(row, a);
  return a === b ? homozygoteName(row, a) : `${nameOf(row, a)}/${nameOf(row, b)}`;
}
