import { describe, expect, it } from 'vitest';
import {
  type Fraction,
  type LocusTable,
  lociOf,
  ONE,
  type Proof,
  parseTraits,
  provingOf,
  type Sex,
  sayFraction,
} from '../../../src/core/genetics/index.ts';
import { BALL, INVENTED, siteRow, value } from './given.ts';

const proofs = (code: string, sex: Sex | null = null, loci: LocusTable = BALL) =>
  provingOf(value(parseTraits(code, loci, sex)), loci, sex);
const only = (...args: Parameters<typeof proofs>): Proof => {
  const [one, ...more] = proofs(...args);
  if (one === undefined || more.length > 0) throw new RangeError(`${more.length + 1} proofs`);
  return one;
};
const said = (all: readonly Fraction[], count: number) => all.slice(0, count).map(sayFraction);
const signs = (one: Proof) => one.ways.map((way) => [way.mateCode, way.sign]);

// Own computation, as in the outside tests of the evidence: odds p : q - p, times 1/2 or 3/4 for each normal young.
describe('a possible het', () => {
  it('of 66 % with a visual: 1/2, 1/3, 1/5, 1/9, 1/17, 1/33', () => {
    const { what, prior, ways } = only('[cln 2:3]/+');
    expect([what, sayFraction(prior)]).toEqual(['het Clown', '2/3']);
    expect(ways[0]).toMatchObject({
      mate: 'shows',
      mateWords: 'Clown',
      mateCode: 'cln/cln',
      sign: 'a young that shows Clown',
    });
    expect(said(ways[0]?.after ?? [], 6)).toEqual(['1/2', '1/3', '1/5', '1/9', '1/17', '1/33']);
    expect(sayFraction(ways[0]?.perYoung ?? ONE)).toBe('1/2');
  });

  it('of 66 % with a het: 3/5, 9/17, 27/59, 81/209, 243/755', () => {
    const way = only('[cln 2:3]/+').ways[1];
    expect([way?.mateCode, way?.mateWords]).toEqual(['cln/+', 'het Clown']);
    expect(said(way?.after ?? [], 5)).toEqual(['3/5', '9/17', '27/59', '81/209', '243/755']);
    expect(sayFraction(way?.perYoung ?? ONE)).toBe('1/4');
  });

  it('of 50 % with a visual: 1/(1 + 2^k), twelve of them', () => {
    const { after } = only('[cln 1:2]/+').ways[0] ?? { after: [] };
    expect(after.map(sayFraction)).toEqual(Array.from({ length: 12 }, (_, at) => `1/${1 + 2 ** (at + 1)}`));
  });

  // 1 in 20: 1/33 is the first below it (1/17 is not); 1 in 100: 1/129. With a het: 2(3/4)^k below 1/19 and below 1/99.
  it('needs six young of a visual for 1 in 20 and eight for 1 in 100, and of a het 13 and 19', () =>
    expect(only('[cln 2:3]/+').ways.map((way) => way.youngFor)).toEqual([
      { in20: 6, in100: 8 },
      { in20: 13, in100: 19 },
    ]));

  it('has a normal mate tell only what shows in one dose', () => {
    expect(signs(only('[cln 2:3]/+')).map(([mate]) => mate)).toEqual(['cln/cln', 'cln/+']);
    expect(signs(only('[Pas 1:2]/+'))).toEqual([['wt', 'a young that shows Pastel']]);
  });

  it('beside an allele that is known, or twice', () => {
    expect(signs(only('Cry/[cln 1:2]'))[0]).toEqual(['cln/cln', 'a young that shows Clown']);
    expect(only('[cln 1:2]/[cln 1:2]')).toMatchObject({
      what: 'Clown, one copy or two',
      prior: { top: 3n, bottom: 4n },
    });
  });

  it('is no different in a dam', () => expect(proofs('[cln 2:3]/+', 'F')).toEqual(proofs('[cln 2:3]/+', 'M')));

  it('in phase with others is told locus by locus', () =>
    expect(proofs('aa [cc 1:2]/[aa 1:3] +', null, INVENTED).map((one) => one.what)).toEqual([
      'two copies of Site aa',
      'het Site cc',
    ]));
});

