import { describe, expect, it } from 'vitest';
import type { GeneticProgress } from '../../src/app/workers/geneticsMessages.ts';
import { lineage } from '../../src/app/workers/lineage.ts';
import { fraction, type Parentage } from '../../src/core/index.ts';

const founder = (id: string): Parentage => ({ id, sire: null, dam: null });
const young = (id: string, sire: string, dam: string): Parentage => ({ id, sire, dam });
/** Brother and sister of two founders, and theirs again: F of the third generation 1/4, of the fourth 3/8 (Wright 1922). */
const SIBS = [
  founder('a'),
  founder('b'),
  young('c', 'a', 'b'),
  young('d', 'a', 'b'),
  young('e', 'c', 'd'),
  young('f', 'c', 'd'),
];
const MANY = Array.from({ length: 600 }, (_, at) => founder(`x${at}`));

function asked(animals: readonly Parentage[], of: readonly string[]) {
  const told: GeneticProgress[] = [];
  const found = lineage({ ask: 'lineage', animals, of }, (progress) => told.push(progress));
  if (!found.ok) throw new Error(found.problem.message);
  return { told, ...found.value };
}

describe('kinship in the worker', () => {
  it('is exact for a site’s own pedigree: full sibs 1/4, their young’s young 3/8 (Wright 1922)', () => {
    const { exact, inbreeding, kinship, young: next, completeness } = asked(SIBS, ['e', 'f']);
    expect(exact).toBe(true);
    expect(inbreeding.get('e')).toEqual(fraction(1n, 4n));
    expect(kinship).toEqual([{ pair: ['e', 'f'], share: fraction(3n, 8n) }]);
    expect(next?.inbreeding).toEqual(fraction(3n, 8n));
    expect(next?.completeness.generations.map(({ known, of }) => `${known}/${of}`).slice(0, 4)).toEqual([
      ...['2/2', '4/4', '8/8', '0/16'],
    ]);
    expect(completeness.get('e')?.generations[0]?.known).toBe(2n);
  });

  it('is a double above 600 animals, the same figure, and tells how many animals are done', () => {
    const { exact, young: next, inbreeding, told } = asked([...MANY, ...SIBS], ['e', 'f']);
    expect(exact).toBe(false);
    expect(next?.inbreeding).toBe(0.375);
    expect(inbreeding.get('e')).toBe(0.25);
    expect(told.length).toBeGreaterThan(0);
    for (const { done, of } of told) expect([done >= 0 && done <= of, of > 0]).toEqual([true, true]);
  });

  it('of one animal or three says nothing of young', () => {
    expect(asked(SIBS, ['e']).young).toBeNull();
    const three = asked(SIBS, ['a', 'c', 'e']);
    expect(three.young).toBeNull();
    expect(three.kinship.map(({ share }) => share)).toEqual([fraction(1n, 4n), fraction(1n, 4n), fraction(3n, 8n)]);
  });

  it('of a pedigree that goes round is refused in words', () => {
    const round = [young('a', 'b', 'c'), young('b', 'a', 'c'), founder('c')];
    const found = lineage({ ask: 'lineage', animals: round, of: ['a'] }, () => undefined);
    expect(found.ok ? '' : found.problem.code).toBe('pedigree-cycle');
  });
});
