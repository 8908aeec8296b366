import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type LocusTable,
  lociOf,
  offerCombo,
  parseTraits,
  printTraits,
  readTrade,
  type Sex,
  sayTrade,
} from '../../../src/core/genetics/index.ts';
import { anyTraits, BALL, BOA, CORN, fault, HOGNOSE, INVENTED, siteRow, value } from './given.ts';

const read = (text: string, loci: LocusTable = BALL, sex: Sex | null = null): string =>
  printTraits(value(readTrade(text, loci, sex)).traits);
const say = (code: string, loci: LocusTable = BALL) => sayTrade(value(parseTraits(code, loci)), loci);

// What the trade means by these words: common practice, no source.
describe('trade words', () => {
  it.each<[string, string]>([
    ['normal', 'wt'],
    ['Wild type', 'wt'],
    ['Pastel', 'Pas/+'],
    ['Pastel, het Clown, 66 % possible het Piebald', '[pie 2:3]/+; Pas/+; cln/+'],
    ['66% het clown', '[cln 2:3]/+'],
    ['66.6 % ph Clown', '[cln 2:3]/+'],
    ['50% poss het pied', '[pie 1:2]/+'],
    ['9 in 17 possible het Clown', '[cln 9:17]/+'],
    ['100 % het Clown', 'cln/+'],
    ['proven het Clown', 'cln/+'],
    ['normal het Clown', 'cln/+'],
    ['double het Clown Pied', 'pie/+; cln/+'],
    ['DH Clown, Pied', 'pie/+; cln/+'],
    ['double het for Clown and Piebald', 'pie/+; cln/+'],
    ['66 % double het Clown Pied', '[pie 2:3]/+; [cln 2:3]/+'],
    ['triple het Clown / Ghost / Puzzle', 'gho/+; cln/+; puz/+'],
    ['super Enchi', 'Enc/Enc'],
    ['Ivory', 'Yel/Yel'],
    ['het Ivory', 'Yel/+'],
    ['visual Albino', 'alb/alb'],
    ['Albino', 'alb/alb'],
    ['visual Pastel', 'Pas/+'],
    ['het Pastel', 'Pas/+'],
    ['Candino', 'alb/cdy'],
    ['Albino/Candy', 'alb/cdy'],
    ['het Albino, het Candy', 'alb/cdy'],
    ['Lesser Phantom', 'Les/Pha'],
    ['Blue-eyed leucistic (Lesser/Mojave)', 'Les/Moj'],
    ['Axanthic, second line', 'ax2/ax2'],
    ['het axanthic first line, Pastel', 'Pas/+; ax1/+'],
    ['8 ball', 'Cin/Blp'],
    ['Het Red Axanthic', 'Hra/+'],
    ['Red Axanthic', 'Hra/Hra'],
    ['66 % possible het Red Axanthic', '[Hra 2:3]/+'],
    ['50 % possible Pastel', '[Pas 1:2]/+'],
    ['Pinstripe', 'Pin/-'],
    ['het Pinstripe', 'Pin/+'],
    ['super Pinstripe', 'Pin/Pin'],
    ['Spider', 'Spi/+'],
    ['Bumblebee het Clown', 'Pas/+; Spi/+; cln/+'],
    ['King Spin', 'Les/+; Pin/-; Spi/+'],
    ['BUMBLEBEE', 'Pas/+; Spi/+'],
    ['Pastel het Clown 66 % ph Piebald', '[pie 2:3]/+; Pas/+; cln/+'],
    ['Pas, het cln', 'Pas/+; cln/+'],
    ['Pastel, alb/[cdy 1:2], het Clown', 'alb/[cdy 1:2]; Pas/+; cln/+'],
  ])('“%s” is %s', (text, code) => expect(read(text)).toBe(code));

  it.each<[string, LocusTable, Sex | null, string]>([
    ['Banana', BALL, 'F', 'Ban/+'],
    ['Coral Glow', BALL, 'M', 'Ban/Y?+'],
    ['male-maker Banana', BALL, 'M', '+/Y:Ban'],
    ['Banana (female-maker), Pastel', BALL, null, 'Pas/+; Ban/Y:+'],
    ['super Banana', BALL, 'M', 'Ban/Y:Ban'],
    ['Snow', CORN, null, 'amel/amel; ane/ane'],
    ['het Snow', CORN, null, 'amel/+; ane/+'],
    ['Ultramel', CORN, null, 'amel/ultr'],
    ['Motley het Stripe', CORN, null, 'mot/str'],
    ['Motley', CORN, null, 'mot/mot'],
    ['het Motley', CORN, null, 'mot/+'],
    ['Hypo/Strawberry', CORN, null, 'hyp/stw'],
    ['Palmetto', CORN, null, 'Pal/Pal'],
    ['het Palmetto', CORN, null, 'Pal/+'],
    ['T+ albino Motley', BOA, null, 'tpv/tpv; Mot/+'],
    ['Superconda Arctic', HOGNOSE, null, 'Con/Con; Arc/+'],
    ['Site zre', INVENTED, 'F', 'zre/W'],
    ['Site zre', INVENTED, 'M', 'zre/zre'],
    ['Site Zed', INVENTED, 'F', 'Zed/W'],
  ])('“%s” is read for species and sex', (text, loci, sex, code) => expect(read(text, loci, sex)).toBe(code));

  it('say what was taken for granted', () => {
    const notes = (text: string, sex: Sex | null = null) => value(readTrade(text, BALL, sex)).notes.join(' ');
    expect(notes('Bumblebee')).toBe('Bumblebee was read as Spider, Pastel.');
    expect(notes('Pinstripe')).toMatch(/Pinstripe is there once or twice is left open/);
    expect(notes('het Pastel')).toMatch(/het was read as one copy/);
    expect(notes('Banana', 'M')).toMatch(/X or Y is left open/);
    expect(notes('Banana')).toMatch(/give the animal’s sex/);
    expect(notes('super Spider')).toMatch(/taken as lethal/);
    expect(notes('Pastel, het Clown')).toBe('');
  });
});

