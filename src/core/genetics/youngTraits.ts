import { ok, type Result, refuse } from '../problems.ts';
import { type KeyChances, shareOf } from './carried.ts';
import { add, compare, type Fraction, HALF, ZERO } from './fraction.ts';
import { type LocusRow, type LocusTable, showsInOneDose } from './loci/index.ts';
import type { Sex } from './model.ts';
import { makeTraits, type Second, type Slot, type TraitPiece, type Traits } from './notation/index.ts';
import { ABSENT, WILD } from './phenotype.ts';
import type { YoungLook } from './young.ts';

/** The traits of a young, and the loci whose chances the trait code cannot write, to be told in words. */
export interface YoungTraits {
  readonly traits: Traits;
  readonly unsaid: readonly string[];
}

/**
 * The traits of a young of this look, as its record and card will hold them: sure pairs as they are, one possible copy as
 * `[x p:q]`, an unknown second dose of a visible allele as `x/-`. Where the code cannot write the chances the locus is in
 * `unsaid`, and the code holds what is sure of it (`x/-`), if anything. The phase of linked loci is not claimed. Errors:
 * `young-sex`, and those of {@link makeTraits}.
 */
export function traitsOfYoung(look: Pick<YoungLook, 'within'>, loci: LocusTable, sex: Sex | null): Result<YoungTraits> {
  const pieces: Piece[] = [];
  const unsaid: string[] = [];
  for (const row of loci.rows) {
    const all = look.within.get(row.locus);
    if (all === undefined) continue;
    const keys = shareOf(all, (key) => sex === null || fitsSex(row, key, sex));
    if (keys.size === 0) return refuse('young-sex', { sex: sex === 'M' ? 'male' : 'female', locus: row.locus });
    const written = isOfBoth(row, keys) ? unsexedPiece(pairsOf(keys)) : pieceOf(keys);
    if (written.piece !== null) pieces.push(written.piece);
    if (!written.isWhole) unsaid.push(row.locus);
  }
  const strangers = [...look.within.keys()].filter((locus) => !loci.rows.some((row) => row.locus === locus));
  const traits = makeTraits(pieces, loci, sex);
  return traits.ok ? ok({ traits: traits.value, unsaid: [...unsaid, ...strangers] }) : traits;
}

type Piece = Omit<TraitPiece, 'loci'>;

/** What can be written of a locus; not whole where its chances are lost. */
interface Written {
  readonly piece: Piece | null;
  readonly isWhole: boolean;
}

const NOTHING: Written = { piece: null, isWhole: true };
const UNSAID: Written = { piece: null, isWhole: false };

/** On a sex chromosome the sex with two kinds of it has keys of its own. */
function fitsSex(row: LocusRow, key: string, sex: Sex): boolean {
  if (row.sexLink === null) return true;
  return key.includes('|') === (sex === (row.sexLink.system === 'XY' ? 'M' : 'F'));
}

function isOfBoth(row: LocusRow, keys: KeyChances): boolean {
  return (['M', 'F'] as const).every((sex) => [...keys.keys()].some((key) => fitsSex(row, key, sex)));
}

/** The chances of pairs of copies; the second one lies on the Y or W where the first lies on X or Z. */
type Pairs = readonly (readonly [a: string, b: string, p: Fraction])[];

function pairsOf(keys: KeyChances): Pairs {
  return [...keys].map(([key, p]) => {
    const [a = WILD, b = WILD] = key.split(/[/|]/);
    return [a, b, p] as const;
  });
}

function pieceOf(keys: KeyChances): Written {
  const pairs = pairsOf(keys);
  if (pairs.every(([, b]) => b === ABSENT)) return onZ(pairs);
  return [...keys.keys()].some((key) => key.includes('|')) ? onXY(pairs) : likes(pairs);
}

/** A young of unknown sex: of X and Y what it carries without a side; of Z nothing, unless both sexes carry nothing. */
function unsexedPiece(pairs: Pairs): Written {
  if (pairs.every(([, b]) => b !== ABSENT)) return likes(pairs);
  return pairs.every(([a, b]) => a === WILD && (b === WILD || b === ABSENT)) ? NOTHING : UNSAID;
}

