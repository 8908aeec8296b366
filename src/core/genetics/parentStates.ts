import { ok, type Result, refuse } from '../problems.ts';
import { holds } from './carrying.ts';
import { add, divide, type Fraction, fraction, HALF, isZero, multiply, ONE, subtract, ZERO } from './fraction.ts';
import { type LocusRow, showsInOneDose } from './loci/index.ts';
import type { ParentRole, Strands } from './model.ts';
import { type Slot, symbolIn, type TraitPiece } from './notation/index.ts';
import { ABSENT, WILD } from './phenotype.ts';

/** How likely an unknown second copy is the visible allele again: nobody has looked, so either is taken as likely. */
export const DEFAULT_SECOND_DOSE = HALF;

const WILD_PAIR: Strands = [WILD, WILD];

/** One way a parent can be at some loci. */
export interface ParentState {
  readonly p: Fraction;
  readonly pairs: readonly Strands[];
}

/** What the states of a parent are worked out with. */
export interface StateSetting {
  readonly role: ParentRole;
  readonly rows: readonly LocusRow[];
  /** Whether this parent has one X and one Y here, so that its strands cannot change places. */
  readonly unlike: boolean;
  /** The site's own chance that an unknown copy is the named allele again, by locus. */
  readonly secondDose: ReadonlyMap<string, Fraction>;
}

/**
 * All ways a parent can be at the loci of one chromosome, from its pieces there; loci that no piece names are wild type.
 * Several pieces on one chromosome are of unknown phase: each way round is as likely. The parent lives, so ways that
 * are taken as lethal are left out, unless no other is left. Errors: `pairing-copy-unknown`.
 */
export function parentStates(pieces: readonly TraitPiece[], setting: StateSetting): Result<readonly ParentState[]> {
  let states: readonly ParentState[] = [{ p: ONE, pairs: setting.rows.map(() => WILD_PAIR) }];
  for (const [at, piece] of pieces.entries()) {
    const own = pieceStates(piece, setting, at === 0);
    if (!own.ok) return own;
    states = states.flatMap((state) => own.value.map((one) => overlaid(state, one, piece, setting.rows)));
  }
  return ok(living(merged(states), setting.rows));
}

function overlaid(state: ParentState, own: ParentState, piece: TraitPiece, rows: readonly LocusRow[]): ParentState {
  const pairs = rows.map((row, at) => own.pairs[piece.loci.indexOf(row.locus)] ?? state.pairs[at] ?? WILD_PAIR);
  return { p: multiply(state.p, own.p), pairs };
}

function pieceStates(piece: TraitPiece, setting: StateSetting, isFirst: boolean): Result<readonly ParentState[]> {
  let states: readonly ParentState[] = [{ p: ONE, pairs: [] }];
  for (const [at, locus] of piece.loci.entries()) {
    const row = setting.rows.find((one) => one.locus === locus);
    const pairs = row === undefined ? ok([]) : locusPairs(piece, at, row, setting);
    if (!pairs.ok) return pairs;
    states = states.flatMap((state) =>
      pairs.value.map(([pair, p]) => ({ p: multiply(state.p, p), pairs: [...state.pairs, pair] })),
    );
  }
  return ok(eitherWay(piece, setting, isFirst) ? states.flatMap(bothWays) : states);
}

/** On autosomes only the phase to other pieces matters; in a male X and Y differ, so a like-written pair is either way round. */
function eitherWay(piece: TraitPiece, setting: StateSetting, isFirst: boolean): boolean {
  if (piece.second === 'Y' || piece.second === 'W') return false;
  return piece.second === 'Y?' || setting.unlike || !isFirst;
}

function bothWays(state: ParentState): readonly ParentState[] {
  const p = multiply(state.p, HALF);
  return [
    { ...state, p },
    { p, pairs: state.pairs.map(([a, b]) => [b, a] as const) },
  ];
}

type Pairs = readonly (readonly [Strands, Fraction])[];

function locusPairs(piece: TraitPiece, at: number, row: LocusRow, setting: StateSetting): Result<Pairs> {
  const slots = [piece.copies[0][at] ?? WILD_SLOT, piece.copies[1][at] ?? WILD_SLOT] as const;
  const dose = slots.some((slot) => slot.kind === 'unknown') ? secondDose(slots, row, setting) : ZERO;
  if (dose === null)
    return refuse('pairing-copy-unknown', { role: setting.role, locus: row.locus }, `${setting.role}.${row.locus}`);
  const named = slots.map(symbolIn).find((symbol) => symbol !== null) ?? WILD;
  const [first, second] = [slotChances(slots[0], named, dose), slotChances(slots[1], named, dose)];
  return ok(first.flatMap(([a, p]) => second.map(([b, q]) => [[a, b], multiply(p, q)] as const)));
}

const WILD_SLOT: Slot = { kind: 'wild' };

function secondDose(slots: readonly [Slot, Slot], row: LocusRow, setting: StateSetting): Fraction | null {
  const given = setting.secondDose.get(row.locus);
  if (given !== undefined) return given;
  const sure = slots.find((slot) => slot.kind === 'allele');
  return sure?.kind === 'allele' && showsInOneDose(sure.symbol) ? DEFAULT_SECOND_DOSE : null;
}

function slotChances(slot: Slot, named: string, dose: Fraction): readonly (readonly [string, Fraction])[] {
  switch (slot.kind) {
    case 'allele':
      return [[slot.symbol, ONE]];
    case 'wild':
      return [[WILD, ONE]];
    case 'absent':
      return [[ABSENT, ONE]];
    case 'maybe':
      return either(slot.symbol, fraction(BigInt(slot.p), BigInt(slot.q)));
    case 'unknown':
      return either(named, dose);
    default:
      return slot satisfies never;
  }
}

function either(symbol: string, p: Fraction): readonly (readonly [string, Fraction])[] {
  const all: readonly (readonly [string, Fraction])[] = [
    [symbol, p],
    [WILD, subtract(ONE, p)],
  ];
  return all.filter(([, chance]) => !isZero(chance));
}

function merged(states: readonly ParentState[]): readonly ParentState[] {
  const found = new Map<string, ParentState>();
  for (const state of states) {
    const key = state.pairs.map((pair) => pair.join('|')).join(' ');
    const same = found.get(key);
    found.set(key, same === undefined ? state : { ...same, p: add(same.p, state.p) });
  }
  return [...found.values()];
}

function living(states: readonly ParentState[], rows: readonly LocusRow[]): readonly ParentState[] {
  const lethal = rows.flatMap((row) => row.lethal.map((one) => one.carrying));
  const alive = states.filter((state) => !lethal.some((carrying) => holds(state.pairs.flat(), carrying)));
  const total = alive.reduce((sum, state) => add(sum, state.p), ZERO);
  return isZero(total) ? states : alive.map((state) => ({ ...state, p: divide(state.p, total) }));
}