describe('trade words that cannot be read', () => {
  const two = value(
    lociOf('Python regius', [
      siteRow('Python regius', 'HY2', 'hy2', { alleles: [{ symbol: 'hy2', names: ['Hypo'] }] }),
    ]),
  );

  it.each<[string, string, LocusTable, string, string | undefined, RegExp]>([
    ['nothing', ' ', BALL, 'trade-incomplete', undefined, /no name/],
    ['a slip of the pen', 'Pastle', BALL, 'trade-unknown', 'char 1', /Take .*Pastel.* or another name/],
    ['a slip in two words', 'het Clown, Oragne Dream', BALL, 'trade-unknown', 'char 12', /Orange Dream/],
    ['a word nobody knows', 'Pastel Xyzzyqux', BALL, 'trade-unknown', 'char 8', /Take another name/],
    [
      'a line of axanthic left out',
      'het Axanthic',
      BALL,
      'trade-ambiguous',
      'char 5',
      /first line \/ Axanthic, second line \/ Axanthic, third/,
    ],
    ['a line of albino left out', 'Albino', BOA, 'trade-ambiguous', 'char 1', /first line \/ Albino, second line/],
    ['a name at two loci', 'het Hypo', two, 'trade-ambiguous', 'char 5', /Hypo \(Ghost, MLPH\) \/ Hypo \(Hypo, HY2\)/],
    [
      'a name of several pairs',
      'Blue-eyed leucistic',
      BALL,
      'trade-ambiguous',
      'char 1',
      /Lesser\/Lesser.*Lesser\/Mojave/,
    ],
    [
      'a recessive right behind a het',
      'het Clown Pied',
      BALL,
      'trade-ambiguous',
      'char 11',
      /het Piebald \/ a comma before/,
    ],
    ['ph without a chance', 'ph Clown', BALL, 'trade-chance', 'char 1', /66 % \(child of het × het\)/],
    ['het alone', 'Pastel, het', BALL, 'trade-incomplete', 'char 9', /name must follow/],
    ['double het with one name', 'double het Clown', BALL, 'trade-incomplete', 'char 12', /name must follow/],
    ['a chance of nothing', '66 % Clown', BALL, 'trade-incomplete', 'char 1', /possible or het/],
    ['double without het', 'double Clown', BALL, 'trade-incomplete', 'char 1', /go with het/],
    ['super of a recessive', 'super Clown', BALL, 'trade-unfit', 'char 7', /visual Clown/],
    ['het of a compound', 'het Candino', BALL, 'trade-unfit', 'char 5', /het Albino or het Candy/],
    ['het of a combo that shows', 'het Bumblebee', BALL, 'trade-unfit', 'char 5', /genes that show/],
    ['a slash between loci', 'Pastel/Enchi', BALL, 'trade-unfit', 'char 1', /one locus.*Pastel, Enchi/],
    ['a chance of a visual', '66 % possible visual Clown', BALL, 'trade-unfit', 'char 22', /one copy/],
    ['a maker without a sex-linked name', 'male-maker Pastel', BALL, 'trade-unfit', undefined, /none of the names/],
    ['words in brackets nobody knows', 'Pastel (nice)', BALL, 'trade-unfit', 'char 1', /brackets/],
    ['a series that is full', 'Candino, het Toffee', BALL, 'traits-full', 'char 14', /alb, cdy, tof/],
    ['the same twice', 'Pastel, Bumblebee', BALL, 'traits-twice', 'char 9', /PAS/],
    ['a wrong piece of code', 'Pastel, alb/[cdy 1:0]', BALL, 'traits-chance', 'char 18', /1:0/],
    ['an impossible percentage', '120 % possible het Clown', BALL, 'traits-chance', 'char 20', /between 0 and 1/],
    ['a het on one Z', 'het Site zre', INVENTED, 'traits-sex', 'char 5', /one Z/],
  ])('with %s are answered with a question or a reason', (_, text, loci, code, path, words) => {
    const found = fault(readTrade(text, loci, loci === INVENTED ? 'F' : null));
    expect([found.code, found.path]).toEqual([code, path]);
    expect(found.words).toMatch(words);
  });

  it('never throw, whatever is typed', () => {
    const word = fc.constantFrom(
      'het',
      'Clown',
      'double',
      '66 %',
      'ph',
      'super',
      'Pastel',
      'Banana',
      'visual',
      ',',
      '/',
      '(',
      ')',
      'male-maker',
      '[',
      'alb',
      'possible',
      'Axanthic',
      '-',
      '8',
      'wt',
      '\u{1d11e}',
      '\ud800',
      '\u0000',
    );
    const text = fc.oneof(
      fc.string(),
      fc.string({ unit: 'binary-ascii' }),
      fc.array(word, { maxLength: 10 }).map((all) => all.join(' ')),
    );
    fc.assert(
      fc.property(text, (any) => {
        const found = readTrade(any, BALL);
        expect(found.ok ? found.value.traits.species : found.problem.remedy).toBeTruthy();
      }),
      { numRuns: 600 },
    );
  });
});

