import { describe, expect, it } from 'vitest';
import { clutchesToJudge, judgementOf, partFor } from '../../src/app/season/judging.ts';
import type { JudgedClutch } from '../../src/app/workers/geneticsMessages.ts';
import { seasonClutches } from '../../src/app/workers/seasonClutches.ts';
import { foldFacility, fraction, type Id } from '../../src/core/index.ts';
import { BEECH, LARCH, ODD_CLUTCH, seasonLog, TODAY } from '../browser/seasonHouse.ts';

const FACILITY = foldFacility(seasonLog());
const IDS = clutchesToJudge(FACILITY, TODAY);

const clutch = (id: string, p: readonly [bigint, bigint] | null, more: Partial<JudgedClutch> = {}): JudgedClutch => ({
  id: id as Id,
  p: p === null ? null : fraction(...p),
  why: p === null ? 'no young with traits written' : null,
  noSire: null,
  withoutFather: [],
  ...more,
});

/** Who is flagged, in order, and whether hard. */
function flagged(all: readonly JudgedClutch[], oneIn: 5 | 10 | 20): readonly string[] {
  const made = judgementOf(all, oneIn);
  if (!made.ok) throw new Error(made.problem.message);
  return made.value.flags.map(({ judged, isHard }) => `${judged.id}${isHard ? ' hard' : ''}`);
}

describe('the clutches of a season', () => {
  it('are those with young on record, sent with their parents and young alone', () => {
    expect(IDS).toEqual([ODD_CLUTCH]);
    const part = partFor(FACILITY, IDS);
    expect([...part.animals.values()].map(({ name, number }) => name ?? number).sort()).toEqual(
      [BEECH.name, LARCH.name, 'Y-1', 'Y-2', 'Y-3'].sort(),
    );
  });

  it('say so where a young shows what neither parent is written to carry', () => {
    const [judged] = seasonClutches(
      { ask: 'season-clutches', facility: partFor(FACILITY, IDS), clutches: IDS },
      () => {},
    );
    expect(judged).toMatchObject({ id: ODD_CLUTCH, noSire: 'none of these', p: { top: 0n } });
  });

  // Benjamini & Hochberg 1995: the adjusted p of 1/100, 1/12 and 1/3 are 3/100, 3/24 and 1/3, worked out by hand.
  const THREE = [clutch('c', [1n, 3n]), clutch('b', [1n, 12n]), clutch('a', [1n, 100n])];
  it.each([
    [20, ['a']],
    [10, ['a']],
    [5, ['b', 'a']],
  ] as const)('are flagged together at a rate of 1 in %d', (oneIn, flags) => {
    expect([...flagged(THREE, oneIn)].sort()).toEqual([...flags].sort());
  });

  it('have the impossible first, then the unlikely, then what may have no father; the others are not tested', () => {
    const all = [
      clutch('no father', [1n, 1n], { withoutFather: ['few young, all female'] }),
      clutch('unlikely', [1n, 1000n]),
      clutch('unknown', null),
      clutch('impossible', [0n, 1n]),
      clutch('no sire', null, { noSire: 'none of these' }),
    ];
    expect(flagged(all, 10)).toEqual(['impossible hard', 'no sire hard', 'unlikely', 'no father']);
  });
});
