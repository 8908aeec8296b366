import { describe, expect, it } from 'vitest';
import {
  type Cross,
  type CrossSetting,
  crossesOf,
  crossOf,
  evidenceOf,
  type Fraction,
  fraction,
  locusOrder,
  MOST_SIRES,
  type Observed,
  type Parent,
  type PossibleSire,
  parseTraits,
  type Sex,
  type SireCross,
  sayFraction,
  siresEvidence,
  ZERO,
} from '../../../src/core/genetics/index.ts';
import { BALL, BOA, fault, INVENTED, value } from './given.ts';

const parent = (code: string, sex: Sex, loci = BALL): Parent => ({ traits: value(parseTraits(code, loci, sex)), sex });
const sire = (id: string, code: string, prior?: Fraction): PossibleSire => {
  const own = { id, parent: parent(code, 'M') };
  return prior === undefined ? own : { ...own, prior };
};
const crosses = (sires: readonly PossibleSire[], dam: string, setting: CrossSetting = { loci: BALL }) =>
  crossesOf(sires, parent(dam, 'F', setting.loci), setting);
const young = (count: number, ...labels: string[]): Observed => ({ sex: null, labels, count });
const weigh = (sires: readonly PossibleSire[], dam: string, observed: readonly Observed[]) =>
  value(siresEvidence(value(crosses(sires, dam)), observed));
const shares = (sires: readonly PossibleSire[], dam: string, observed: readonly Observed[]) =>
  weigh(sires, dam, observed).sires.map(({ p }) => (p === null ? null : sayFraction(p)));

describe('the crosses of several possible sires', () => {
  it('have the same loci, those that only one of them carries too', () => {
    const found = value(crosses([sire('a', 'Pas/+'), sire('b', 'cln/cln'), sire('c', 'wt')], 'pie/+'));
    const orders = found.map(({ cross }) => locusOrder(cross).toSorted().join());
    expect(orders).toEqual(['CLN,PAS,TFEC', 'CLN,PAS,TFEC', 'CLN,PAS,TFEC']);
  });

  it('keep what is on Z, and each answer of a cross alone', () => {
    const sires = ['wt', 'zre/+'].map((code) => ({ id: code, parent: parent(code, 'M', INVENTED) }));
    const found = value(crosses(sires, 'Zed/W', { loci: INVENTED }));
    expect(found.map(({ cross }) => [...cross.loci.keys()].toSorted().join())).toEqual(['SEX,ZRE', 'SEX,ZRE']);
    const alone = value(crossOf(parent('wt', 'M', INVENTED), parent('Zed/W', 'F', INVENTED), { loci: INVENTED }));
    expect([...alone.cross.loci.keys()]).toEqual(['SEX']);
  });

  it.each<[string, readonly PossibleSire[], string, string]>([
    ['no sire', [], 'sires-none', 'sires'],
    ['the same sire twice', [sire('a', 'wt'), sire('a', 'Pas/+')], 'sire-twice', 'sires.1'],
    ['a prior for some only', [sire('a', 'wt', ZERO), sire('b', 'wt')], 'sires-prior', 'sires'],
    [
      'a negative prior',
      [sire('a', 'wt'), sire('b', 'wt')].map((one, at) => ({ ...one, prior: fraction(BigInt(-at), 2n) })),
      'sires-prior',
      'sires.1',
    ],
    ['no prior above 0', [sire('a', 'wt', ZERO)], 'sires-prior', 'sires'],
    [
      'a sire of another species',
      [sire('a', 'wt'), { id: 'b', parent: parent('wt', 'M', BOA) }],
      'pairing-species',
      'sires.1',
    ],
    ['a female as sire', [sire('a', 'wt'), { id: 'b', parent: parent('wt', 'F') }], 'pairing-sexes', 'sires.1'],
    ['a copy that nobody knows', [sire('a', 'wt'), sire('b', 'cln/-')], 'pairing-copy-unknown', 'sires.1.CLN'],
    ['a crowd', Array.from({ length: MOST_SIRES + 1 }, (_, at) => sire(`${at}`, 'wt')), 'sires-many', 'sires'],
  ])('are refused for %s', (_, sires, code, path) => expect(fault(crosses(sires, 'wt'))).toMatchObject({ code, path }));
});

