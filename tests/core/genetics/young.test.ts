import { describe, expect, it } from 'vitest';
import {
  crossOf,
  type LocusTable,
  lociOf,
  outcomesOf,
  parseTraits,
  printTraits,
  type Sex,
  sayFraction,
  traitsOfYoung,
  youngLooks,
} from '../../../src/core/genetics/index.ts';
import { BALL, CORN, fault, INVENTED, siteRow, value } from './given.ts';

const young = (sire: string, dam: string, loci: LocusTable = BALL, limit = 50) => {
  const parent = (code: string, sex: Sex) => ({ traits: value(parseTraits(code, loci, sex)), sex });
  return youngLooks(outcomesOf(value(crossOf(parent(sire, 'M'), parent(dam, 'F'), { loci })).cross), loci, limit);
};
/** Each look: its words, its chance, what it carries. */
const lines = (...args: Parameters<typeof young>) =>
  young(...args).looks.map((one) => [one.shows, sayFraction(one.p), one.carries.map(({ words }) => words).join('; ')]);
const lookNamed = (shows: string, ...args: Parameters<typeof young>) => {
  const found = young(...args).looks.find((one) => one.shows === shows);
  if (found === undefined) throw new RangeError(`no young looks ${shows}`);
  return found;
};
/** The code of a young of that look, and the loci that it cannot write. */
const code = (shows: string, sex: Sex | null, ...args: Parameters<typeof young>) => {
  const { traits, unsaid } = value(traitsOfYoung(lookNamed(shows, ...args), args[2] ?? BALL, sex));
  return [printTraits(traits), ...unsaid];
};

describe('the looks of young', () => {
  it('have one line for both sexes, with the exact chance of each', () => {
    const { looks, shown, count } = young('cln/+', 'cln/+');
    expect(looks.map((one) => [one.shows, sayFraction(one.males), sayFraction(one.females)])).toEqual([
      ['normal', '3/8', '3/8'],
      ['Clown', '1/8', '1/8'],
    ]);
    expect([sayFraction(shown), count]).toEqual(['1', 2n]);
  });

  it('of both sexes may be of unlike chances: banana male-maker, r = 1/20 (from memory)', () => {
    const banana = lookNamed('Banana', '+/Y:Ban', 'wt');
    expect([banana.p, banana.males, banana.females].map(sayFraction)).toEqual(['1/2', '19/40', '1/40']);
    expect([...(banana.within.get('BAN')?.keys() ?? [])].sort()).toEqual(['+|Ban', 'Ban/+']);
  });

  it('of one sex alone have 0 for the other', () => {
    const found = lookNamed('Site zre', 'zre/+', 'wt', INVENTED);
    expect([found.p, found.males, found.females].map(sayFraction)).toEqual(['1/4', '0', '1/4']);
  });

  it('are cut at the limit, and say how much that leaves out', () => {
    const { looks, shown, count } = young('cln/+; pie/+; Pas/+', 'cln/+; pie/+; Pas/+', BALL, 2);
    expect([looks.length, sayFraction(shown), count]).toEqual([2, '27/64', 12n]);
  });

  it('are none where every egg dies', () => {
    const row = siteRow('Python regius', 'DED', 'Ded', {
      lethal: [{ carrying: ['Ded'], says: 'all die', basis: 'the site' }],
    });
    const { looks, shown, count } = young('Ded/Ded', 'wt', value(lociOf('Python regius', [row])));
    expect([looks, sayFraction(shown), count]).toEqual([[], '0', 0n]);
  });

  it('are said in the order of the table, and pairs without a name as pairs', () => {
    expect(lines('Pas/+; cln/cln', 'cln/cln; Pas/+').map(([shows]) => shows)).toContain('Super Pastel, Clown');
    expect(lines('Les/Les', 'Pha/Pha')).toEqual([['Lesser/Phantom', '1', '']]);
  });
});

