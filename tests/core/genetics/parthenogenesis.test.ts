import { describe, expect, it } from 'vitest';
import {
  crossOf,
  FEW_LIVE,
  type LocusTable,
  type Observed,
  parseTraits,
  parthenogenesisFlag,
  type Sex,
  sayFraction,
} from '../../../src/core/genetics/index.ts';
import { BALL, CORN, fault, INVENTED, value } from './given.ts';

const crossed = (sire: string, dam: string, loci: LocusTable = BALL) =>
  value(
    crossOf(
      { traits: value(parseTraits(sire, loci, 'M')), sex: 'M' },
      { traits: value(parseTraits(dam, loci, 'F')), sex: 'F' },
      { loci },
    ),
  ).cross;
const young = (sex: Sex | null, count: number, ...labels: string[]): Observed => ({ sex, labels, count });
const flag = (sire: string, dam: string, observed: readonly Observed[], loci?: LocusTable) =>
  value(parthenogenesisFlag(crossed(sire, dam, loci), observed));

// What young without a father are like (few, all of one sex, homozygous) is common practice and memory: no source was
// seen. The chances are own computation.
describe('a clutch that may have no father', () => {
  it('is flagged when few daughters look like gametes of the dam doubled', () => {
    const found = flag('wt', 'Pas/+', [young('F', 3, 'normal')]);
    expect(found).toMatchObject({ live: 3, sex: 'F', confidence: 'common practice', telling: ['PAS'] });
    expect(found?.reasons.join(' ')).toMatch(/3 live young: .*All are females.*At PAS, where the dam has or may have/);
  });

  // Each young is a daughter and normal with 1/2 x 1/2.
  it('comes with the chance that a sired clutch looks so: (1/4)^3', () => {
    const found = flag('wt', 'Pas/+', [young('F', 3, 'normal')]);
    expect(found && sayFraction(found.bySire)).toBe('1/64');
    expect(found?.odds).toMatch(/by the sire as entered, 1 in 64 would look so by chance/);
  });

  it('never says more than a flag', () =>
    expect(flag('wt', 'Pas/+', [young('F', 1, 'normal')])?.says).toBe(
      'A flag, not a finding: only a laboratory can tell.',
    ));

  it('says where the sire cannot have given what was seen', () => {
    for (const seen of ['Albino', 'Candy']) {
      const found = flag('wt', 'alb/cdy', [young('F', 2, seen)]);
      expect([found?.telling, found && sayFraction(found.bySire)]).toEqual([['TYR'], '0']);
      expect(found?.odds).toBe('The sire as entered can have given no such clutch.');
    }
    expect(flag('wt', 'Pas/+', [young('F', 1, 'Super Pastel'), young('F', 1, 'normal')])?.odds).toMatch(
      /no such clutch/,
    );
  });

  it('tells by what only the sire carries', () => {
    const found = flag('Pas/+', 'wt', [young('F', 2, 'normal')]);
    expect(found && sayFraction(found.bySire)).toBe('1/16');
    expect(found?.reasons.at(-1)).toBe('At PAS none shows what only the sire can have given.');
  });

  it('says when nothing but number and sex speaks', () => {
    const found = flag('cln/+', 'cln/+', [young('F', 1, 'normal'), young('F', 1, 'Clown')]);
    expect([found?.telling, found && sayFraction(found.bySire)]).toEqual([[], '1/4']);
    expect(found?.reasons.at(-1)).toMatch(/only number and sex speak/);
  });

  it('weighs what is not known of the dam: (1/2)(1/4)^2 + (1/2)(1/2)^2', () => {
    const found = flag('wt', '[Pas 1:2]/+', [young('F', 2, 'normal')]);
    expect(found && sayFraction(found.bySire)).toBe('5/32');
  });

  it('in corn snakes is of sons alone, from memory', () => {
    const found = flag('wt', 'amel/ultr', [young('M', 2, 'Amel'), young('M', 1, 'Ultra')], CORN);
    expect(found).toMatchObject({ sex: 'M', confidence: 'memory', telling: ['OCA2'] });
    expect(found?.reasons.join(' ')).toMatch(/All are males.*from memory/);
    expect(flag('wt', 'amel/ultr', [young('F', 2, 'Amel')], CORN)).toBeNull();
  });

  it('on Z has both copies of her one Z', () => {
    const found = flag('wt', 'Zed/W', [young('M', 2, 'Super Site Zed')], INVENTED);
    expect(found?.reasons.at(-1)).toBe('At SEX none shows what only the sire can have given.');
    expect(flag('wt', 'Zed/W', [young('M', 2, 'Site Zed')], INVENTED)).toBeNull();
  });
});

describe('no flag', () => {
  it.each<[string, string, string, readonly Observed[]]>([
    ['where a young looks het', 'wt', 'Pas/+', [young('F', 2, 'normal'), young('F', 1, 'Pastel')]],
    ['where a young shows what the dam has not', 'Pas/+', 'wt', [young('F', 1, 'Pastel')]],
    ['where one is a male', 'wt', 'wt', [young('F', 2), young('M', 1)]],
    ['where one was not sexed', 'wt', 'wt', [young('F', 2), young(null, 1)]],
    ['of a clutch that is not small', 'wt', 'wt', [young('F', FEW_LIVE + 1)]],
    ['of no young', 'wt', 'wt', [young('F', 0)]],
    ['of what dies in two doses', 'wt', 'Spi/+', [young('F', 1, 'Spider')]],
  ])('%s', (_, sire, dam, observed) => expect(flag(sire, dam, observed)).toBeNull());

  it('unless the caller takes more for few', () => {
    const nine = [young('F', 9)];
    expect(value(parthenogenesisFlag(crossed('wt', 'wt'), nine, 9))?.live).toBe(9);
  });

  it('where no single state of the dam gives all young', () => {
    const cross = crossed('wt', '[Pas 1:2]/+');
    const sure = {
      ...cross,
      dam: cross.dam.map((block) => ({
        ...block,
        states: block.states.map((one) => ({ ...one, pairs: one.pairs.map(([a]) => [a, a] as const) })),
      })),
    };
    const both = [young('F', 1, 'Super Pastel'), young('F', 1, 'normal')];
    expect(value(parthenogenesisFlag(sure, both))).toBeNull();
    expect(value(parthenogenesisFlag(sure, both.slice(1)))).not.toBeNull();
  });

  it('for hatchlings that cannot be read', () =>
    expect(fault(parthenogenesisFlag(crossed('wt', 'Pas/+'), [young('F', 1)])).code).toBe('hatchlings-malformed'));
});
