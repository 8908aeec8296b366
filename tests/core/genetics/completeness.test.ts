import { describe, expect, it } from 'vitest';
import {
  type Completeness,
  completenessOf,
  exactKinship,
  fraction,
  type Parentage,
  parseFraction,
  pedigreeOrder,
  sayFraction,
  sayInbreeding,
  ZERO,
} from '../../../src/core/genetics/index.ts';
import { fault, value } from './given.ts';

/** `id sire dam` a line; `?` is unknown. */
const pedigree = (...lines: string[]): readonly Parentage[] =>
  lines.map((line) => {
    const [id = '', sire = '?', dam = '?'] = line.split(' ');
    return { id, sire: sire === '?' ? null : sire, dam: dam === '?' ? null : dam };
  });
const said = (found: Completeness) => ({
  known: found.generations.map(({ known, of }) => `${known}/${of}`),
  equivalent: sayFraction(found.equivalent),
  index: sayFraction(found.index),
  founders: found.founders.map(({ id, share }) => `${id} ${sayFraction(share)}`),
  unknown: found.unknown.map(({ young, role, share }) => `${role} of ${young} ${sayFraction(share)}`),
});
const of = (animals: readonly Parentage[], id: string, generations: number) =>
  said(value(completenessOf(animals, id, generations)));

/** Everybody known to so many generations above `x`. */
function whole(generations: number): readonly Parentage[] {
  const all: Parentage[] = [];
  const walk = (id: string, left: number): void => {
    all.push({ id, sire: left === 0 ? null : `${id}s`, dam: left === 0 ? null : `${id}d` });
    if (left === 0) return;
    walk(`${id}s`, left - 1);
    walk(`${id}d`, left - 1);
  };
  walk('x', generations);
  return all;
}

// Mrode's textbook, table 2.1 (3=1x2, 4=1x?, 5=4x3, 6=5x2). Its contributions here are own computation, half to each
// parent: 6 has 5 and 2; 5 has 4 and 3; 4 has 1 and one unknown; 3 has 1 and 2.
const MRODE = pedigree('1', '2', '3 1 2', '4 1 ?', '5 4 3', '6 5 2');

describe('the pedigree of Mrode’s table 2.1', () => {
  const found = of(MRODE, '6', 3);
  it('is known to 2 of 2, 2 of 4 and 3 of 8', () => expect(found.known).toEqual(['2/2', '2/4', '3/8']));

  it('has its founders at 5/8, 1/4 and an unknown at 1/8', () => {
    expect(found.founders).toEqual(['2 5/8', '1 1/4']);
    expect(found.unknown).toEqual(['dam of 4 1/8']);
  });

  // Maignel, Boichard & Verrier 1996 (from memory): 2 x 1/2 + 2 x 1/4 + 3 x 1/8, own arithmetic.
  it('is worth 15/8 whole generations', () => expect(found.equivalent).toBe('15/8'));

  // MacCluer et al. 1983 (from memory): sides (1 + 1 + 3/4)/3 = 11/12 and (1 + 0 + 0)/3; 2ab/(a + b), own arithmetic.
  it('has the completeness index 22/45', () => expect(found.index).toBe('22/45'));
});

describe('completeness', () => {
  it.each([1, 3, 6])('of a pedigree whole to %i generations is as many, with the index 1', (generations) => {
    const found = of(whole(generations), 'x', generations);
    expect([found.equivalent, found.index]).toEqual([`${generations}`, '1']);
    expect(found.founders).toHaveLength(2 ** generations);
  });

  it('has the index 0 where one parent is unknown, whatever is known of the other', () => {
    const found = of(pedigree('a', 'b', 's a b', 'x s ?'), 'x', 2);
    expect([found.index, found.equivalent, found.known]).toEqual(['0', '1', ['1/2', '2/4']]);
    expect(found.unknown).toEqual(['dam of x 1/2']);
  });

  it('of a founder is nothing, and all its genes are its own', () => {
    const found = of(pedigree('x'), 'x', 2);
    expect(found).toMatchObject({ known: ['0/2', '0/4'], equivalent: '0', index: '0', founders: ['x 1'], unknown: [] });
  });

  it('counts an ancestor on two lines twice, and its share once', () => {
    const found = of(pedigree('a', 'b', 's a b', 'd a b', 'x s d'), 'x', 2);
    expect(found).toMatchObject({ known: ['2/2', '4/4'], equivalent: '2', founders: ['a 1/2', 'b 1/2'] });
  });

  const line = (size: number): readonly Parentage[] =>
    Array.from({ length: size }, (_, at) => ({ id: `${at}`, sire: at === 0 ? null : `${at - 1}`, dam: null }));

  it('of a line of 10,000 generations is found without deep recursion, of more refused', () => {
    const found = value(completenessOf(line(10_001), '10000', 3));
    expect(found.founders[0]?.share).toEqual({ top: 1n, bottom: 1n << 10_000n });
    expect(fault(completenessOf(line(10_002), '10001', 3)).code).toBe('pedigree-deep');
  });
});

