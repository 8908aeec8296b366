import { ok, type Result, refuse } from '../../problems.ts';
import { gcd } from '../fraction.ts';
import type { LocusTable } from '../loci/index.ts';
import type { Sex } from '../model.ts';
import { type DraftPiece, type PlacedSlot, pathAt } from './draft.ts';
import { Reader, type Token } from './scan.ts';
import { settleTraits } from './settle.ts';
import { type Traits, WILD_CODE } from './traits.ts';

/**
 * Reads a trait code of one species, in any case and spacing; `sex` null where it is not known. Every error has the path
 * `char n`, counted from 1: `traits-malformed` and those of {@link settleTraits}.
 */
export function parseTraits(text: string, loci: LocusTable, sex: Sex | null = null): Result<Traits> {
  const drafts = readPieces(text);
  return drafts.ok ? settleTraits(drafts.value, loci, sex) : drafts;
}

/** The form of a trait code without its meaning. */
export function readPieces(text: string): Result<readonly DraftPiece[]> {
  const reader = new Reader(text);
  if (reader.peek().text.toLowerCase() === WILD_CODE) {
    reader.next();
    return reader.peek().kind === 'end' ? ok([]) : expected('the end after wt', reader.peek());
  }
  const pieces: DraftPiece[] = [];
  for (;;) {
    const piece = readPiece(reader);
    if (!piece.ok) return piece;
    pieces.push(piece.value);
    if (reader.peek().kind === 'end') return ok(pieces);
    if (!reader.take(';')) return expected('a semicolon or the end', reader.peek());
  }
}

function readPiece(reader: Reader): Result<DraftPiece> {
  const { at } = reader.peek();
  const first = readCopy(reader);
  if (!first.ok) return first;
  if (!reader.take('/')) return expected('a slash and the other copy', reader.peek());
  const mark = reader.peek();
  if (mark.kind === 'W') {
    reader.next();
    return ok({ copies: [first.value, []], second: 'W', at, markAt: mark.at });
  }
  const second = mark.kind === 'Y:' ? 'Y' : mark.kind === 'Y?' ? 'Y?' : 'same';
  if (second !== 'same') reader.next();
  const start = reader.peek();
  const other = readCopy(reader);
  if (!other.ok) return other;
  if (other.value.length !== first.value.length) {
    return expected(
      `a copy of ${first.value.length === 1 ? 'one locus' : `${first.value.length} loci`} as before the slash`,
      start,
    );
  }
  return ok({ copies: [first.value, other.value], second, at, markAt: mark.at });
}

/** One chromosome's worth: slots with spaces between them. */
function readCopy(reader: Reader): Result<readonly PlacedSlot[]> {
  const slots: PlacedSlot[] = [];
  do {
    const slot = readSlot(reader);
    if (!slot.ok) return slot;
    slots.push(slot.value);
  } while (beginsSlot(reader.peek()));
  return ok(slots);
}

function beginsSlot(token: Token): boolean {
  return (
    token.kind === 'sign' || (token.kind === 'mark' && (token.text === '+' || token.text === '-' || token.text === '['))
  );
}

function readSlot(reader: Reader): Result<PlacedSlot> {
  const token = reader.peek();
  const { at } = token;
  if (!beginsSlot(token)) return expected('an allele, +, - or [', token);
  reader.next();
  if (token.kind === 'sign') return ok({ slot: { kind: 'allele', symbol: token.text }, at });
  if (token.text === '+') return ok({ slot: { kind: 'wild' }, at });
  if (token.text === '-') return ok({ slot: { kind: 'unknown' }, at });
  return readMaybe(reader, at);
}

/** After the bracket: `x p:q]`, in lowest terms from here on. */
function readMaybe(reader: Reader, at: number): Result<PlacedSlot> {
  const sign = reader.next();
  if (sign.kind !== 'sign') return expected('an allele after [', sign);
  const chanceAt = reader.peek();
  const p = readCount(reader);
  if (!p.ok) return p;
  if (!reader.take(':')) return expected('a colon, as in 2:3', reader.peek());
  const q = readCount(reader);
  if (!q.ok) return q;
  if (!reader.take(']')) return expected(']', reader.peek());
  if (p.value === 0 || p.value >= q.value)
    return refuse('traits-chance', { chance: `${p.value}:${q.value}` }, pathAt(chanceAt.at));
  const common = Number(gcd(BigInt(p.value), BigInt(q.value)));
  return ok({ slot: { kind: 'maybe', symbol: sign.text, p: p.value / common, q: q.value / common }, at });
}

/** Six digits are more than any chance from breeding records needs, and stay exact as plain numbers. */
const MOST_DIGITS = 6;

function readCount(reader: Reader): Result<number> {
  const token = reader.next();
  if (token.kind !== 'number' || token.text.length > MOST_DIGITS)
    return expected('a whole number such as the 2 and 3 of 2:3', token);
  return ok(Number(token.text));
}

function expected(what: string, found: Token): { readonly ok: false } & Result<never> {
  const words = found.kind === 'end' ? 'its end' : `“${found.text.slice(0, 20)}”`;
  return refuse('traits-malformed', { found: words, expected: what }, pathAt(found.at));
}
