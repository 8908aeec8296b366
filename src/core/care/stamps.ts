import type { Action } from './decide.ts';

/** An action picked once and put on every card scanned until it is put down. */
export interface Stamp {
  /** Also the text on the wall sheet, in capitals after `STAMP:`. */
  readonly id: string;
  readonly words: string;
  /** What it does; null where each card needs something of its own. */
  readonly action: Action | null;
  /** What each card needs besides: a weight, the place or the mate that is scanned after it; `season`: what is known of hers. */
  readonly needs?: 'weight' | 'place' | 'mate' | 'season';
}

/** The stamps of the wall sheet, in the order of a feeding evening. */
export const STAMPS: readonly Stamp[] = [
  { id: 'fed-as-planned', words: 'fed as planned', action: { do: 'fed-as-planned' } },
  { id: 'refused', words: 'refused', action: { do: 'refused' } },
  { id: 'weighed', words: 'weighed', action: null, needs: 'weight' },
  { id: 'opaque', words: 'opaque', action: { do: 'opaque' } },
  { id: 'shed', words: 'shed', action: { do: 'shed', whole: true } },
  { id: 'water', words: 'water changed', action: { do: 'water' } },
  { id: 'spot-cleaned', words: 'spot cleaned', action: { do: 'cleaned', how: 'spot' } },
  { id: 'cleaned', words: 'cleaned in full', action: { do: 'cleaned', how: 'full' } },
  { id: 'moved', words: 'moved', action: null, needs: 'place' },
  { id: 'paired', words: 'paired', action: null, needs: 'mate' },
  { id: 'apart', words: 'pairing ended', action: null, needs: 'season' },
  { id: 'lock', words: 'lock seen', action: null, needs: 'season' },
  { id: 'ovulation', words: 'ovulation seen', action: null, needs: 'season' },
  { id: 'pre-lay-shed', words: 'pre-lay shed seen', action: null, needs: 'season' },
];

/** The stamp of that id; capitals do not matter. */
export function stampOf(id: string): Stamp | undefined {
  const wanted = id.toLowerCase();
  return STAMPS.find((stamp) => stamp.id === wanted);
}
