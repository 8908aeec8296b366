import type { Day } from '../days.ts';
import { type EventOf, lastWritten, laterWriter, type Payload, type SiteEvent } from '../events/index.ts';
import type { EventId, Id } from '../ids.ts';
import { prescriptionsOf } from './prescriptions.ts';
import {
  type AnimalRecord,
  KEPT_OFFERS,
  KEPT_WEIGHTS,
  type KeptPaper,
  type Offer,
  type PlacedHold,
  type SeasonMark,
  type Skip,
  type Weighing,
  withSkip,
} from './record.ts';

/** A record while it is folded; the long lists grow in place and are cut to what is kept at the end. */
type Draft = { -readonly [K in keyof Omit<AnimalRecord, 'offers' | 'weights'>]: AnimalRecord[K] } & {
  offers: Offer[];
  weights: Weighing[];
};
type Facts = Map<string, SiteEvent>;

/** How grams are found for an offer that nobody weighed; the care rules know the prey list. */
export type GramsOf = (prey: string, count: number) => number | null;

/**
 * Folds the standing events of one animal, in the order in which they happened, into its record; null if no event
 * added the animal. An event that makes no sense for it leaves the record as it was.
 */
export function animalRecord(id: Id, events: readonly SiteEvent[], gramsOf: GramsOf): AnimalRecord | null {
  const draft = emptyDraft(id);
  const facts: Facts = new Map();
  let added = false;
  for (const event of events) {
    added ||= event.kind === 'animal-added' && event.subjects[0] === id;
    take(draft, facts, event, gramsOf);
  }
  if (!added) return null;
  draft.lastWritten = lastWritten(events);
  draft.prescriptions = prescriptionsOf(id, events);
  draft.offers = draft.offers.slice(-KEPT_OFFERS);
  draft.weights = draft.weights.slice(-KEPT_WEIGHTS);
  return draft;
}

function take(draft: Draft, facts: Facts, event: SiteEvent, gramsOf: GramsOf): void {
  // A pairing is about both animals, everything else about its first subject only.
  takePairing(draft, event);
  if (event.subjects[0] !== draft.id) return;
  takeFact(draft, facts, event);
  takeFeeding(draft, event, gramsOf);
  takeCare(draft, event);
  takeSeason(draft, event);
}

/** Facts that have one value: the later writer wins, whenever its event happened. */
function takeFact(draft: Draft, facts: Facts, event: SiteEvent): void {
  switch (event.kind) {
    case 'animal-added':
      takeArrival(draft, facts, event);
      return;
    case 'animal-named':
      if (wins(facts, 'name', event)) draft.name = event.payload.name;
      return;
    case 'animal-sexed':
      if (wins(facts, 'sex', event)) draft.sex = event.payload.sex;
      return;
    case 'traits-set':
      if (wins(facts, 'traits', event)) draft.traits = { code: event.payload.code, words: event.payload.words ?? null };
      return;
    case 'parents-set':
      if (wins(facts, 'parents', event)) takeParents(draft, event.payload);
      return;
    case 'animal-flagged':
      if (wins(facts, 'flags', event)) draft.flags = event.payload.flags;
      return;
    case 'origin-set':
      if (wins(facts, 'origin', event)) takeOrigin(draft, event.payload);
      return;
    case 'microchip-set':
      if (wins(facts, 'microchip', event)) draft.microchip = event.payload.code;
      return;
    case 'feed-plan-set':
      if (wins(facts, 'plan', event)) draft.plan = event.payload;
      return;
  }
}

function takeArrival(draft: Draft, facts: Facts, event: Extract<SiteEvent, { kind: 'animal-added' }>): void {
  const said = event.payload;
  if (!wins(facts, 'added', event)) return;
  draft.addedOn = event.day;
  draft.species = said.species;
  draft.number = said.number ?? null;
  draft.hatchedOn = (said.hatchedOn as Day | undefined) ?? null;
  draft.acquiredOn = (said.acquiredOn as Day | undefined) ?? null;
  if (wins(facts, 'origin', event)) takeOrigin(draft, said);
  draft.clutch = (said.clutch as Id | undefined) ?? null;
  if (wins(facts, 'parents', event)) takeParents(draft, said);
  if (said.name !== undefined && wins(facts, 'name', event)) draft.name = said.name;
  if (wins(facts, 'sex', event)) draft.sex = said.sex;
}

