import type { Chromosome, Cross } from './model.ts';

/**
 * Chromosomes that must be looked at together. `transmitted` groups share a parent's uncertainty; `judged` groups also
 * share a lethal or a masking rule. Everything between groups is independent, so a cross is never multiplied out.
 */
export interface Groups {
  readonly judged: readonly (readonly (readonly Chromosome[])[])[];
}

/** Splits a cross into independent groups; each judged group lists its transmitted groups. */
export function groupsOf(cross: Cross): Groups {
  const home = new Map<string, Chromosome>();
  for (const chromosome of cross.chromosomes) for (const locus of chromosome.loci) home.set(locus, chromosome);
  const at = (loci: Iterable<string>): Chromosome[] =>
    [...loci].map((locus) => home.get(locus)).filter((one) => one !== undefined);
  const uncertain = [...cross.sire, ...cross.dam].filter((block) => block.states.length > 1);
  const transmitted = united(
    cross.chromosomes.map((one) => [one]),
    uncertain.map((block) => at(block.loci)),
  );
  const rules = [
    ...cross.lethal.map((rule) => at(rule.keys())),
    ...cross.mask.map((rule) => [...at(rule.when.keys()), ...at(rule.hide)]),
  ];
  const judged = united(transmitted, rules);
  return { judged: judged.map((group) => transmitted.filter((part) => part.some((one) => group.includes(one)))) };
}

/** Joins the groups that a tie touches, and keeps the order of the chromosomes. */
function united(
  groups: readonly (readonly Chromosome[])[],
  ties: readonly (readonly Chromosome[])[],
): readonly (readonly Chromosome[])[] {
  let all = [...groups];
  for (const tie of ties) {
    const touched = all.filter((group) => group.some((one) => tie.includes(one)));
    if (touched.length < 2) continue;
    const first = all.findIndex((group) => touched.includes(group));
    const rest = all.filter((group) => !touched.includes(group));
    all = [...rest.slice(0, first), touched.flat(), ...rest.slice(first)];
  }
  return all;
}