describe('what young carry', () => {
  // Mendel 1866: of those that show the dominant form, two thirds are hybrids and one third breeds true.
  it('behind a normal look and behind a dominant: two thirds and one third', () => {
    expect(lines('cln/+', 'cln/+')[0]).toEqual(['normal', '3/4', '66 % possible het Clown']);
    expect(lines('Pin/+', 'Pin/+')[0]).toEqual(['Pinstripe', '3/4', '1 in 3 possible two copies of Pinstripe']);
  });

  it.each<[string, string, string, LocusTable, string[][]]>([
    ['a sure het', 'cln/cln', 'wt', BALL, [['normal', '1', 'het Clown']]],
    ['a half', 'cln/+', 'wt', BALL, [['normal', '1', '50 % possible het Clown']]],
    ['sure two copies', 'Pin/Pin', 'Pin/Pin', BALL, [['Pinstripe', '1', 'two copies of Pinstripe']]],
    ['a series', 'alb/cdy', 'wt', BALL, [['normal', '1', '50 % possible het Albino; 50 % possible het Candy']]],
    ['a visual', 'cln/cln', 'cln/cln', BALL, [['Clown', '1', '']]],
    ['a compound with a look of its own', 'cln/cln', 'Cry/Cry', BALL, [['Crypton', '1', '']]],
    [
      'pairs of one look',
      'Les/Les',
      'Les/Moj',
      BALL,
      [['Blue-eyed leucistic', '1', '1 in 2 possible Lesser/Lesser; 1 in 2 possible Lesser/Mojave']],
    ],
    // The list of corn breeders has Motley het Stripe looking Motley.
    [
      'a compound that looks like one of the two',
      'mot/mot',
      'mot/str',
      CORN,
      [['Motley', '1', '50 % possible het Stripe']],
    ],
  ])('%s', (_, sire, dam, loci, wanted) => expect(lines(sire, dam, loci)).toEqual(wanted));

  it('says of which sex where the sexes differ', () => {
    expect(lines('+/Y:Ban', 'wt')).toContainEqual(['Banana', '1/2', 'Banana male-maker, if male']);
    expect(lines('zre/+', 'wt', INVENTED)[0]).toEqual(['normal', '3/4', '50 % possible het Site zre, if male']);
  });

  it('is sure or has to be proven', () => {
    expect(lookNamed('normal', 'cln/cln', 'wt')).toMatchObject({ needsProving: false, carries: [{ sure: true }] });
    expect(lookNamed('normal', 'cln/+', 'wt')).toMatchObject({ needsProving: true, carries: [{ sure: false }] });
  });

  it('with odds too long to read is said roundly, and the exact chance stands beside', () => {
    const [carried] = lookNamed('normal', '[cln 1:999]/+', 'wt').carries;
    expect([carried?.words, carried && sayFraction(carried.chance)]).toEqual([
      'under 0.1 % possible het Clown',
      '1/1998',
    ]);
  });

  it('where another trait hides it is told as hidden, and as possible', () => {
    const row = siteRow('Python regius', 'MSK', 'Msk', {
      masks: [{ carrying: ['Msk'], hides: ['PAS', 'CLN'], basis: 'the site' }],
    });
    const loci = value(lociOf('Python regius', [row]));
    const found = lookNamed('Site Msk', 'Msk/Msk', 'Pas/+; cln/+', loci);
    expect(found.hidden).toEqual(['Site Msk hides whether it is Pastel']);
    expect(found.carries.map(({ words }) => words)).toEqual(['1 in 2 possible Pastel', '50 % possible het Clown']);
    expect(lookNamed('Site Msk', 'Msk/Msk', 'Pas/Pas', loci).hidden).toEqual(['Site Msk hides Pastel']);
  });
});

describe('the code of a young', () => {
  it.each<[string, [string, string], string, Sex | null, string[]]>([
    ['nothing', ['wt', 'wt'], 'normal', 'M', ['wt']],
    ['a sure het', ['cln/cln', 'wt'], 'normal', 'F', ['cln/+']],
    ['a possible het', ['cln/+', 'cln/+'], 'normal', null, ['[cln 2:3]/+']],
    ['odd chances', ['[cln 1:3]/+', '[cln 1:7]/+'], 'normal', null, ['[cln 18:83]/+']],
    ['one copy or two', ['Pin/+', 'Pin/+'], 'Pinstripe', null, ['Pin/-']],
    ['both copies', ['cln/cln', 'Cry/Cry'], 'Crypton', null, ['cln/Cry']],
    ['several loci', ['cln/+; Pas/+', 'cln/cln'], 'Pastel', 'M', ['Pas/+; cln/+']],
    ['a daughter of a male-maker', ['+/Y:Ban', 'wt'], 'Banana', 'F', ['Ban/+']],
    ['a son of a male-maker', ['+/Y:Ban', 'wt'], 'Banana', 'M', ['+/Y:Ban']],
    ['a son of either side', ['Ban/Y?+', 'Ban/+'], 'Banana', 'M', ['Ban/Y?+']],
    ['an unsexed banana', ['+/Y:Ban', 'wt'], 'Banana', null, ['Ban/+']],
    ['two hets that exclude each other', ['alb/cdy', 'wt'], 'normal', null, ['wt', 'TYR']],
    ['a copy that is one of two', ['Les/Les', 'Les/Moj'], 'Blue-eyed leucistic', null, ['Les/-', 'BEL']],
  ])('%s', (_, [sire, dam], shows, sex, wanted) => expect(code(shows, sex, sire, dam)).toEqual(wanted));

  it.each<[string, [string, string], string, Sex | null, string[]]>([
    ['a son het on Z', ['zre/+', 'wt'], 'normal', 'M', ['[zre 1:2]/+']],
    ['a daughter', ['zre/+', 'wt'], 'normal', 'F', ['wt']],
    ['a look of daughters alone, unsexed', ['zre/+', 'wt'], 'Site zre', null, ['zre/W']],
    ['unsexed, while the sexes differ', ['zre/+', 'wt'], 'normal', null, ['wt', 'ZRE']],
    ['linked loci, of which no phase is claimed', ['aa Bb/+ +', 'wt'], 'Site Bb', null, ['[aa 9:10]/+; Bb/+']],
  ])('of the invented: %s', (_, [sire, dam], shows, sex, wanted) =>
    expect(code(shows, sex, sire, dam, INVENTED)).toEqual(wanted),
  );

  it('does not write a side with its chance: that is told in words', () => {
    const row = { ...siteRow('Python regius', 'XYD', 'Xyd'), inheritance: 'dominant' as const };
    const loci = value(lociOf('Python regius', [{ ...row, sexLink: { system: 'XY', kind: 'partial', r: '1/10' } }]));
    const one = lookNamed('Site Xyd', 'Xyd/Y?+', 'Xyd/+', loci);
    const { traits, unsaid } = value(traitsOfYoung(one, loci, 'M'));
    expect([printTraits(traits), unsaid]).toEqual(['Xyd/Y?-', ['XYD']]);
  });

  it('leaves out chances of more digits than it has', () =>
    expect(code('normal', null, '[cln 999998:999999]/+', '[cln 1:999997]/+')).toEqual(['wt', 'CLN']));

  it('is refused for a sex that never looks so', () => {
    const found = fault(traitsOfYoung(lookNamed('Site zre', 'zre/+', 'wt', INVENTED), INVENTED, 'M'));
    expect([found.code, found.words]).toEqual(['young-sex', expect.stringMatching(/No male.*ZRE/)]);
  });
});
