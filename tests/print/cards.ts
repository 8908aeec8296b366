import {
  type CardContent,
  type CardFlag,
  type CardLine,
  type CardSlot,
  type Day,
  fingerprint,
  type Id,
  isDay,
  mintId,
  sayId,
} from '../../src/core/index.ts';

/** Slot, rank, strength and one to three forms, longest first. */
export type LineRow = readonly [slot: CardSlot, rank: number, strong: boolean, ...forms: readonly string[]];
export type FlagRow = readonly [kind: CardFlag['kind'], ...forms: readonly string[]];

/** The n-th id of device 3. */
export function idOf(n: number): Id {
  const minted = mintId(3, n);
  if (!minted.ok) throw new RangeError(minted.problem.message);
  return minted.value;
}

/** A day that is written right. */
export function onDay(text: string): Day {
  if (!isDay(text)) throw new RangeError(text);
  return text;
}

/** A card with made-up content. */
export function cardOf(n: number, lines: readonly LineRow[], flags: readonly FlagRow[] = []): CardContent {
  const id = idOf(n);
  return {
    id,
    display: sayId(id),
    lines: lines.map(([slot, rank, strong, ...forms]): CardLine => ({ slot, rank, strong, ...threeOf(forms) })),
    flags: flags.map(([kind, ...forms]): CardFlag => ({ kind, ...threeOf(forms) })),
    revision: fingerprint(JSON.stringify([n, lines, flags])),
  };
}

function threeOf([long = '', medium = long, short = medium]: readonly string[]) {
  return { long, medium, short };
}

export const SPARSE: readonly LineRow[] = [
  ['name', 1, true, 'Nightjar'],
  ['sex', 1, true, '1.0'],
  ['species', 1, false, 'Ball python', 'Ball python', 'P. regius'],
  ['due', 1, true, 'Due Tue 1 Dec 2026', 'Due Tue 1 Dec', 'Due 1 Dec'],
];

export const USUAL: readonly LineRow[] = [
  ['name', 1, true, 'Marigold of the Lower Shelf', 'Marigold', 'Marigold'],
  ['sex', 1, true, '0.1'],
  ['species', 1, false, 'Ball python (Python regius)', 'Ball python', 'P. regius'],
  ['traitCode', 2, true, 'Pst/+ Cln/cln-h Pd/+'],
  [
    'traitWords',
    3,
    false,
    'Pastel, het Clown, 66 % poss het Piebald',
    'Pastel het Clown 66 % ph Pied',
    'Pastel het Clown',
  ],
  ['dates', 3, false, 'Hatched 14 Jul 2023 here', 'Hatched 14 Jul 2023', 'h 14 Jul 2023'],
  ['weight', 2, false, '1,412 g on 9 Nov 2026, +38 g', '1,412 g on 9 Nov 2026', '1,412 g 9 Nov'],
  ['feed', 1, false, '1 × small rat, 52 g, every 10–14 days', '1 × small rat 52 g, 10–14 d', '1 rat 52 g'],
  ['due', 1, true, 'Due Tue 1 Dec 2026', 'Due Tue 1 Dec', 'Due 1 Dec'],
  ['place', 2, true, 'Room B · Rack 4 · Tub 17', 'B · Rack 4 · 17', 'B4-17'],
];

export const CROWDED: readonly LineRow[] = [
  ['name', 1, true, 'Ångström Éclair de Żubrówka the Second', 'Ångström Éclair II', 'Ångström'],
  ['sex', 1, true, '0.0.1'],
  ['species', 1, false, 'Reticulated python (Malayopython reticulatus)', 'Reticulated python', 'M. reticulatus'],
  [
    'traitCode',
    2,
    true,
    'Pst/pst Cln/cln Pd/+ Ax/ax-h Yb/yb Mj/m+',
    'Pst/pst Cln/cln Pd/+ Ax/ax-h',
    'Pst/pst Cln/cln …',
  ],
  [
    'traitWords',
    3,
    false,
    'Super Pastel Clown Yellowbelly Mojave, het Piebald, 66 % poss het Axanthic, proven',
    'Super Pastel Clown YB Mojave het Pied 66 % ph Axanthic',
    'Super Pastel Clown +4',
  ],
  [
    'dates',
    3,
    false,
    'Hatched 14 Jul 2023 here · acquired 2 Feb 2024',
    'h 14 Jul 2023 · a 2 Feb 2024',
    'h 14 Jul 2023',
  ],
  ['weight', 2, false, '12,412 g on 9 Nov 2026, −338 g in 41 days', '12,412 g on 9 Nov, −338 g', '12,412 g 9 Nov'],
  [
    'feed',
    1,
    false,
    '1 × rabbit, 620 g, every 21–28 days; offer by tongs only',
    '1 × rabbit 620 g, 21–28 d',
    '1 rabbit 620 g',
  ],
  ['due', 1, true, 'Due Tue 1 Dec 2026, after the vet’s word', 'Due Tue 1 Dec, vet first', 'Due 1 Dec'],
  [
    'pairings',
    3,
    false,
    'With K2M4-77QA 3×, last lock 11 Nov; with 9QXA-0B1C 1×',
    'Locks: K2M4-77QA 11 Nov ×3',
    'Locks 11 Nov',
  ],
  ['place', 2, true, 'Quarantine room, rack 12, tub 17 (left)', 'Q · Rack 12 · 17 left', 'Q12-17'],
];

export const FLAGS: readonly FlagRow[] = [
  ['hold', 'HOLD: no feed until the vet’s word (since 22 Nov)', 'HOLD until the vet’s word', 'HOLD · vet'],
  ['treatment', 'Under treatment until 4 Dec', 'Treatment to 4 Dec', 'Treatment'],
  ['quarantine', 'Quarantine until 20 Jan 2027', 'Quarantine to 20 Jan', 'Quarantine'],
  ['not-for-sale', 'Not for sale', 'Not for sale', 'NFS'],
];
