import { describe, expect, it } from 'vitest';
import { offeredBy } from '../../src/app/traits/offered.ts';
import { codeAt, picksOf, textOf, withPick } from '../../src/app/traits/picks.ts';
import { GENETIC_SPECIES, type LocusTable, lociOf, printTraits, readTraits, type Sex } from '../../src/core/index.ts';

function tableOf(species: string): LocusTable {
  const read = lociOf(species);
  if (!read.ok) throw new Error(read.problem.message);
  return read.value;
}

const SEXES = [null, 'M', 'F'] as const;

describe('a pick', () => {
  it.each(GENETIC_SPECIES)('of %s is written as text that reads back as it, and can be taken out again', (species) => {
    const loci = tableOf(species);
    let tried = 0;
    for (const sex of SEXES) {
      for (const row of loci.rows) {
        const { alleles, pairs } = picksOf(row, loci, sex);
        for (const pick of [...alleles.flatMap((one) => one.picks), ...pairs]) {
          const picked = withPick({ species, pieces: [] }, row.locus, pick.copies, loci, sex);
          if (!picked.ok) throw new Error(picked.problem.message);
          const back = readTraits(textOf(picked.value, loci, sex), loci, sex);
          expect(back).toMatchObject({ ok: true, value: { code: printTraits(picked.value) } });
          expect(codeAt(picked.value, row.locus)).toBe(pick.code);
          expect(withPick(picked.value, row.locus, null, loci, sex)).toMatchObject({ value: { pieces: [] } });
          tried++;
        }
      }
    }
    expect(tried).toBeGreaterThan(loci.rows.length * 3);
  });

  it('of a locus on X and Y or on Z fits the sex', () => {
    const python = tableOf('Python regius');
    const words = (sex: Sex | null) =>
      python.rows
        .filter(({ locus }) => locus === 'BAN')
        .flatMap((row) => picksOf(row, python, sex).alleles[0]?.picks.map((one) => one.words) ?? []);
    expect(words('M')).toEqual(['male-maker', 'female-maker', 'X or Y not known', 'super']);
    expect(words('F')).toEqual(['one copy', 'super', 'other copy unknown']);
  });
});

describe('what a refusal holds out', () => {
  const python = tableOf('Python regius');
  const offered = (typed: string, sex: Sex | null = null): readonly string[] => {
    const read = readTraits(typed, python, sex);
    return read.ok ? ['nothing is wrong'] : offeredBy(read.problem, typed, python, sex).map((one) => one.text);
  };
  it.each([
    ['Pastel, het Piebold', null, ['Pastel, het Piebald']],
    ['super Clown', null, ['visual Clown']],
    ['Pas/+; cl/+', null, ['Pas/+; Cal/+', 'Pas/+; cln/+']],
    ['possible het Clown', null, ['66 % possible het Clown', '50 % possible het Clown']],
    ['het Clown Piebald', null, ['het Clown het Piebald', 'het Clown, visual Piebald']],
    ['Pastel, Banana male-maker', 'F', ['Pastel, +/Ban']],
    ['Ban/+; cln/+', 'M', ['+/Y:Ban; cln/+', 'Ban/Y:+; cln/+', 'Ban/Y?+; cln/+']],
    ['het Blue-eyed leucistic, Pastel', null, ['het Lesser, Pastel', 'het Butter, Pastel', 'het Russo, Pastel']],
    // Every way to mend it leads to another refusal.
    ['Lesser, Mojave, Butter', null, []],
  ] as const)('%s (%s)', (typed, sex, texts) => {
    expect(offered(typed, sex)).toEqual(texts);
  });
  it('stands in place of a name however it was typed', () => {
    const [first] = offered('pastel, blue eyed  leucistic, het clown');
    expect(first).toBe('pastel, Blue-eyed leucistic (Lesser/Lesser), het clown');
  });
});
