import type { PlannedPair, SeasonPlan } from '../facility/index.ts';

/** A double is never exact; so many digits of it are said. */
const DIGITS = 3;

/** `≈ 2.03 eggs`, `1 egg`. */
export function sayEggs(eggs: number): string {
  const figure = sayFigure(eggs);
  return `${figure} ${figure === '1' || figure === '≈ 1' ? 'egg' : 'eggs'}`;
}

/** `≈ 2.03`, `1.5`: at most three digits. */
export function sayFigure(figure: number): string {
  const rounded = Number(figure.toPrecision(DIGITS));
  return `${rounded === figure ? '' : '≈ '}${rounded}`;
}

/** `kinship ≈ 6.25 %`, `no kinship known`. */
export function sayKinship(kinship: number): string {
  return kinship === 0 ? 'no kinship known' : `kinship ≈ ${Number((100 * kinship).toPrecision(DIGITS))} %`;
}

/** What a planned pair is expected to give towards the goals: `Clown: ≈ 3.13 eggs expected, 50 % of the eggs`. */
export function sayPlanned({ expected }: PlannedPair, { goals, eggs }: SeasonPlan): readonly string[] {
  return goals.flatMap(({ words }, at) => {
    const some = expected[at] ?? 0;
    if (some === 0) return [];
    return [`${words}: ${sayEggs(some)} expected, ${sayShare((100 * some) / eggs)} of the eggs`];
  });
}

/** Figures of a plan are kept to six digits: what differs less than that is the same. */
function sayShare(percent: number): string {
  const rounded = Number(percent.toPrecision(DIGITS));
  return `${Math.abs(percent - rounded) < 1e-3 ? '' : '≈ '}${rounded} %`;
}
