import { ok, problem, type Result } from '../problems.ts';
import { chromosomesOf, type Group } from './chromosomes.ts';
import { figureFault, parentFault } from './crossFaults.ts';
import { carriedAlleles, locusMap, rulesOf } from './crossLoci.ts';
import { sayFraction } from './fraction.ts';
import { showsInOneDose } from './loci/index.ts';
import { type Block, type Cross, heterogametic, type ParentRole, type SexSystem, type Strands } from './model.ts';
import type { Slot, TraitPiece } from './notation/index.ts';
import { DEFAULT_SECOND_DOSE, parentStates } from './parentStates.ts';
import type { CrossSetting, Parent } from './parents.ts';
import { ABSENT } from './phenotype.ts';

/** A cross ready to be worked out, and in words what was assumed for it: to be shown beside every answer. */
export interface PlannedCross {
  readonly cross: Cross;
  readonly assumed: readonly string[];
}

/**
 * The cross of two animals: loci that neither they nor those `beside` them name are left out, the sex-determining point
 * is always in, so that every egg has a sex. `-` beside a visible allele is another dose of it or wild type, 1/2 each;
 * `[x p:q]` gives two states; `Y?` either way round, 1/2 each. Errors: `pairing-species`, `pairing-sexes`,
 * `pairing-system`, `pairing-figure`, `pairing-copy-unknown`.
 */
export function crossOf(sire: Parent, dam: Parent, setting: CrossSetting): Result<PlannedCross> {
  const { loci } = setting;
  const system = setting.sexSystem ?? loci.sexSystem;
  const refused = parentFault({ sire, dam }, loci) ?? figureFault(setting);
  if (refused !== null) return { ok: false, problem: refused };
  if (system === null) return { ok: false, problem: problem('pairing-system', { species: loci.species }) };
  const carried = carriedAlleles([sire.traits, dam.traits, ...(setting.beside ?? [])], loci);
  const groups = chromosomesOf(
    loci.rows.filter((row) => carried.has(row.locus)),
    loci.rows,
    setting.r ?? new Map(),
  );
  const [sires, dams] = [
    blocksOf(sire, 'sire', groups, system, setting),
    blocksOf(dam, 'dam', groups, system, setting),
  ];
  if (!sires.ok) return sires;
  if (!dams.ok) return dams;
  const inCross = locusMap(groups, carried, system);
  const cross: Cross = {
    system,
    chromosomes: groups.map((group) => group.chromosome),
    loci: inCross,
    sire: sires.value,
    dam: dams.value,
    ...rulesOf(loci, inCross),
  };
  return ok({ cross, assumed: [...groups.flatMap((group) => group.assumed), ...doseWords({ sire, dam }, setting)] });
}

function blocksOf(
  parent: Parent,
  role: ParentRole,
  groups: readonly Group[],
  system: SexSystem,
  setting: CrossSetting,
): Result<readonly Block[]> {
  const blocks: Block[] = [];
  for (const { rows } of groups.filter((group) => group.rows.length > 0)) {
    const mixed = heterogametic(system) === role && rows.some((row) => row.sexLink !== null);
    const pieces = parent.traits.pieces.filter((piece) => rows.some((row) => piece.loci.includes(row.locus)));
    const states = parentStates(pieces, { role, rows, unlike: mixed, secondDose: setting.secondDose ?? new Map() });
    if (!states.ok) return states;
    const onW = (pair: Strands): Strands => (mixed && system === 'ZW' ? [pair[0], ABSENT] : pair);
    blocks.push({
      loci: rows.map((row) => row.locus),
      states: states.value.map(({ p, pairs }) => ({ p, pairs: pairs.map(onW) })),
    });
  }
  return ok(blocks);
}

function doseWords(parents: Readonly<Record<ParentRole, Parent>>, setting: CrossSetting): readonly string[] {
  return (['sire', 'dam'] as const).flatMap((role) =>
    parents[role].traits.pieces.flatMap((piece) => [
      ...piece.loci.flatMap((locus, at) => doseWord(role, locus, [piece.copies[0][at], piece.copies[1][at]], setting)),
      ...sideWord(role, piece, setting),
    ]),
  );
}

function doseWord(
  role: ParentRole,
  locus: string,
  pair: readonly (Slot | undefined)[],
  setting: CrossSetting,
): readonly string[] {
  const sure = pair.find((slot) => slot?.kind === 'allele');
  if (!pair.some((slot) => slot?.kind === 'unknown') || setting.secondDose?.has(locus)) return [];
  if (sure?.kind !== 'allele' || !showsInOneDose(sure.symbol)) return [];
  const chance = sayFraction(DEFAULT_SECOND_DOSE);
  return [
    `The ${role}’s other copy at ${locus} is taken as ${sure.symbol} with chance ${chance}, unless that is lethal.`,
  ];
}

function sideWord(role: ParentRole, piece: TraitPiece, { loci }: CrossSetting): readonly string[] {
  const row = loci.rows.find((one) => one.locus === piece.loci[0]);
  const unmarked = piece.second === 'same' && role === 'sire' && row?.sexLink?.system === 'XY';
  if (piece.second !== 'Y?' && !unmarked) return [];
  return [`Nobody has said which copy of ${piece.loci.join(' and ')} lies on the ${role}’s Y: 1/2 each.`];
}
