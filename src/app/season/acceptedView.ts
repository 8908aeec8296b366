import {
  type Day,
  type Facility,
  type FollowedPair,
  followPlan,
  lociFor,
  nameOf,
  type PairState,
  pairingWelfare,
  parentOf,
  type SeasonPlan,
  sayDayShort,
  sayKinship,
  sayPlanned,
} from '../../core/index.ts';
import { sayWarnings } from './planWords.ts';

/** The states of a pair, in the order in which they are counted. */
export const PAIR_STATES = ['open', 'made', 'out'] as const satisfies readonly PairState['state'][];

/** How the states are called in a sentence. */
const STATE_WORDS: Readonly<Record<PairState['state'], string>> = {
  open: 'open',
  made: 'made',
  out: 'fallen out',
};

/** How they are called where each is chosen. */
export const STATE_TITLES: Readonly<Record<PairState['state'], string>> = {
  open: 'Open',
  made: 'Made',
  out: 'Fallen out',
};

/** A plan’s pairs as they are shown, and how many of each state. */
export interface AcceptedView {
  readonly pairs: readonly AcceptedPair[];
  readonly counts: Readonly<Record<PairState['state'], number>>;
}

export interface AcceptedPair extends FollowedPair {
  /** What became of it, in words. */
  readonly says: string;
  readonly reasons: readonly string[];
  readonly warnings: readonly string[];
}

/** Follows a plan up to today; warnings are those of the records as they stand now. */
export function acceptedView(facility: Facility, plan: SeasonPlan, today: Day): AcceptedView {
  const pairs = followPlan(facility, plan, today).map(
    (pair): AcceptedPair => ({
      ...pair,
      says: sayNow(facility, pair),
      reasons: [...sayPlanned(pair, plan), sayKinship(pair.kinship)],
      warnings: warningsOf(facility, pair),
    }),
  );
  const count = (state: PairState['state']): number => pairs.filter(({ now }) => now.state === state).length;
  return { pairs, counts: { open: count('open'), made: count('made'), out: count('out') } };
}

/** `made 3 Nov 2026, 2 visits`, `still open; she was with Cedar meanwhile`, `fallen out: Beech died 2 Dec 2026`. */
export function sayNow(facility: Facility, { now }: FollowedPair): string {
  switch (now.state) {
    case 'made':
      return `made ${sayDayShort(now.on)}${now.visits > 1 ? `, ${now.visits} visits` : ''}`;
    case 'open':
      return now.meanwhile.length === 0
        ? 'still open'
        : `still open; she was with ${now.meanwhile.map((id) => nameOf(facility, id)).join(' and ')} meanwhile`;
    case 'out':
      return `fallen out: ${now.why}`;
    default:
      return now satisfies never;
  }
}

/** `3 open, 1 made, 1 fallen out`; what there is none of is left out. */
export function sayCounts(counts: AcceptedView['counts']): string {
  return PAIR_STATES.filter((state) => counts[state] > 0)
    .map((state) => `${counts[state]} ${STATE_WORDS[state]}`)
    .join(', ');
}

function warningsOf(facility: Facility, { male, female }: FollowedPair): readonly string[] {
  const [sire, dam] = [facility.animals.get(male), facility.animals.get(female)];
  if (sire === undefined || dam === undefined) return [];
  const parents = [parentOf(facility, sire), parentOf(facility, dam)] as const;
  if (!parents[0].ok || !parents[1].ok) return [];
  const { loci } = lociFor(facility, sire.species);
  return sayWarnings(pairingWelfare(parents[0].value, parents[1].value, { loci }));
}
