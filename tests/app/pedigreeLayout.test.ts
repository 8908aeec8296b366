import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Form, layOut, type Spot, type Tree } from '../../src/app/pedigree/layout.ts';
import { relationOf } from '../../src/app/pedigree/relation.ts';
import { ringIn } from '../../src/app/pedigree/ring.ts';
import { placeOf, sayGeneration, sayWay, stepFrom } from '../../src/app/pedigree/walk.ts';
import { type Parentage, sayFraction } from '../../src/core/index.ts';

/** `c=a×b`, a dot for an unknown parent; parents without a line of their own are added as founders. */
function pedigree(text: string): readonly Parentage[] {
  const lines = text.split(' ').map((line): Parentage => {
    const [id = '', parents = '.×.'] = line.split('=');
    const [sire, dam] = parents.split('×').map((one) => (one === '.' ? null : one));
    return { id, sire: sire ?? null, dam: dam ?? null };
  });
  const known = new Set(lines.map(({ id }) => id));
  const named = new Set(lines.flatMap(({ sire, dam }) => [sire, dam]).filter((id) => id !== null));
  return [...lines, ...[...named].filter((id) => !known.has(id)).map((id) => ({ id, sire: null, dam: null }))];
}

const draw = (text: string, of: string, generations = 3, form: Form = 'beside'): Tree =>
  layOut(pedigree(text), { of, generations, form });
const at = ({ spots }: Tree, way: string): Spot | undefined => spots.find((spot) => spot.way === way);
const inWords = ({ spots }: Tree): string => spots.map(({ way, id, row }) => `${way}:${id ?? '?'}@${row}`).join(' ');

describe('a drawing beside', () => {
  it('puts parents around their young, sires above dams', () => {
    expect(inWords(draw('c=a×b', 'c'))).toBe('S:a@0 :c@0.5 D:b@1');
  });
  it('gives a column to each generation', () => {
    const tree = draw('e=c×d c=a×b', 'e');
    expect(tree.spots.map(({ column }) => column)).toEqual([2, 1, 2, 0, 1]);
    expect([tree.columns, tree.rows]).toEqual([3, 3]);
  });
  it('draws one unknown parent as an open end, and two as none', () => {
    const tree = draw('c=a×.', 'c');
    expect(at(tree, 'D')).toMatchObject({ id: null, is: 'unknown' });
    expect(at(tree, 'S')).toMatchObject({ above: 'unknown' });
    expect(at(tree, 'SS')).toBeUndefined();
  });
  it('says where known parents are not shown', () => {
    expect(at(draw('e=c×d c=a×b', 'e', 1), 'S')).toMatchObject({ above: 'further' });
    expect(at(draw('e=c×d c=a×b', 'e', 1), 'D')).toMatchObject({ above: 'unknown' });
  });
  it('draws an animal without parents alone', () => {
    expect(inWords(draw('a', 'a'))).toBe(':a@0');
  });
});

describe('a drawing below', () => {
  it('begins with the animal and has one line for each', () => {
    expect(inWords(draw('e=c×d c=a×b', 'e', 3, 'below'))).toBe(':e@0 S:c@1 SS:a@2 SD:b@3 D:d@4');
  });
});

describe('an ancestor that comes up twice', () => {
  it('is drawn once with its ancestors and again without', () => {
    const tree = draw('d=c×b c=a×b b=x×y', 'd');
    expect(at(tree, 'D')).toMatchObject({ id: 'b', is: 'drawn', above: 'drawn', mark: 'a' });
    expect(at(tree, 'SD')).toMatchObject({ id: 'b', is: 'again', above: 'elsewhere', mark: 'a' });
    expect(at(tree, 'SDS')).toBeUndefined();
  });
  it('keeps its ancestors where it is nearest, and of equals on the sire’s side', () => {
    const tree = draw('e=c×d c=a×b d=a×b a=x×y', 'e');
    expect(at(tree, 'SS')).toMatchObject({ is: 'drawn' });
    expect(at(tree, 'DS')).toMatchObject({ is: 'again' });
  });
  it('has a letter of its own, and nobody else has one', () => {
    const tree = draw('e=c×d c=a×b d=a×b', 'e');
    expect(tree.spots.map(({ id, mark }) => `${id}${mark ?? ''}`)).toEqual(['aa', 'c', 'bb', 'e', 'aa', 'd', 'bb']);
  });
});

