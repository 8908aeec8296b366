import * as fc from 'fast-check';

/** Words of every kind: accents whole and in parts, right to left, pictures with joiners, codes, one word without a break. */
const word = fc.oneof(
  { weight: 8, arbitrary: fc.stringMatching(/^[A-Za-z0-9'’/+·-]{1,12}$/) },
  {
    weight: 2,
    arbitrary: fc.constantFrom('Ångström', 'Żubrówka', 'A\u030angstro\u0308m', 'x\u030c', 'q\u0323', 'ﬁn', 'İ'),
  },
  { weight: 1, arbitrary: fc.constantFrom('🐍', '👩‍🔬', '🇦🇹', '❤️', '\u200fab\u200e', 'a\u200bb', '\u0007') },
  { weight: 1, arbitrary: fc.constantFrom('שלום', 'ثعبان', '日本', 'ニシキヘビのたまごは') },
  { weight: 1, arbitrary: fc.constantFrom('W'.repeat(70), 'Pst/pst.Cln/cln.Pd/pd.Ax/ax.Yb/yb.Mj/mj.Sp') },
);
/** So many of them as one text. */
export const words = (most: number) => fc.array(word, { minLength: 1, maxLength: most }).map((all) => all.join(' '));
