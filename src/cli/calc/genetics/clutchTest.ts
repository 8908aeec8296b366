import * as z from 'zod/mini';
import { clutchTest, ok, sayFraction, toNumber } from '../../../core/index.ts';
import { type Kind, readCase } from '../kind.ts';
import { attempt, fractionAt, take, written } from './fractions.ts';

const HELP = `clutch-test: how a clutch fits what its parents should give, exact
  {"p": [chance of each class], "n": [count of each class]}
    -> {"prob_observed","p_value","p_value_float","outcomes","chi2","df"}`;

const clutchCase = z.object({
  p: z.array(written),
  n: z.array(z.int('a whole number is wanted').check(z.gte(0, 'a number from 0 is wanted'), z.lte(100_000))),
});

/** The exact multinomial test. */
export const clutchTestKind: Kind = {
  name: 'clutch-test',
  help: HELP,
  answer(given) {
    const asked = readCase(clutchCase, given);
    if (!asked.ok) return asked;
    const { p, n } = asked.value;
    return attempt(() => {
      const test = take(
        clutchTest(
          p.map((one, at) => fractionAt(one, `p.${at}`)),
          n,
        ),
      );
      return take(
        ok({
          prob_observed: sayFraction(test.probability),
          p_value: sayFraction(test.pValue),
          p_value_float: toNumber(test.pValue),
          outcomes: test.outcomes,
          chi2: test.chi2 === null ? null : sayFraction(test.chi2),
          df: test.df,
        }),
      );
    });
  },
};