describe('a ring of parents', () => {
  const RING = 'a=b×x b=c×y c=a×z';
  it('is drawn once round, and marked where it closes', () => {
    expect(at(draw(RING, 'a', 8), 'SSS')).toMatchObject({ id: 'a', is: 'ring', above: 'elsewhere' });
  });
  it('is told link by link', () => {
    expect(ringIn(pedigree(RING)).map(({ id, above }) => `${id} ${above}`)).toEqual(['a sire', 'b sire', 'c sire']);
  });
  it('is found above an animal that is not in it', () => {
    expect(ringIn(pedigree('k=a×. a=.×b b=.×a')).map(({ id }) => id)).toEqual(['a', 'b']);
  });
  it('may be one animal', () => {
    expect(ringIn(pedigree('a=a×b'))).toEqual([{ id: 'a', above: 'sire' }]);
    expect(at(draw('a=a×b', 'a'), 'S')).toMatchObject({ is: 'ring' });
  });
  it('is not seen where there is only a loop', () => {
    expect(ringIn(pedigree('e=c×d c=a×b d=a×b'))).toEqual([]);
  });
  it('of 20,000 animals does not go deeper than the stack', () => {
    const long = Array.from({ length: 20_000 }, (_, n) => ({ id: `${n}`, sire: `${(n + 1) % 20_000}`, dam: null }));
    expect(ringIn(long)).toHaveLength(20_000);
  });
});

/** Any parents at all, rings and animals that are sire and dam of one young included. */
const anyPedigree = fc.integer({ min: 1, max: 12 }).chain((size) => {
  const parent = fc.option(fc.integer({ min: 0, max: size - 1 }).map(String));
  return fc.tuple(
    ...Array.from({ length: size }, (_, n) => fc.record({ id: fc.constant(`${n}`), sire: parent, dam: parent })),
  );
});

describe('any drawing', () => {
  const anyForm = fc.constantFrom<Form>('beside', 'below');
  it('ends, walks up from nobody twice and keeps everybody apart', () => {
    fc.assert(
      fc.property(anyPedigree, fc.integer({ min: 1, max: 8 }), anyForm, (animals, generations, form) => {
        const { spots, columns } = layOut(animals, { of: '0', generations, form });
        const drawn = spots.filter(({ is }) => is === 'drawn').map(({ id }) => id);
        expect(new Set(drawn).size).toBe(drawn.length);
        expect(columns).toBeLessThanOrEqual(generations + 1);
        for (const one of spots)
          for (const other of spots)
            if (one !== other && one.column === other.column)
              expect(Math.abs(one.row - other.row)).toBeGreaterThanOrEqual(1);
      }),
    );
  });
  it('has sires above dams', () => {
    fc.assert(
      fc.property(anyPedigree, anyForm, (animals, form) => {
        const tree = layOut(animals, { of: '0', generations: 6, form });
        for (const { way, row } of tree.spots) {
          const sire = way.endsWith('D') ? at(tree, `${way.slice(0, -1)}S`) : undefined;
          if (sire !== undefined) expect(sire.row).toBeLessThan(row);
        }
      }),
    );
  });
});

describe('a walk in a drawing', () => {
  const tree = draw('e=c×d c=a×. d=x×y', 'e');
  it.each([
    ['', 'parents', 'S'],
    ['S', 'after', 'D'],
    ['D', 'before', 'S'],
    ['S', 'parents', 'SS'],
    ['SS', 'after', 'DS'],
    ['SS', 'before', 'SS'],
    ['DD', 'parents', 'DD'],
    ['DD', 'young', 'D'],
    ['', 'young', ''],
    ['DD', 'start', ''],
  ] as const)('from “%s” to the %s leads to “%s”', (from, step, to) => {
    expect(stepFrom(tree, from, step)).toBe(to);
  });
  it('finds where an animal is drawn with its ancestors', () => {
    expect(placeOf(draw('e=c×d c=a×b d=a×b', 'e'), 'b')).toBe('SD');
    expect(placeOf(tree, 'nobody')).toBeNull();
  });
  it('names ways and generations', () => {
    expect(['', 'S', 'SD', 'DSS'].map(sayWay)).toEqual([
      'the animal itself',
      'sire',
      'sire’s dam',
      'dam’s sire’s sire',
    ]);
    expect([1, 2, 3, 4].map(sayGeneration)).toEqual(['parents', 'grandparents', 'great-grandparents', 'generation 4']);
  });
});

describe('the everyday word', () => {
  // The usual kinships follow from the definition, Wright 1922; also Mrode, Linear Models, chapter 2 (from memory).
  const FAMILY = 'c=a×b d=a×b h=a×m e=c×n f=d×o g=e×p';
  it.each([
    ['a', 'c', 'parent and young', '1/4'],
    ['c', 'd', 'full siblings', '1/4'],
    ['c', 'h', 'half siblings', '1/8'],
    ['e', 'a', 'grandparent and grand-young', '1/8'],
    ['e', 'd', 'a young and a full sibling of its parent', '1/8'],
    ['e', 'f', 'first cousins', '1/16'],
  ])('for %s and %s is %s, usually %s', (a, b, says, usual) => {
    for (const relation of [relationOf(pedigree(FAMILY), a, b), relationOf(pedigree(FAMILY), b, a)]) {
      expect(relation?.says).toBe(says);
      expect(relation && sayFraction(relation.usual)).toBe(usual);
    }
  });
  it('is missing where there is none', () => {
    expect(relationOf(pedigree(FAMILY), 'm', 'n')).toBeNull();
    expect(relationOf(pedigree(FAMILY), 'g', 'f')).toBeNull();
  });
});
