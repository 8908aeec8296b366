import { type Day, type EventId, eventIdFrom, type Id, type LogEvent, mintId } from '../../src/core/index.ts';
import { readEvent } from '../../src/store/index.ts';

/** The day on which the sample site is looked at. */
export const ON = '2026-11-25';

/** The n-th thing of the sample site. */
export function idOf(n: number): Id {
  const minted = mintId(9, n);
  if (!minted.ok) throw new Error(minted.problem.message);
  return minted.value;
}

/** The n-th event's id. */
export function eventIdOf(n: number): EventId {
  return eventIdFrom(n, new Uint8Array([0, 0, 0, 0, 0, 0, 0, 0, n >> 8, n]));
}

type Row = readonly [day: string, kind: string, subjects: readonly Id[], payload?: unknown];

/** Events from rows, numbered from `first`; each is read as foreign data is. */
export function eventsOf(rows: readonly Row[], first = 1): LogEvent[] {
  return rows.map(([day, kind, subjects, payload = {}], at) => {
    const n = first + at;
    const ms = Date.parse(`${day}T12:00:00Z`);
    const read = readEvent({
      v: 1,
      id: eventIdOf(n),
      kind,
      at: new Date(ms).toISOString(),
      day: day as Day,
      subjects,
      keeper: 'Ada',
      device: 9,
      seq: n,
      clock: [ms, n],
      payload,
    });
    if (!read.ok) throw new Error(read.problem.message);
    return read.value;
  });
}

const [ROOM, RACK, TUB_1, TUB_2, TUB_3] = [idOf(1), idOf(2), idOf(3), idOf(4), idOf(5)];
/** Due since 24 November, opaque, waiting for the vet, dead, without a plan or a place; and a lot in the freezer. */
export const [MOSS, BRACKEN, FERN, ASH, STRAY, LOT] = [idOf(11), idOf(12), idOf(13), idOf(14), idOf(15), idOf(21)];
/** A tub of the sample site. */
export const TUB = TUB_1;

/** A small invented site. */
export const SITE_ROWS: readonly Row[] = [
  ['2026-01-01', 'site-named', [], { name: 'Sample House', timeZone: 'Etc/UTC', host: 'tubs.example' }],
  ['2026-01-01', 'place-added', [ROOM], { placeKind: 'room', name: 'Room 1', walk: 1 }],
  ['2026-01-01', 'place-added', [RACK], { placeKind: 'rack', name: 'Rack 1', parent: ROOM, walk: 1 }],
  ['2026-01-01', 'place-added', [TUB_1], { placeKind: 'tub', name: '1-01', parent: RACK, walk: 1 }],
  ['2026-01-01', 'place-added', [TUB_2], { placeKind: 'tub', name: '1-02', parent: RACK, walk: 2 }],
  ['2026-01-01', 'place-added', [TUB_3], { placeKind: 'tub', name: '1-03', parent: RACK, walk: 3 }],
  ['2026-01-02', 'animal-added', [FERN], { species: 'Python regius', name: 'Fern', sex: 'female' }],
  ['2026-01-02', 'animal-added', [BRACKEN], { species: 'Pantherophis guttatus', name: 'Bracken', sex: 'male' }],
  ['2026-01-02', 'animal-added', [MOSS], { species: 'Python regius', name: 'Moss', sex: 'male' }],
  ['2026-01-02', 'animal-added', [ASH], { species: 'Boa imperator', name: 'Ash', sex: 'unsexed' }],
  ['2026-01-02', 'animal-added', [STRAY], { species: 'Anilius scytale', name: 'Stray', sex: 'unsexed' }],
  ['2026-01-03', 'animal-moved', [MOSS], { to: TUB_1 }],
  ['2026-01-03', 'animal-moved', [BRACKEN], { to: TUB_2 }],
  ['2026-01-03', 'animal-moved', [FERN], { to: TUB_3 }],
  ['2026-01-04', 'lot-received', [LOT], { prey: 'rat-small', eachG: [60, 100], count: 1 }],
  ['2026-11-01', 'animal-weighed', [MOSS], { weightG: 900 }],
  ['2026-11-01', 'animal-weighed', [BRACKEN], { weightG: 300 }],
  ['2026-11-17', 'prey-offered', [MOSS], { prey: 'rat-small', count: 1, outcome: 'taken' }],
  ['2026-11-10', 'prey-offered', [BRACKEN], { prey: 'mouse-adult', count: 1, outcome: 'taken' }],
  ['2026-11-20', 'opaque-seen', [BRACKEN]],
  ['2026-11-21', 'hold-placed', [FERN], { reason: 'vet', words: 'wheezes' }],
  ['2026-11-22', 'animal-left', [ASH], { how: 'died' }],
];

/** The sample site's log. */
export function siteEvents(): LogEvent[] {
  return eventsOf(SITE_ROWS);
}
