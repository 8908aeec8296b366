import * as z from 'zod/mini';
import { evidenceOf, locusOrder, type Observed, ok, type StateChance, sayFraction } from '../../../core/index.ts';
import { type Kind, readCase, wrongCase } from '../kind.ts';
import { crossCase, readCross } from './cross.ts';
import { named } from './fractions.ts';

const HELP = `evidence: what hatchlings say of both parents
  a cross case + {"observed": [[sex|null, [phenotype per locus], count], …]}
    -> {"evidence","joint": [[i, j, p]]|null,"sire": [[p, {locus: strands}]],"dam"}`;

const evidenceCase = z.extend(crossCase, {
  observed: z.array(
    z.tuple(
      [z.nullable(z.enum(['M', 'F'])), z.array(named), z.int().check(z.gte(0), z.lte(10_000))],
      '[sex|null, [phenotypes], count] is wanted',
    ),
  ),
});

/** More pairs of states than this are a mistake of the case. */
const MOST_PAIRS = 1_000_000;

/** What hatchlings say of both parents. */
export const evidenceKind: Kind = {
  name: 'evidence',
  help: HELP,
  answer(given) {
    const asked = readCase(evidenceCase, given);
    if (!asked.ok) return asked;
    const cross = readCross(asked.value);
    if (!cross.ok) return cross;
    const loci = locusOrder(cross.value);
    const wrong = asked.value.observed.findIndex(([, labels]) => labels.length !== loci.length);
    if (wrong >= 0) return wrongCase(`one phenotype is wanted for each of ${loci.join(', ')}`, `observed.${wrong}.1`);
    const pairs = [...cross.value.sire, ...cross.value.dam].reduce(
      (product, block) => product * block.states.length,
      1,
    );
    if (pairs > MOST_PAIRS) return wrongCase(`${pairs} pairs of states are too many`, 'sire.blocks');
    const observed = asked.value.observed.map(([sex, labels, count]): Observed => ({ sex, labels, count }));
    const { evidence, joint, sire, dam } = evidenceOf(cross.value, observed);
    return ok({
      evidence: sayFraction(evidence),
      joint: joint?.map((one) => [one.sire, one.dam, sayFraction(one.p)]) ?? null,
      sire: sire.map(sayState),
      dam: dam.map(sayState),
    });
  },
};

function sayState({ p, strands }: StateChance): unknown {
  return [sayFraction(p), Object.fromEntries(strands)];
}