// Own computation by Bayes' rule; the arithmetic stands beside each.
describe('one clutch and several possible sires', () => {
  const pair = [sire('het', 'cln/+'), sire('normal', 'wt')];

  it('are weighed by what they make likely: 1/8 against 1', () =>
    expect(shares(pair, 'cln/cln', [young(3, 'normal')])).toEqual(['1/9', '8/9']));

  it('leave only the one who can have given the Clown', () =>
    expect(shares(pair, 'cln/cln', [young(3, 'normal'), young(1, 'Clown')])).toEqual(['1', '0']));

  it('start from what was likely before: 3/4 x 1/8 against 1/4', () => {
    const sires = [sire('het', 'cln/+', fraction(3n, 1n)), sire('normal', 'wt', fraction(1n, 1n))];
    expect(shares(sires, 'cln/cln', [young(3, 'normal')])).toEqual(['3/11', '8/11']);
  });

  it('keep their priors where nothing was seen', () => {
    expect(shares(pair, 'cln/cln', [])).toEqual(['1/2', '1/2']);
    expect(shares(pair, 'cln/cln', [young(0, 'Clown')])).toEqual(['1/2', '1/2']);
  });

  // Sire visual: 2/3 x 1/4 + 1/3 = 1/2, she is het with 1/3. Sire normal: 1, she is het with 2/3. 1/3 x 1/3 + 2/3 x 2/3.
  it('give the dam a chance that is mixed over them', () => {
    const found = weigh([sire('visual', 'cln/cln'), sire('normal', 'wt')], '[cln 2:3]/+', [young(2, 'normal')]);
    expect(sayFraction(found.evidence)).toBe('3/4');
    expect(found.dam.map(({ p }) => sayFraction(p))).toEqual(['5/9', '4/9']);
    expect(found.paternity).toBe('one');
  });

  it('say of a single sire what his own evidence says', () => {
    const [one] = value(crosses([sire('het', '[cln 1:2]/+')], 'cln/+'));
    const alone = evidenceOf(value(crossOf(parent('[cln 1:2]/+', 'M'), parent('cln/+', 'F'), { loci: BALL })).cross, [
      young(4, 'normal'),
    ]);
    const found = value(siresEvidence(one ? [one] : [], [young(4, 'normal')]));
    expect(found.sires[0]?.evidence).toEqual(alone);
    expect(found.dam).toEqual(alone.dam);
  });
});

describe('a clutch of more than one sire', () => {
  const males = [sire('pastel', 'Pas/+'), sire('normal', 'wt'), sire('clown', 'cln/cln'), sire('again', 'Pas/Pas')];
  const seen = [young(2, 'Pastel', 'normal'), young(1, 'normal', 'Clown'), young(3, 'normal', 'normal')];

  it('is said when no single one explains it, with each smallest set that does', () => {
    const found = weigh(males, 'cln/+', seen);
    expect(found.paternity).toBe('more than one');
    expect(found.together).toEqual([
      ['pastel', 'clown'],
      ['clown', 'again'],
    ]);
  });

  it('gives no sire a chance of all, and leaves the dam as she was', () => {
    const found = weigh(males, '[cln 1:2]/+', seen);
    expect(found.sires.map(({ p }) => p)).toEqual([null, null, null, null]);
    expect(sayFraction(found.evidence)).toBe('0');
    expect(found.dam.map(({ p }) => sayFraction(p))).toEqual(['1/2', '1/2']);
  });

  it('names for each row who can give it', () =>
    expect(weigh(males, 'cln/+', seen).rows).toEqual([['pastel', 'again'], ['clown'], ['pastel', 'normal', 'clown']]));

  it('is of two where two are enough, and not of the three who could also have done it', () => {
    const sires = [sire('both', 'Pas/+; Moj/+'), sire('pas', 'Pas/+'), sire('moj', 'Moj/+'), sire('pin', 'Pin/+')];
    const looks: Readonly<Record<string, string>> = { PAS: 'Pastel', BEL: 'Mojave', PIN: 'Pinstripe' };
    const order = locusOrder(value(crosses(sires, 'wt'))[0]?.cross ?? recessive('', [], []).cross);
    const rows = order.map((shown) =>
      young(1, ...order.map((locus) => (locus === shown ? (looks[locus] ?? '') : 'normal'))),
    );
    expect(weigh(sires, 'wt', rows).together).toEqual([['both', 'pin']]);
  });

  it('is of none of them where a look is nobody’s', () => {
    const found = weigh(males, 'wt', [young(1, 'Pastel', 'normal'), young(1, 'normal', 'Clown')]);
    expect([found.paternity, found.together, found.rows]).toEqual(['none of these', [], [['pastel', 'again'], []]]);
  });

  it('never counts a male whose prior is 0', () => {
    const sires = [sire('pastel', 'Pas/+', fraction(1n, 1n)), sire('away', 'cln/cln', ZERO)];
    const found = weigh(sires, 'cln/+', [young(1, 'Pastel', 'normal'), young(1, 'normal', 'Clown')]);
    expect([found.paternity, found.rows]).toEqual(['none of these', [['pastel'], []]]);
  });
});