describe('traits in trade words', () => {
  it.each<[string, LocusTable, string, string, string]>([
    ['wt', BALL, 'normal', 'normal', 'normal'],
    [
      '[pie 2:3]/+; Pas/+; cln/+',
      BALL,
      'Pastel, het Clown, 66 % possible het Piebald',
      'Pastel het Clown 66 % ph Piebald',
      'Pas het cln 66 % ph pie',
    ],
    ['pie/+; cln/+', BALL, 'double het Piebald and Clown', 'het Piebald het Clown', 'het pie het cln'],
    ['alb/cdy', BALL, 'Candino', 'Candino', 'Candino'],
    ['Enc/Enc', BALL, 'Super Enchi', 'Super Enchi', 'Enc/Enc'],
    ['Les/Moj', BALL, 'Blue-eyed leucistic (Lesser/Mojave)', 'Blue-eyed leucistic', 'Les/Moj'],
    ['Pin/-', BALL, 'Pinstripe', 'Pinstripe', 'Pin/-'],
    ['Pin/+', BALL, 'Pinstripe (one copy)', 'Pinstripe (one copy)', 'Pin/+'],
    ['alb/-', BALL, 'Albino (other copy unknown)', 'Albino (other copy unknown)', 'alb/-'],
    ['+/Y:Ban', BALL, 'Banana (male-maker)', 'Banana (male-maker)', '+/Y:Ban'],
    ['Ban/Y?+', BALL, 'Banana (X or Y not known)', 'Banana (X or Y not known)', 'Ban/Y?+'],
    ['[cln 9:17]/+', BALL, '9 in 17 possible het Clown', '9 in 17 ph Clown', '9 in 17 ph cln'],
    ['[cln 33:50]/+', BALL, '33 in 50 possible het Clown', '33 in 50 ph Clown', '33 in 50 ph cln'],
    ['alb/[cdy 1:2]', BALL, 'alb/[cdy 1:2]', 'alb/[cdy 1:2]', 'alb/[cdy 1:2]'],
    ['amel/ultr; mot/str', CORN, 'Ultramel, Motley het Stripe', 'Ultramel Motley het Stripe', 'Ultramel mot/str'],
  ])('%s', (code, loci, long, medium, short) => expect(say(code, loci)).toEqual({ long, medium, short }));

  it.each([
    ['ball python', BALL],
    ['corn snake', CORN],
    ['boa', BOA],
    ['hognose', HOGNOSE],
  ])('of any %s can be read back', (_, loci) => {
    fc.assert(
      fc.property(anyTraits(loci), ({ traits, sex }) => {
        const { long } = sayTrade(traits, loci);
        expect(printTraits(value(readTrade(long, loci, sex)).traits), long).toBe(printTraits(traits));
      }),
      { numRuns: 300 },
    );
  });

  it('get shorter from form to form', () => {
    fc.assert(
      fc.property(anyTraits(BALL), ({ traits }) => {
        const { long, medium, short } = sayTrade(traits, BALL);
        expect(medium.length).toBeLessThanOrEqual(long.length);
        expect(short.length).toBeLessThanOrEqual(medium.length);
      }),
    );
  });
});

describe('combo names', () => {
  const offers = (code: string, loci: LocusTable = BALL) =>
    offerCombo(value(parseTraits(code, loci)), loci).map((one) => one.words.long);

  it('are offered with the rest of the words, those of most genes first', () => {
    expect(offers('Spi/+; Pin/-; Les/+; cln/+')).toEqual([
      'King Spin, het Clown',
      'Spinner, Lesser, het Clown',
      'Kingpin, Spider, het Clown',
    ]);
    expect(offers('amel/amel; ane/ane; mot/+', CORN)).toEqual(['Snow, het Motley']);
  });

  it('are not offered for other doses or for what is only possible', () => {
    expect(offers('Spi/+; Pas/Pas')).toEqual([]);
    expect(offers('Spi/+; [Pas 1:2]/+')).toEqual([]);
    expect(offers('amel/amel; ane/+', CORN)).toEqual([]);
  });
});