function takeOrigin(draft: Draft, said: Payload<'origin-set'>): void {
  draft.source = said.source ?? null;
  draft.licence = said.licence ?? null;
  draft.originPapers = said.papers ?? null;
}

function takeParents(draft: Draft, { sire, dam }: { sire?: string | undefined; dam?: string | undefined }): void {
  draft.sire = (sire as Id | undefined) ?? null;
  draft.dam = (dam as Id | undefined) ?? null;
}

function wins(facts: Facts, fact: string, event: SiteEvent): boolean {
  const holder = facts.get(fact);
  if (holder && laterWriter(holder, event) > 0) return false;
  facts.set(fact, event);
  return true;
}

function takeFeeding(draft: Draft, event: SiteEvent, gramsOf: GramsOf): void {
  if (event.kind === 'prey-offered') {
    const { prey, count, outcome } = event.payload;
    const totalG = event.payload.totalG ?? gramsOf(prey, count);
    const offer = { day: event.day, prey, count, totalG, taken: outcome === 'taken' };
    draft.offers.push(offer);
    if (offer.taken) draft.lastTaken = offer;
    if (offer.taken) draft.mealsTaken += 1;
  } else if (event.kind === 'regurgitation-seen') {
    draft.regurgitations = [...draft.regurgitations, event.day];
  } else if (event.kind === 'vet-cleared') {
    draft.vetClearedOn = event.day;
    draft.regurgitationsCleared = draft.regurgitations.length;
    draft.holds = draft.holds.filter((hold) => hold.reason !== 'vet');
  } else if (event.kind === 'hold-placed') {
    draft.holds = [...withoutHold(draft, event.payload.reason), placed(event)];
  } else if (event.kind === 'hold-lifted') {
    draft.holds = withoutHold(draft, event.payload.reason);
  }
}

function placed(event: Extract<SiteEvent, { kind: 'hold-placed' }>): PlacedHold {
  const { reason, until, words } = event.payload;
  return { reason, since: event.day, until: (until as Day | undefined) ?? null, words: words ?? null };
}

function withoutHold(draft: Draft, reason: PlacedHold['reason']): readonly PlacedHold[] {
  return draft.holds.filter((hold) => hold.reason !== reason);
}

function takeCare(draft: Draft, event: SiteEvent): void {
  switch (event.kind) {
    case 'animal-moved':
      draft.place = event.payload.to as Id;
      draft.movedOn = event.day;
      return;
    case 'animal-left':
      draft.left = {
        day: event.day,
        how: event.payload.how,
        to: event.payload.to ?? null,
        cause: event.payload.cause ?? null,
      };
      return;
    case 'animal-weighed':
      addWeight(draft, {
        day: event.day,
        weightG: event.payload.weightG,
        ...(event.payload.confirmed && { doubted: true }),
      });
      return;
    case 'opaque-seen':
      draft.opaqueOn = event.day;
      return;
    case 'shed-seen':
      if (draft.opaqueOn !== null) draft.opaqueEndedOn = event.day;
      draft.opaqueOn = null;
      draft.firstShedOn ??= event.day;
      draft.lastShedOn = event.day;
      draft.sheds += 1;
      return;
    case 'cooling-started':
      draft.cooling = { from: event.day, to: null };
      return;
    case 'cooling-ended':
      if (draft.cooling) draft.cooling = { ...draft.cooling, to: event.day };
      return;
    case 'animal-measured':
      takeLength(draft, event);
      return;
    case 'health-looked':
      draft.lastLook = { day: event.day, well: event.payload.well, words: event.payload.words ?? null };
      return;
    case 'task-skipped':
      draft.skipped = {
        ...draft.skipped,
        [event.payload.task]: withSkip(draft.skipped[event.payload.task], skipOf(event)),
      };
      return;
    case 'paper-kept':
      draft.papers = [...draft.papers, paperOf(event)];
      return;
    case 'animal-offered':
      draft.offer = { since: draft.offer?.since ?? event.day, ...offerOf(event.payload) };
      return;
    case 'offer-ended':
      draft.offer = null;
      return;
    case 'tag-printed':
      draft.saleTag = { revision: event.payload.revision, day: event.day };
      return;
    case 'card-printed':
      draft.printed = { revision: event.payload.revision, day: event.day };
      return;
  }
}

function takeLength(draft: Draft, event: EventOf<'animal-measured'>): void {
  const { lengthMm, of, guessed } = event.payload;
  const others = draft.lengths.filter((one) => one.of !== of);
  draft.lengths = [...others, { day: event.day, lengthMm, of, guessed: guessed ?? false }];
}

