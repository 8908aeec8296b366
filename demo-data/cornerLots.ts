import { type Day, type Id, mintId, type Payload } from '../src/core/index.ts';

type Deed = {
  [K in 'lot-received' | 'lot-used' | 'lot-wasted' | 'stock-counted']: {
    readonly on: Day;
    readonly kind: K;
    readonly payload: Payload<K>;
  };
}['lot-received' | 'lot-used' | 'lot-wasted' | 'stock-counted'];

/** A lot that came beside the regular orders and lies at the back. */
export interface CornerLot {
  /** Its number among the ids that the third phone has minted. */
  readonly minted: number;
  readonly deeds: readonly Deed[];
}

/** One that passed its day, and one that nobody wrote a day for: both happen in every freezer. All of it is invented. */
export const CORNER_LOTS: readonly CornerLot[] = [
  {
    minted: 0,
    deeds: [
      {
        on: '2026-02-10' as Day,
        kind: 'lot-received',
        payload: { prey: 'mouse-jumbo', eachG: [35, 48], count: 40, useBy: '2026-11-15', source: 'Reedbank Mousery' },
      },
      { on: '2026-02-24' as Day, kind: 'lot-used', payload: { count: 18 } },
      { on: '2026-03-10' as Day, kind: 'lot-used', payload: { count: 14 } },
      { on: '2026-06-02' as Day, kind: 'lot-wasted', payload: { count: 2, why: 'bag open' } },
    ],
  },
  {
    minted: 1,
    deeds: [
      {
        on: '2026-04-21' as Day,
        kind: 'lot-received',
        payload: {
          prey: 'rat-fuzzy',
          eachG: [10, 18],
          count: 60,
          source: 'Reedbank Mousery',
          topical: 'dusted with calcium',
        },
      },
      { on: '2026-05-05' as Day, kind: 'lot-used', payload: { count: 21 } },
      { on: '2026-09-08' as Day, kind: 'stock-counted', payload: { count: 38 } },
      { on: '2026-09-15' as Day, kind: 'lot-used', payload: { count: 12 } },
    ],
  },
];

/** The printed id of such a lot; minted by another device than the desk, so that no other id moves. */
export function cornerId({ minted }: CornerLot): Id {
  const id = mintId(4, minted);
  if (!id.ok) throw new RangeError(id.problem.message);
  return id.value;
}
