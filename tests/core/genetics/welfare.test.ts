import { describe, expect, it } from 'vitest';
import {
  type CrossSetting,
  lociOf,
  pairingWelfare,
  parseTraits,
  type Sex,
  sayFraction,
  welfareNotes,
} from '../../../src/core/genetics/index.ts';
import { BALL, CORN, fault, siteRow, value } from './given.ts';

const notes = (code: string, sex: Sex | null = null, loci = BALL) =>
  welfareNotes(value(parseTraits(code, loci, sex)), loci, sex).map(
    (one) => `${one.sure ? '' : 'possible: '}${one.says} (${one.source})`,
  );
const warnings = (sire: string, dam: string, setting: CrossSetting = { loci: BALL }) =>
  pairingWelfare(
    { traits: value(parseTraits(sire, setting.loci, 'M')), sex: 'M' },
    { traits: value(parseTraits(dam, setting.loci, 'F')), sex: 'F' },
    setting,
  ).map((one) => `${one.who}${one.share === null ? '' : ` ${sayFraction(one.share)}`}: ${one.says}`);

describe('what is told of an animal', () => {
  // Rose & Williams 2014, J Exotic Pet Med 23; Starck et al. 2022, PLoS ONE, doi 10.1371/journal.pone.0262788.
  it('names the published papers for spider', () =>
    expect(notes('Spi/+')).toEqual(['every spider animal wobbles (Rose & Williams 2014; Starck et al. 2022)']));

  it.each<[string, string, string[]]>([
    ['all else by breeders', 'Wom/-', ['wobble reported (reported by breeders (memory))']],
    ['compounds of a series', 'Les/But', ['enlarged or bulging eyes often reported (reported by breeders (memory))']],
    ['one dose where only two are meant', 'Les/+', []],
    [
      'a copy that is only possible',
      '[Spi 1:2]/+',
      ['possible: every spider animal wobbles (Rose & Williams 2014; Starck et al. 2022)'],
    ],
    ['a second copy that nobody knows', 'Spo/-', ['possible: wobble reported (reported by breeders (memory))']],
    ['a look that says little', 'Pas/Pas', []],
  ])('%s', (_, code, expected) => expect(notes(code)).toEqual(expected));

  it('says that a genotype is taken as lethal', () =>
    expect(notes('Spi/Spi').at(-1)).toBe('two copies of Spider: not known alive (taken as lethal (memory))'));

  it('minds the sex a note is for', () => {
    expect(notes('Des/-', 'M')).toEqual([]);
    expect(notes('Des/-', 'F').join()).toMatch(/^infertility.*do not breed females/);
    expect(notes('Des/-').join()).toMatch(/^possible: infertility/);
  });
});

describe('what is warned of before a pairing', () => {
  it('both parents and the young, with the share of eggs', () =>
    expect(warnings('Spi/+', 'Spi/+')).toEqual([
      'sire: every spider animal wobbles',
      'dam: every spider animal wobbles',
      'young 3/4: every spider animal wobbles',
      'young 1/4: two copies of Spider: not known alive',
    ]));

  it('genotypes of two loci', () => expect(warnings('Cha/+', 'Spi/+')).toContain('young 1/4: Champagne with Spider'));

  it('what neither parent shows', () =>
    expect(warnings('car/+', '[car 2:3]/+')).toEqual([
      'young 1/6: spinal kinking reported',
      'young 1/6: poor fertility of females reported',
    ]));

  it('a dam that should not be bred', () => expect(warnings('wt', 'Des/+')[0]).toMatch(/^dam: .*do not breed females/));

  it('what is possible where no share can be worked out', () => {
    expect(warnings('car/-', 'car/+').slice(-2)).toEqual([
      'young: spinal kinking reported',
      'young: poor fertility of females reported',
    ]);
  });

  it('nothing where the table knows nothing', () => expect(warnings('Pas/+', 'cln/+')).toEqual([]));

  it("a site's own note", () => {
    const welfare = [{ anyOf: [['own', 'own']], sex: null, says: 'poor feeders', source: 'the site' }];
    const loci = value(lociOf('Python regius', [siteRow('Python regius', 'OWN', 'own', { welfare })]));
    expect(warnings('own/+', 'own/+', { loci })).toEqual(['young 1/4: poor feeders']);
    const unknown = [{ anyOf: [[]], sex: null, says: 'x', source: 'y' }];
    expect(
      fault(lociOf('Python regius', [siteRow('Python regius', 'OWN', 'own', { welfare: unknown })])).words,
    ).toMatch(/names no allele/);
  });

  it('in corn snakes a nerve fault that runs in a line', () =>
    expect(warnings('snk/+', 'wt', { loci: CORN }).join()).toMatch(/stargazing/));
});
