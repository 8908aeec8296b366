import { ok, type Result } from '../problems.ts';
import { sayNumber } from '../units.ts';
import { DamLooks } from './damLooks.ts';
import { fatherlessSex } from './doubled.ts';
import { evidenceOf, type Observed } from './evidence.ts';
import { type Fraction, isZero, ZERO } from './fraction.ts';
import { hatchlingsFault } from './hatchlings.ts';
import type { Confidence } from './loci/index.ts';
import type { Cross, Sex } from './model.ts';

/** So many live young at most are taken as few: common practice, no source. */
export const FEW_LIVE = 6;

/** Why a clutch may have no father. It is never more than a question. */
export interface ParthenogenesisFlag {
  readonly live: number;
  readonly sex: Sex;
  /** How well it is known that such young have this sex. */
  readonly confidence: Confidence;
  /** Loci at which a young of the sire as entered could have looked otherwise. */
  readonly telling: readonly string[];
  /**
   * The chance that as many young of the sire as entered would all look as young of the dam alone can; 0 also where he
   * cannot have given those that were seen.
   */
  readonly bySire: Fraction;
  readonly reasons: readonly string[];
  readonly odds: string;
  /** To be shown with it, always. */
  readonly says: string;
}

/**
 * Whether a clutch may have come from the dam alone: few live young, all of the sex that such young have, and each with
 * looks that one gamete of hers, doubled, can give; null if not. Crossing over can leave a locus with two alleles (memory),
 * so that no flag proves nothing either. Errors: `hatchlings-malformed`, `parents-too-open`.
 */
export function parthenogenesisFlag(
  cross: Cross,
  observed: readonly Observed[],
  mostLive = FEW_LIVE,
): Result<ParthenogenesisFlag | null> {
  const refused = hatchlingsFault([cross], observed);
  if (refused !== null) return { ok: false, problem: refused };
  const rows = observed.filter((row) => row.count > 0);
  const live = rows.reduce((sum, row) => sum + row.count, 0);
  const sex = fatherlessSex(cross);
  if (live === 0 || live > mostLive || rows.some((row) => row.sex !== sex)) return ok(null);
  const looks = new DamLooks(cross);
  if (!looks.fit(rows)) return ok(null);
  const bySire = isZero(evidenceOf(cross, rows).evidence) ? ZERO : looks.chanceBySire(live);
  const telling = looks.telling();
  return ok({
    live,
    sex,
    confidence: cross.system === 'XY' ? 'common practice' : 'memory',
    telling,
    bySire,
    reasons: [fewWords(live, mostLive), SEX_WORDS[cross.system], ...tellingWords(telling, looks)],
    odds: oddsWords(bySire),
    says: 'A flag, not a finding: only a laboratory can tell.',
  });
}

const SEX_WORDS = {
  XY: 'All are females, the sex of young without a father where sex goes by X and Y (common practice, no source).',
  ZW: 'All are males, the sex of young without a father in colubrids, whose sex goes by Z and W (from memory).',
} as const;

function fewWords(live: number, mostLive: number): string {
  return `${live} live young: at most ${mostLive} are taken as few (common practice, no source).`;
}

function tellingWords(telling: readonly string[], looks: DamLooks): readonly string[] {
  if (telling.length === 0) return ['No locus of this pairing tells: only number and sex speak.'];
  const mixed = telling.filter((locus) => looks.mayBeMixed(locus)).join(', ');
  const plain = telling.filter((locus) => !looks.mayBeMixed(locus)).join(', ');
  return [
    ...(mixed === ''
      ? []
      : [`At ${mixed}, where the dam has or may have two kinds of copy, each looks like one kind twice.`]),
    ...(plain === '' ? [] : [`At ${plain} none shows what only the sire can have given.`]),
  ];
}

const RARE = 1_000_000n;

function oddsWords({ top, bottom }: Fraction): string {
  if (top === 0n) return 'The sire as entered can have given no such clutch.';
  const times = (2n * bottom + top) / (2n * top);
  const rate =
    times > RARE
      ? `less than 1 in ${sayNumber(Number(RARE))}`
      : `${bottom % top === 0n ? '' : 'about '}1 in ${sayNumber(Number(times))}`;
  return `Of clutches of this size by the sire as entered, ${rate} would look so by chance.`;
}
