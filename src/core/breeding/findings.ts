import type { AnimalRecord } from '../animal/index.ts';
import type { ClutchRecord, Facility } from '../facility/index.ts';
import {
  add,
  type Block,
  type ClutchTest,
  type Cross,
  type CrossSetting,
  chanceOf,
  clutchTest,
  crossesOf,
  type Fraction,
  type LocusTable,
  locusOrder,
  type Observed,
  ONE,
  outcomesOf,
  type ParthenogenesisFlag,
  parthenogenesisFlag,
  type SireCross,
  type SiresEvidence,
  type StateChance,
  showsInOneDose,
  siresEvidence,
  subtract,
  type Traits,
  ZERO,
} from '../genetics/index.ts';
import type { Id } from '../ids.ts';
import { lociFor, parentOf, traitsOf } from '../lineage/index.ts';
import { ok, type Result } from '../problems.ts';
import { observedOf, youngOf } from './observed.ts';
import { type CandidateSire, candidateSires } from './sires.ts';

/** What hatchlings changed of what a parent is thought to carry. */
export interface ChangedChance {
  readonly locus: string;
  readonly symbol: string;
  /** Whether the first copy was in doubt, or the second. */
  readonly copies: 1 | 2;
  /** The trade name of the allele. */
  readonly allele: string;
  readonly before: Fraction;
  readonly after: Fraction;
}

/** What a clutch with entered young says. */
export interface ClutchFindings {
  readonly observed: readonly Observed[];
  readonly sires: readonly CandidateSire[];
  /** Which males can have given the young; null where no young has traits yet or no male is known. */
  readonly paternity: SiresEvidence | null;
  /** The exact test against what the parents should give; null where they are not both known for certain. */
  readonly test: ClutchTest | null;
  readonly parthenogenesis: ParthenogenesisFlag | null;
  /** By parent; the sire’s only if one male alone comes into question. */
  readonly changed: readonly { readonly id: Id; readonly chances: readonly ChangedChance[] }[];
}

/**
 * Works out what a clutch’s young say: of their sire, of their parents’ hets, and whether the numbers fit. A flag here is
 * a reason to look again, never a finding. Errors: those of the parents’ trait codes and of {@link crossesOf}.
 */
export function findingsOf(facility: Facility, clutch: ClutchRecord): Result<ClutchFindings> {
  const dam = facility.animals.get(clutch.dam);
  if (dam === undefined) return ok(nothing([]));
  const sires = siresToJudge(facility, dam, clutch);
  const { loci } = lociFor(facility, dam.species);
  const beside = lookedAt(facility, clutch);
  const crosses = crossesWith(facility, dam, sires, { loci, beside });
  if (!crosses.ok) return crosses;
  const [first] = crosses.value;
  if (first === undefined) return ok(nothing(sires));
  const observed = observedOf(facility, clutch, first.cross, loci);
  if (observed.length === 0) return ok(nothing(sires));
  const paternity = siresEvidence(crosses.value, observed);
  if (!paternity.ok) return paternity;
  const only = crosses.value.length === 1 ? first.cross : null;
  const flag = only === null ? ok(null) : parthenogenesisFlag(only, observed);
  const test = only === null ? ok(null) : testOf(only, observed);
  return ok({
    observed,
    sires,
    paternity: paternity.value,
    test: test.ok ? test.value : null,
    parthenogenesis: flag.ok ? flag.value : null,
    changed: changesOf({ dam, sires, crosses: crosses.value, found: paternity.value, loci }),
  });
}

/** The sire that was written, else everybody that was with her. */
function siresToJudge(facility: Facility, dam: AnimalRecord, clutch: ClutchRecord): readonly CandidateSire[] {
  const all = candidateSires(facility, dam, clutch.laidOn);
  if (clutch.sire === null) return all;
  const named = all.find((one) => one.id === clutch.sire);
  return [named ?? { id: clutch.sire, lastTogether: clutch.laidOn, season: 'this', why: 'written as the sire' }];
}

function crossesWith(
  facility: Facility,
  dam: AnimalRecord,
  sires: readonly CandidateSire[],
  setting: CrossSetting,
): Result<readonly SireCross[]> {
  if (sires.length === 0) return ok([]);
  const mother = parentOf(facility, dam);
  if (!mother.ok) return mother;
  const possible = [];
  for (const { id } of sires) {
    const animal = facility.animals.get(id);
    const father = animal === undefined ? null : parentOf(facility, animal);
    if (father !== null && !father.ok) return father;
    if (father !== null) possible.push({ id, parent: father.value });
  }
  return possible.length === 0 ? ok([]) : crossesOf(possible, mother.value, setting);
}