/** One recessive locus; each parent is one of these with equal chances. */
function recessive(id: string, sires: readonly string[], dams: readonly string[]): SireCross {
  const block = (keys: readonly string[]) => [
    {
      loci: ['A'],
      states: keys.map((key) => {
        const [a = '', b = ''] = key.split('/');
        return { p: fraction(1n, BigInt(keys.length)), pairs: [[a, b] as const] };
      }),
    },
  ];
  const phen = new Map([
    ['+/+', 'normal'],
    ['+/a', 'normal'],
    ['a/a', 'visual'],
    ['a/b', 'other'],
  ]);
  const cross: Cross = {
    system: 'XY',
    chromosomes: [{ id: '1', sex: false, loci: ['A'], r: { sire: [], dam: [] } }],
    loci: new Map([['A', { name: 'A', alleles: ['+', 'a', 'b'], phen }]]),
    sire: block(sires),
    dam: block(dams),
    lethal: [],
    mask: [],
  };
  return { id, prior: fraction(1n, 2n), cross, assumed: [] };
}

describe('several sires whose states are not known', () => {
  const both = [young(1, 'visual'), young(1, 'normal')];
  const paternity = (all: readonly SireCross[]) => value(siresEvidence(all, both)).paternity;

  it('must be in one state each for all their young', () => {
    const open = ['+/+', 'a/a'];
    expect(paternity([recessive('x', open, ['a/a'])])).toBe('none of these');
    expect(paternity([recessive('x', open, ['a/a']), recessive('y', open, ['a/a'])])).toBe('more than one');
    expect(paternity([recessive('x', open, ['a/a']), recessive('y', ['b/b'], ['a/a'])])).toBe('none of these');
    expect(paternity([recessive('x', ['+/a'], ['a/a']), recessive('y', open, ['a/a'])])).toBe('one');
  });

  it('share one state of the dam', () => {
    const visual = (id: string) => recessive(id, ['a/a'], ['+/+', 'a/a']);
    const found = value(siresEvidence([visual('x'), visual('y')], both));
    expect(found.rows).toEqual([
      ['x', 'y'],
      ['x', 'y'],
    ]);
    expect(found.paternity).toBe('none of these');
  });
});

describe('what cannot be weighed', () => {
  const found = value(crosses([sire('a', 'cln/+'), sire('b', 'wt')], 'cln/+'));
  it.each<[string, Observed, RegExp]>([
    ['too few looks', young(1), /Row 1 .* it has 0 looks. Give a look for each of CLN/],
    ['half a hatchling', young(0.5, 'normal'), /0\.5 is no number of hatchlings/],
    ['fewer than none', young(-1, 'normal'), /-1 is no number/],
    ['no number', young(Number.NaN, 'normal'), /NaN is no number/],
  ])('%s', (_, row, words) => {
    const refused = fault(siresEvidence(found, [row]));
    expect([refused.code, refused.path]).toEqual(['hatchlings-malformed', 'observed.0']);
    expect(refused.words).toMatch(words);
  });

  it('no sires at all', () => expect(fault(siresEvidence([], [])).code).toBe('sires-none'));

  it('parents of whom too little is known', () => {
    const open = BALL.rows
      .filter((row) => row.sexLink === null && row.lethal.length === 0)
      .slice(0, 20)
      .map((row) => `[${row.alleles[0]?.symbol} 1:2]/+`)
      .join('; ');
    expect(fault(siresEvidence(value(crosses([sire('a', open)], 'wt')), [])).code).toBe('parents-too-open');
  });
});
