import { describe, expect, it } from 'vitest';
import { checkLoci, GENETIC_SOURCES, GENETIC_SPECIES, lociOf } from '../../../src/core/genetics/index.ts';
import { BALL, BOA, CORN, fault, HOGNOSE, INVENTED, siteRow, value } from './given.ts';

const REGIUS = 'Python regius';

describe('the tables of loci', () => {
  it('hold 74 loci of four species', () => {
    expect([BALL, CORN, BOA, HOGNOSE].map((table) => table.rows.length)).toEqual([37, 17, 12, 8]);
  });

  it.each(GENETIC_SPECIES)('are sound for %s', (species) => {
    expect(value(checkLoci(value(lociOf(species)).rows)).length).toBeGreaterThan(0);
  });

  it('name a source that is listed and a confidence on every row', () => {
    for (const row of [BALL, CORN, BOA, HOGNOSE].flatMap((table) => table.rows)) {
      expect(row.sources.length, row.locus).toBeGreaterThan(0);
      for (const source of row.sources) expect(GENETIC_SOURCES[source], `${row.locus} ${source}`).toBeTypeOf('string');
      for (const note of row.welfare) expect(note.source, row.locus).toMatch(/\d{4}|memory|seen/);
    }
  });

  it('call nothing published that rests on common practice alone', () => {
    const rows = [BALL, CORN, BOA, HOGNOSE].flatMap((table) => table.rows);
    const claimed = rows.filter((row) => row.confidence === 'published');
    expect(claimed.filter((row) => row.sources.every((source) => source === 'cp' || source === 'CornList'))).toEqual(
      [],
    );
  });

  it('say XY for pythons and boas and ZW for corn snakes and hognoses', () => {
    expect([BALL, CORN, BOA, HOGNOSE].map((table) => table.sexSystem)).toEqual(['XY', 'ZW', 'XY', 'ZW']);
  });

  it('take the published lethal genotype of spider as from memory', () => {
    const spider = BALL.rows.find((row) => row.locus === 'SPI');
    expect(spider?.lethal.map((one) => [one.carrying, one.basis])).toEqual([
      [['Spi', 'Spi'], 'taken as lethal (memory)'],
    ]);
  });

  it('know a boa by either name', () => {
    expect(value(lociOf('Boa constrictor')).rows.every((row) => row.species === 'Boa constrictor')).toBe(true);
  });
});

describe("a site's own rows", () => {
  it('come after the rest', () => {
    expect(value(lociOf(REGIUS, [siteRow(REGIUS, 'OWN', 'own')])).rows.at(-1)?.locus).toBe('OWN');
  });

  it('replace the row of the same locus in its place', () => {
    const table = value(lociOf(REGIUS, [siteRow(REGIUS, 'pas', 'Pas')]));
    expect(table.rows.length).toBe(BALL.rows.length);
    expect(table.rows.findIndex((row) => row.locus === 'pas')).toBe(BALL.rows.findIndex((row) => row.locus === 'PAS'));
  });

  it('of other species are left out', () => {
    expect(value(lociOf(REGIUS, [siteRow('Boa imperator', 'OWN', 'own')])).rows.length).toBe(BALL.rows.length);
  });

  it('are all there is for a species without a table', () => {
    expect(INVENTED.rows.map((row) => row.locus)).toEqual(['AAA', 'BBB', 'CCC', 'SEX', 'ZRE']);
    expect(INVENTED.sexSystem).toBe('ZW');
  });

  it('take a combo name along only while its alleles are there', () => {
    const table = value(lociOf(REGIUS, [siteRow(REGIUS, 'PIN', 'Xyz')]));
    expect(table.combos.map((one) => one.name)).toEqual(['Bumblebee']);
  });

  const refusals: readonly [string, ReturnType<typeof siteRow>[], string, RegExp][] = [
    [
      'a sign that is taken, in other capitals',
      [siteRow(REGIUS, 'OWN', 'PAS')],
      'loci-clash',
      /PAS of OWN is taken by PAS/,
    ],
    [
      'a locus that is given twice',
      [siteRow(REGIUS, 'OWN', 'own'), siteRow(REGIUS, 'own', 'owe')],
      'loci-clash',
      /twice/,
    ],
    ['a sign that looks like a mark', [siteRow(REGIUS, 'OWN', 'W')], 'locus-malformed', /not a letter with/],
    ['a sign that is a trade word', [siteRow(REGIUS, 'OWN', 'het')], 'locus-malformed', /meaning of its own/],
    [
      'a recessive with a capital',
      [siteRow(REGIUS, 'OWN', 'Own', { inheritance: 'recessive' })],
      'locus-malformed',
      /capital/,
    ],
    [
      'a dominant without one',
      [siteRow(REGIUS, 'OWN', 'own', { inheritance: 'dominant' })],
      'locus-malformed',
      /capital/,
    ],
    ['no allele', [siteRow(REGIUS, 'OWN', 'own', { alleles: [] })], 'locus-malformed', /no allele/],
    ['the name of the sex point', [siteRow(REGIUS, 'SD', 'own')], 'locus-malformed', /sex-determining/],
    [
      'recombination over one half',
      [siteRow(REGIUS, 'OWN', 'own', { linkage: { group: 'a', r: '2/3' } })],
      'locus-malformed',
      /1\/2/,
    ],
    [
      'recombination in words',
      [siteRow(REGIUS, 'OWN', 'own', { linkage: { group: 'a', r: 'low' } })],
      'locus-malformed',
      /not a fraction/,
    ],
    [
      'a partly linked locus on Z',
      [siteRow('X', 'OWN', 'own', { sexLink: { system: 'ZW', kind: 'partial', r: null } })],
      'locus-malformed',
      /W has no copy/,
    ],
    [
      'a sex system that is not the species’',
      [siteRow(REGIUS, 'OWN', 'own', { sexLink: { system: 'ZW', kind: 'full', r: null } })],
      'locus-malformed',
      /another sex system/,
    ],
    [
      'a note of an allele nobody knows',
      [siteRow(REGIUS, 'OWN', 'own', { lethal: [{ carrying: ['nix'], says: '', basis: '' }] })],
      'locus-malformed',
      /nix/,
    ],
  ];
  it.each(refusals)('are refused with %s', (_, rows, code, words) => {
    const found = fault(lociOf(rows[0]?.species ?? '', rows));
    expect(found.code).toBe(code);
    expect(found.words).toMatch(words);
  });
});
