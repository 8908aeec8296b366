import { type Day, sayDayShort } from '../days.ts';
import { entries } from '../events/effective.ts';
import { isKnown, type LogEvent, type SiteEvent } from '../events/index.ts';
import type { EventId, Id } from '../ids.ts';
import { sayPrey } from '../stock/index.ts';
import { sayGrams } from '../units.ts';

/** Which chip of the ledger shows a line. */
export const LEDGER_CHIPS = ['feeds', 'weights', 'sheds', 'season', 'holds', 'moves', 'notes', 'papers'] as const;
export type LedgerChip = (typeof LEDGER_CHIPS)[number];

/** One line of the ledger. */
export interface LedgerLine {
  readonly id: EventId;
  readonly day: Day;
  readonly at: string;
  readonly words: string;
  readonly keeper: string;
  readonly chip: LedgerChip;
  /** Struck through: a slip took it back. */
  readonly undone: boolean;
  readonly amended: boolean;
  readonly kind: string;
}

/** Names for other subjects in a line; a stranger is shown by its id. */
export type NameOf = (id: Id) => string;

/** An animal's events as lines, newest first; slips show on the lines they correct and not as lines of their own. */
export function ledger(history: readonly LogEvent[], nameOf: NameOf, about: Id): readonly LedgerLine[] {
  const lines: LedgerLine[] = [];
  for (const { event, undone, amended } of entries(history)) {
    if (event.kind === 'slip-made' && isKnown(event)) continue;
    const { id, day, at, keeper, kind } = event;
    lines.push({
      id,
      day,
      at,
      keeper,
      kind,
      undone,
      amended,
      words: sayEvent(event, nameOf, about),
      chip: chipOf(kind),
    });
  }
  return lines.reverse();
}

/** An event in plain words, as seen from one of its subjects. */
export function sayEvent(event: LogEvent, nameOf: NameOf, about: Id): string {
  return isKnown(event)
    ? sayKnown(event, nameOf, about)
    : `Unknown event “${event.kind}” (kept; this program is older than it)`;
}

