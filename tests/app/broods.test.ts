import { describe, expect, test } from 'vitest';
import { broodsOf } from '../../src/app/pedigree/descendants.ts';
import { added, CLUTCH, DAM, id, SIRE, site } from '../core/log.ts';

const young = (n: number, hatchedOn: string, clutch: typeof CLUTCH | null) =>
  added({ dam: DAM, sire: SIRE, hatchedOn, ...(clutch && { clutch }) }, { subjects: [id(n)] }, hatchedOn);

describe('the young of an animal', () => {
  const parents = [added({ sex: 'female' }, { subjects: [DAM] }), added({ sex: 'male' }, { subjects: [SIRE] })];

  test('of one clutch stand together under its first day, also where they hatched over two', () => {
    const facility = site(
      ...parents,
      young(100, '2026-06-06', CLUTCH),
      young(101, '2026-06-05', CLUTCH),
      young(102, '2026-06-06', CLUTCH),
    );
    const broods = broodsOf(facility, DAM);
    expect(broods.map(({ hatched, mate, young }) => [hatched, mate, young.length])).toEqual([['2026-06-05', SIRE, 3]]);
  });

  test('without a clutch stand by day and other parent, the latest first', () => {
    const facility = site(...parents, young(100, '2025-06-05', null), young(101, '2026-06-06', null));
    expect(broodsOf(facility, SIRE).map(({ hatched }) => hatched)).toEqual(['2026-06-06', '2025-06-05']);
  });
});