describe('two copies', () => {
  // Own computation: one copy passes with 1/2, so k young that all show it leave 2^k : 1.
  it('are never proven, and grow likelier: 2/3, 4/5, 8/9', () => {
    const { what, prior, ways } = only('Pin/-');
    expect([what, sayFraction(prior)]).toEqual(['two copies of Pinstripe', '1/2']);
    expect(ways).toHaveLength(1);
    expect([ways[0]?.mateCode, ways[0]?.sign]).toEqual([
      'wt',
      'a young without Pinstripe (then there is one copy only)',
    ]);
    expect(said(ways[0]?.after ?? [], 3)).toEqual(['2/3', '4/5', '8/9']);
    expect(ways[0]?.youngFor).toEqual({ in20: 5, in100: 7 });
  });

  it('that are lethal are no question', () => expect(proofs('Spi/-')).toEqual([]));
  it('of a recessive have no prior, and no claim is made', () => expect(proofs('cln/-')).toEqual([]));
  it('of a recessive with a chance are told by a young without it', () =>
    expect(signs(only('cln/[cln 1:3]'))).toEqual([['cln/cln', 'a young without Clown (then there is one copy only)']]));
});

describe('sex chromosomes', () => {
  // r = 1/20 from memory: each young that fits weighs 19 : 1.
  it('the side of a banana male by the sex of his young', () => {
    const { what, prior, ways } = only('Ban/Y?+', 'M');
    expect([what, sayFraction(prior)]).toEqual(['Banana on the Y (male-maker)', '1/2']);
    expect(ways[0]?.sign).toBe(
      'a daughter that shows Banana or a son without Banana (it speaks for the X, a female-maker)',
    );
    expect(said(ways[0]?.after ?? [], 3)).toEqual(['19/20', '361/362', '6859/6860']);
    expect(sayFraction(ways[0]?.perYoung ?? ONE)).toBe('19/20');
  });

  it('a son het on Z is told by a daughter even of a normal mate', () =>
    expect(signs(only('[zre 1:2]/+', 'M', INVENTED))).toEqual([
      ['zre/W', 'a young that shows Site zre'],
      ['wt', 'a daughter that shows Site zre'],
    ]));

  it('a daughter’s one Z is told by her sons', () => {
    const found = only('[zre 1:2]/W', 'F', INVENTED);
    expect([found.what, signs(found)[0]]).toEqual(['Site zre', ['zre/zre', 'a son that shows Site zre']]);
  });

  it('of an unsexed animal say nothing', () => expect(proofs('[zre 1:2]/+', null, INVENTED)).toEqual([]));
});

describe('mates', () => {
  const own = (more: Parameters<typeof siteRow>[3]) =>
    value(lociOf('Python regius', [siteRow('Python regius', 'OWN', 'own', more)]));

  it('with which eggs die are left out', () => {
    const loci = own({ lethal: [{ carrying: ['own', 'own'], says: 'two copies die', basis: 'the site' }] });
    expect(only('[own 1:2]/+', null, loci)).toMatchObject({ what: 'het Site own', ways: [] });
  });

  it('with which eggs die for another trait of the animal are left out too', () => {
    const loci = own({ lethal: [{ carrying: ['own', 'own', 'Pas'], says: 'with Pastel', basis: 'the site' }] });
    expect(only('[own 1:2]/+', null, loci).ways).toHaveLength(2);
    expect(only('Pas/+; [own 1:2]/+', null, loci).ways).toHaveLength(0);
  });

  it('say nothing of a side whose young tell next to nothing', () => {
    const row = siteRow('Python regius', 'XYD', 'Xyd', { sexLink: { system: 'XY', kind: 'partial', r: '4999/10000' } });
    expect(only('Xyd/Y?+', 'M', value(lociOf('Python regius', [row]))).ways).toEqual([]);
  });

  it('are found for a species whose sexes nobody has explained', () => {
    const loci = value(lociOf('Fictiserpens alter', [siteRow('Fictiserpens alter', 'AAA', 'aa')]));
    expect(only('[aa 1:2]/+', null, loci).ways).toHaveLength(2);
  });
});

it('an animal of which all is known has nothing to prove', () =>
  expect(proofs('Pas/+; cln/+; pie/pie; +/Y:Ban', 'M')).toEqual([]));