/** Two like copies: one that all have for sure, beside it another or several. */
function likes(pairs: Pairs): Written {
  const sorted = pairs.map(([a, b, p]) => (a === WILD ? ([b, a, p] as const) : ([a, b, p] as const)));
  const [first] = sorted;
  if (first === undefined) return NOTHING;
  const common = [first[0], first[1]].find((one) => sorted.every(([a, b]) => a === one || b === one));
  if (common === undefined) return UNSAID;
  const others = sorted.map(([a, b, p]) => [a === common ? b : a, p] as const);
  const beside = slotOf(others, common);
  if (beside === null) return common === WILD ? UNSAID : { piece: like(sureSlot(common), OPEN), isWhole: false };
  if (common === WILD && beside.kind === 'wild') return NOTHING;
  return { piece: like(sureSlot(common), beside), isWhole: true };
}

/** A daughter's one Z. */
function onZ(pairs: Pairs): Written {
  const slot = slotOf(pairs.map(([a, , p]) => [a, p]));
  if (slot === null) return UNSAID;
  if (slot.kind === 'wild') return NOTHING;
  return { piece: { copies: [[slot], [{ kind: 'absent' }]], second: 'W' }, isWhole: true };
}

/** A son's X and Y: each side for itself where one of them is sure, else which side is open. */
function onXY(pairs: Pairs): Written {
  const [x, y] = [sumBy(pairs, 0), sumBy(pairs, 1)];
  if (x.length === 1 || y.length === 1) {
    const slots = [slotOf(x, y[0]?.[0]), slotOf(y, x[0]?.[0])] as const;
    if (slots[0] !== null && slots[1] !== null) return onSides(slots[0], slots[1]);
  }
  const open = likes(pairs);
  const isEven = pairs.length === 2 && pairs.every(([, , p]) => compare(p, HALF) === 0);
  const isOnePair = pairs.every(([a, b]) => pairs.every(([c, d]) => (a === c && b === d) || (a === d && b === c)));
  return { piece: open.piece && { ...open.piece, second: 'Y?' }, isWhole: isOnePair && isEven };
}

function onSides(x: Slot, y: Slot): Written {
  if (x.kind === 'wild' && y.kind === 'wild') return NOTHING;
  return { piece: like(x, y, 'Y'), isWhole: true };
}

const OPEN: Slot = { kind: 'unknown' };
/** The trait code writes chances with at most six digits. */
const MOST_Q = 1_000_000n;

/** One copy from its chances; null if the code has no form for them. Beside the same visible allele it is left open. */
function slotOf(chances: readonly (readonly [string, Fraction])[], beside?: string): Slot | null {
  const found = summed(chances);
  const [first, second] = found;
  if (first === undefined || found.length > 2) return null;
  if (second === undefined) return sureSlot(first[0]);
  const named = found.find(([symbol]) => symbol !== WILD);
  if (named === undefined || ![first[0], second[0]].includes(WILD)) return null;
  const [symbol, p] = named;
  if (symbol === beside && showsInOneDose(symbol)) return OPEN;
  return p.bottom < MOST_Q ? { kind: 'maybe', symbol, p: Number(p.top), q: Number(p.bottom) } : null;
}

function sumBy(pairs: Pairs, side: 0 | 1): readonly (readonly [string, Fraction])[] {
  return summed(pairs.map((pair) => [pair[side], pair[2]]));
}

function summed(chances: readonly (readonly [string, Fraction])[]): readonly (readonly [string, Fraction])[] {
  const found = new Map<string, Fraction>();
  for (const [symbol, p] of chances) found.set(symbol, add(found.get(symbol) ?? ZERO, p));
  return [...found];
}

function sureSlot(symbol: string): Slot {
  return symbol === WILD ? { kind: 'wild' } : { kind: 'allele', symbol };
}

function like(first: Slot, second: Slot, on: Second = 'same'): Piece {
  return { copies: [[first], [second]], second: on };
}