function offerOf({ priceMinor, words }: Payload<'animal-offered'>) {
  return { priceMinor, words: words ?? null };
}

function skipOf({ day, keeper, payload }: EventOf<'task-skipped'>): Skip {
  return { day, keeper, why: payload.why ?? null };
}

function paperOf({ id, day, payload }: EventOf<'paper-kept'>): KeptPaper {
  return { id, day, of: (payload.of as EventId | undefined) ?? null, words: payload.words ?? null };
}

function addWeight(draft: Draft, weighing: Weighing): void {
  draft.weights.push(weighing);
  draft.resetOn ??= weighing.day;
  if (draft.peak === null || weighing.weightG >= draft.peak.weightG) draft.peak = weighing;
}

function takePairing(draft: Draft, event: SiteEvent): void {
  if (event.kind !== 'pairing-started' && event.kind !== 'pairing-ended' && event.kind !== 'lock-seen') return;
  const mate = event.subjects.find((one) => one !== draft.id);
  if (event.kind !== 'pairing-ended') mark(draft, event);
  if (mate === undefined || event.kind === 'lock-seen') return;
  const others = draft.together.filter((one) => one.with !== mate);
  draft.together = event.kind === 'pairing-ended' ? others : [...others, { with: mate, since: event.day }];
  if (event.kind === 'pairing-ended') draft.apartOn = event.day;
}

function takeSeason(draft: Draft, event: SiteEvent): void {
  if (event.kind === 'follicles-measured') {
    mark(draft, event);
    return;
  }
  if (event.kind === 'ovulation-seen') {
    draft.gravidSince = event.day;
    mark(draft, event);
    return;
  }
  if (event.kind === 'pre-lay-shed-seen') {
    draft.gravidSince ??= event.day;
    mark(draft, event);
    return;
  }
  if (event.kind !== 'clutch-laid' && event.kind !== 'young-born') return;
  mark(draft, event);
  draft.gravidSince = null;
  draft.laidOn = event.day;
  // Laying takes a quarter to a third of her mass: what she weighed before is no longer a measure (CARE-LAYING).
  draft.resetOn = event.day;
  draft.peak = null;
  if (event.payload.damG !== undefined) addWeight(draft, { day: event.day, weightG: event.payload.damG });
}

const MARKS = {
  'pairing-started': 'paired',
  'lock-seen': 'lock',
  'follicles-measured': 'follicles',
  'ovulation-seen': 'ovulation',
  'pre-lay-shed-seen': 'pre-lay shed',
  'clutch-laid': 'laid',
  'young-born': 'born',
} as const satisfies Partial<Record<SiteEvent['kind'], SeasonMark['kind']>>;

function mark(draft: Draft, event: Extract<SiteEvent, { kind: keyof typeof MARKS }>): void {
  const mate =
    event.kind === 'clutch-laid' || event.kind === 'young-born'
      ? (event.payload.sire as Id | undefined)
      : event.subjects.find((one) => one !== draft.id);
  const size = event.kind === 'follicles-measured' ? { largestMm: event.payload.largestMm } : {};
  draft.season = [...draft.season, { kind: MARKS[event.kind], day: event.day, with: mate ?? null, ...size }];
}

function emptyDraft(id: Id): Draft {
  return {
    id,
    addedOn: '1970-01-01' as Day,
    species: '',
    name: null,
    number: null,
    sex: 'unsexed',
    hatchedOn: null,
    acquiredOn: null,
    source: null,
    licence: null,
    originPapers: null,
    microchip: null,
    sire: null,
    dam: null,
    clutch: null,
    traits: null,
    flags: [],
    place: null,
    movedOn: null,
    left: null,
    lengths: [],
    lastLook: null,
    skipped: {},
    papers: [],
    plan: null,
    offers: [],
    lastTaken: null,
    mealsTaken: 0,
    weights: [],
    resetOn: null,
    peak: null,
    regurgitations: [],
    vetClearedOn: null,
    regurgitationsCleared: 0,
    opaqueOn: null,
    opaqueEndedOn: null,
    firstShedOn: null,
    lastShedOn: null,
    sheds: 0,
    holds: [],
    prescriptions: [],
    cooling: null,
    season: [],
    together: [],
    apartOn: null,
    gravidSince: null,
    laidOn: null,
    offer: null,
    saleTag: null,
    printed: null,
    lastWritten: {},
  };
}