/** The traits of the young: what neither parent is written to carry must stay in the cross, or nobody would see it. */
function lookedAt(facility: Facility, clutch: ClutchRecord): readonly Traits[] {
  return youngOf(facility, clutch).flatMap((young) => {
    const said = traitsOf(facility, young);
    return said.ok && said.value !== null ? [said.value.traits] : [];
  });
}

/** The classes are the looks that were seen and all others together; only for parents without doubt. */
function testOf(cross: Cross, observed: readonly Observed[]): Result<ClutchTest | null> {
  if ([...cross.sire, ...cross.dam].some((block) => block.states.length > 1)) return ok(null);
  const outcomes = outcomesOf(cross);
  const order = locusOrder(cross);
  const counts = new Map<string, number>();
  for (const { labels, count } of observed) {
    const key = labels.join('\u0000');
    counts.set(key, (counts.get(key) ?? 0) + count);
  }
  const seen = [...counts].map(([key, n]) => {
    const labels = key.split('\u0000');
    return { n, p: chanceOf(outcomes, new Map(order.map((locus, at) => [locus, labels[at] ?? '']))) };
  });
  const rest = subtract(ONE, seen.map(({ p }) => p).reduce(add, ZERO));
  return clutchTest([...seen.map(({ p }) => p), rest], [...seen.map(({ n }) => n), 0]);
}

interface Found {
  readonly dam: AnimalRecord;
  readonly sires: readonly CandidateSire[];
  readonly crosses: readonly SireCross[];
  readonly found: SiresEvidence;
  readonly loci: LocusTable;
}

function changesOf({ dam, sires, crosses, found, loci }: Found): ClutchFindings['changed'] {
  const [first] = crosses;
  if (first === undefined || found.paternity !== 'one') return [];
  const [only] = sires.length === 1 ? sires : [];
  const ofSire = found.sires[0]?.evidence.sire ?? [];
  return [
    { id: dam.id, chances: changed(first.cross.dam, found.dam, loci) },
    ...(only === undefined ? [] : [{ id: only.id, chances: changed(first.cross.sire, ofSire, loci) }]),
  ].filter((one) => one.chances.length > 0);
}

/** Each allele that a parent may or may not carry, before and after. */
function changed(blocks: readonly Block[], after: readonly StateChance[], loci: LocusTable): readonly ChangedChance[] {
  return blocks.flatMap((block) =>
    block.loci.flatMap((locus, at) => {
      const row = loci.rows.find((one) => one.locus === locus);
      return (row?.alleles ?? []).flatMap(({ symbol, names }) => {
        const wanted = copiesToTell(block, at, symbol);
        if (wanted === null) return [];
        const fits = (pair: readonly string[]): boolean => pair.filter((one) => one === symbol).length >= wanted;
        const before = sum(block.states.flatMap((state) => (fits(state.pairs[at] ?? []) ? [state.p] : [])));
        const now = sum(after.flatMap((state) => (fits(state.strands.get(locus) ?? []) ? [state.p] : [])));
        const name =
          wanted === 2
            ? `${names[0] ?? symbol}, two copies`
            : `${showsInOneDose(symbol) ? '' : 'het '}${names[0] ?? symbol}`;
        return [{ locus, symbol, copies: wanted, allele: name, before, after: now }];
      });
    }),
  );
}

/** Whether it is the first copy that is in doubt, or the second; null where neither is. */
function copiesToTell(block: Block, at: number, symbol: string): 1 | 2 | null {
  const counts = block.states.map(({ pairs }) => (pairs[at] ?? []).filter((one) => one === symbol).length);
  const [least, most] = [Math.min(...counts), Math.max(...counts)];
  if (least === most) return null;
  return least === 0 ? 1 : 2;
}

function sum(all: readonly Fraction[]): Fraction {
  return all.reduce(add, ZERO);
}

function nothing(sires: readonly CandidateSire[]): ClutchFindings {
  return { observed: [], sires, paternity: null, test: null, parthenogenesis: null, changed: [] };
}