describe('what is no pedigree', () => {
  it.each<[string, readonly Parentage[], string, number, string]>([
    ['an animal that is its own ancestor', pedigree('a b ?', 'b a ?'), 'a', 2, 'pedigree-cycle'],
    ['a parent that is not there', pedigree('a z ?'), 'a', 2, 'parent-unknown'],
    ['one animal twice', pedigree('a', 'a'), 'a', 2, 'pedigree-twice'],
    ['a stranger', pedigree('a'), 'z', 2, 'pedigree-without'],
    ['no generation', pedigree('a'), 'a', 0, 'pedigree-generations'],
    ['half a generation', pedigree('a'), 'a', 1.5, 'pedigree-generations'],
    ['too many generations', pedigree('a'), 'a', 1e9, 'pedigree-generations'],
  ])('%s', (_, animals, id, generations, code) =>
    expect(fault(completenessOf(animals, id, generations)).code).toBe(code),
  );
});

describe('an inbreeding coefficient in words', () => {
  const words = (animals: readonly Parentage[], generations: number) => {
    const kinship = exactKinship(value(pedigreeOrder(animals)), { inbreeding: new Map(), kinship: [] });
    return sayInbreeding(kinship.inbreeding('x'), value(completenessOf(animals, 'x', generations)));
  };

  // Half sibs: F = 1/8 (Wright 1922; the rule as in Mrode's textbook, chapter 2).
  it('is a lower bound where founders are unknown', () =>
    expect(words(pedigree('a', 'b', 's a b', 'd a ?', 'x s d'), 4)).toBe('at least 12.5 %: 3 of 4 grandparents known'));

  it('is plain where all asked for are known', () => {
    expect(words(pedigree('a', 'b', 's a b', 'd a b', 'x s d'), 2)).toBe('25 %: all ancestors of 2 generations known');
    expect(words(pedigree('a', 'b', 's a b', 'd a b', 'x s d'), 3)).toBe(
      'at least 25 %: 0 of 8 great-grandparents known',
    );
  });

  it('is not known where a parent is not', () =>
    expect(words(pedigree('s', 'x s ?'), 3)).toBe('not known: 1 of 2 parents known'));

  it.each<[string, string, string]>([
    ['1/256', 'at least 0.39 %', 'about 0.39 %'],
    ['1/1000000', 'above 0 %', 'less than 0.01 %'],
    ['0', 'at least 0 %', '0 %'],
    ['43/64', 'at least 67.18 %', 'about 67.18 %'],
    ['1/4', 'at least 25 %', '25 %'],
    ['201/2000', 'at least 10.05 %', '10.05 %'],
  ])('%s is never rounded up', (text, bound, plain) => {
    const inbreeding = value(parseFraction(text));
    const open = value(completenessOf(pedigree('s', 'd', 'x s d'), 'x', 2));
    const closed = value(completenessOf(pedigree('s', 'd', 'x s d'), 'x', 1));
    expect(sayInbreeding(inbreeding, open)).toBe(`${bound}: 0 of 4 grandparents known`);
    expect(sayInbreeding(inbreeding, closed)).toBe(`${plain}: both parents known, nothing asked beyond`);
  });

  it('of odd figures still is words', () => {
    const open = value(completenessOf(pedigree('x'), 'x', 1));
    expect(sayInbreeding(fraction(-1n, 3n), open)).toBe('not known: 0 of 2 parents known');
    expect(sayInbreeding(ZERO, { ...open, generations: [] })).toMatch(/^0 %/);
  });
});
