import * as z from 'zod/mini';

const short = z.string().check(z.minLength(1), z.maxLength(80));
const words = z.string().check(z.minLength(1), z.maxLength(400));
const symbol = z.string().check(z.minLength(1), z.maxLength(10));
const carrying = z.array(symbol).check(z.minLength(1), z.maxLength(8));
const fractionText = z.string().check(z.regex(/^\d+(\/\d+|\.\d+)?$/, 'a fraction as 1/20 is wanted'), z.maxLength(40));
const maybe = z.optional;

/**
 * A locus as a site writes it: the form of a row of the tables, without what is empty. Only its form is judged here; that
 * the rows of a species hold together is the business of genetics, since other rows may come from elsewhere later.
 */
export const locusSchema = z.object({
  species: short,
  locus: short,
  gene: maybe(short),
  inheritance: z.enum(['recessive', 'incomplete-dominant', 'dominant', 'mixed']),
  alleles: z.array(z.object({ symbol, names: z.array(short).check(z.minLength(1), z.maxLength(12)) })),
  named: maybe(
    z.array(
      z.object({
        pair: z.tuple([symbol, symbol]),
        name: short,
        also: maybe(z.array(short)),
        looks: maybe(short),
        note: maybe(words),
      }),
    ),
  ),
  sexLink: maybe(z.object({ system: z.enum(['XY', 'ZW']), kind: z.enum(['partial', 'full']), r: maybe(fractionText) })),
  linkage: maybe(z.object({ group: short, r: maybe(fractionText) })),
  lethal: maybe(z.array(z.object({ carrying, says: words, basis: words }))),
  masks: maybe(z.array(z.object({ carrying, hides: z.array(short), basis: words }))),
  welfare: maybe(
    z.array(
      z.object({
        anyOf: z.array(carrying).check(z.minLength(1)),
        sex: maybe(z.enum(['M', 'F'])),
        says: words,
        source: words,
      }),
    ),
  ),
  sources: z.array(words).check(z.minLength(1)),
  confidence: z.enum(['published', 'common practice', 'memory']),
  note: maybe(words),
});