function sayKnown(event: SiteEvent, nameOf: NameOf, about: Id): string {
  const mate = event.subjects.find((one) => one !== about);
  const withMate = mate === undefined ? '' : ` with ${nameOf(mate)}`;
  switch (event.kind) {
    case 'site-named':
      return `Site named ${event.payload.name}`;
    case 'site-rules-set':
      return 'Rules of the site set';
    case 'keeper-added':
      return `Keeper ${event.payload.name} added as ${event.payload.role}`;
    case 'place-added':
      return `${event.payload.placeKind} ${event.payload.name} added`;
    case 'locus-set':
      return `Locus ${event.payload.locus} of ${event.payload.species} set`;
    case 'animal-added':
      return `Added: ${event.payload.species}`;
    case 'animal-named':
      return `Named ${event.payload.name}`;
    case 'animal-sexed':
      return `Sexed: ${event.payload.sex}`;
    case 'traits-set':
      return `Traits set to ${event.payload.code}`;
    case 'parents-set':
      return sayParents(event.payload, nameOf);
    case 'animal-flagged':
      return event.payload.flags.length === 0 ? 'Flags taken off' : `Flags: ${event.payload.flags.join(', ')}`;
    case 'animal-moved':
      return `Moved to ${nameOf(event.payload.to as Id)}`;
    case 'animal-left':
      return `Left the site: ${event.payload.how}`;
    case 'feed-plan-set':
      return `Feed plan set${sayPlan(event.payload)}`;
    case 'prey-offered':
      return sayOffer(event.payload);
    case 'regurgitation-seen':
      return 'Regurgitated';
    case 'hold-placed':
      return `Hold: ${event.payload.words ?? event.payload.reason}${event.payload.until ? ` until ${sayDayShort(event.payload.until as Day)}` : ''}`;
    case 'hold-lifted':
      return `Hold lifted: ${event.payload.reason}`;
    case 'vet-cleared':
      return `Vet cleared: ${event.payload.by}${event.payload.words ? ` — ${event.payload.words}` : ''}`;
    case 'prescription-written':
      return `Prescription: ${event.payload.drug}, ${event.payload.prescriber}`;
    case 'prescription-stopped':
      return `Prescription stopped by ${event.payload.by}${event.payload.why ? ` — ${event.payload.why}` : ''}`;
    case 'dose-given':
      return `Dose given: ${event.payload.ml} mL${event.payload.second ? `, with ${event.payload.second}` : ''}`;
    case 'animal-weighed':
      return `Weighed ${sayGrams(event.payload.weightG)}${event.payload.confirmed ? ' (confirmed)' : ''}`;
    case 'opaque-seen':
      return 'Opaque';
    case 'shed-seen':
      return event.payload.whole === false ? 'Shed, in pieces' : 'Shed';
    case 'place-cleaned':
      return event.payload.how === 'full' ? 'Cleaned in full' : 'Spot cleaned';
    case 'water-changed':
      return 'Water changed';
    case 'cooling-started':
      return 'Cooling started';
    case 'cooling-ended':
      return 'Cooling ended';
    case 'note-made':
      return event.payload.words;
    case 'pairing-started':
      return `Paired${withMate}`;
    case 'pairing-ended':
      return `Pairing ended${withMate}`;
    case 'lock-seen':
      return `Lock seen${withMate}`;
    case 'ovulation-seen':
      return 'Ovulation seen';
    case 'pre-lay-shed-seen':
      return 'Pre-lay shed';
    case 'clutch-laid':
      return `Laid ${counted(event.payload.eggs, 'egg')}${event.payload.slugs ? ` and ${counted(event.payload.slugs, 'slug')}` : ''}`;
    case 'follicles-measured':
      return `Follicles: largest ${event.payload.largestMm} mm${event.payload.count === undefined ? '' : `, ${event.payload.count} seen`}`;
    case 'young-born':
      return `Gave birth: ${event.payload.young} young${event.payload.stillborn ? `, ${event.payload.stillborn} stillborn` : ''}`;
    case 'clutch-sired':
      return `Sire: ${event.payload.sire === undefined ? 'unknown' : nameOf(event.payload.sire as Id)}`;
    case 'clutch-incubated':
      return `Incubated${event.payload.setC === undefined ? '' : ` at ${event.payload.setC} °C`}${event.payload.place === undefined ? '' : ` in ${nameOf(event.payload.place as Id)}`}`;
    case 'incubation-read':
      return `Incubator read: ${event.payload.tempC} °C${event.payload.humidityPercent === undefined ? '' : `, ${event.payload.humidityPercent} %`}`;
    case 'pip-seen':
      return event.payload.count === undefined ? 'Pipped' : `Pipped: ${event.payload.count}`;
    case 'egg-candled':
      return `Egg ${event.payload.egg} candled: ${event.payload.state}`;
    case 'clutch-hatched':
      return `Hatched ${event.payload.hatched}`;
    case 'lot-received':
      return `Lot received: ${event.payload.count} × ${sayPrey(event.payload.prey)}${event.payload.topical ? `; treated on the outside: ${event.payload.topical}` : ''}`;
    case 'lot-used':
      return `Thawed: ${event.payload.count}`;
    case 'lot-wasted':
      return `Thrown away: ${event.payload.count}${event.payload.why ? ` (${event.payload.why})` : ''}`;
    case 'stock-counted':
      return `Counted: ${event.payload.count} left`;
    case 'card-printed':
      return `Card printed, revision ${event.payload.revision.slice(0, 4)}`;
    case 'slip-made':
      return event.payload.how === 'undo' ? 'Taken back' : 'Amended';
    default:
      event satisfies never;
      return '';
  }
}

function sayParents({ sire, dam }: { sire?: string | undefined; dam?: string | undefined }, nameOf: NameOf): string {
  const say = (id: string | undefined): string => (id === undefined ? 'unknown' : nameOf(id as Id));
  return `Parents: ${say(sire)} × ${say(dam)}`;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

function sayOffer(offer: {
  prey: string;
  count: number;
  totalG?: number | undefined;
  outcome: string;
  asPlanned?: boolean | undefined;
}): string {
  const what = `${offer.count} × ${sayPrey(offer.prey)}${offer.totalG === undefined ? '' : `, ${sayGrams(offer.totalG)}`}`;
  return offer.outcome === 'taken' ? `Fed ${offer.asPlanned ? 'as planned: ' : ''}${what}` : `Refused ${what}`;
}

function sayPlan(plan: { prey?: string | undefined; everyDays?: [number, number] | undefined }): string {
  const prey = plan.prey === undefined ? '' : ` ${sayPrey(plan.prey)}`;
  const days = plan.everyDays === undefined ? '' : ` every ${plan.everyDays[0]}–${plan.everyDays[1]} days`;
  return prey || days ? `:${prey}${days}` : '';
}

function chipOf(kind: string): LedgerChip {
  if (/^(prey|feed|regurgitation)/.test(kind)) return 'feeds';
  if (kind === 'animal-weighed') return 'weights';
  if (/^(opaque|shed)/.test(kind)) return 'sheds';
  if (/^(pairing|lock|follicles|ovulation|pre-lay|clutch|young|incubation|egg|pip|cooling)/.test(kind)) return 'season';
  if (/^(hold|vet|prescription|dose)/.test(kind)) return 'holds';
  if (/^(animal-moved|animal-left|animal-added|place|water)/.test(kind)) return 'moves';
  return kind === 'card-printed' ? 'papers' : 'notes';
}
