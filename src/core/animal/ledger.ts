import { type Day, sayDayShort } from '../days.ts';
import { entries } from '../events/effective.ts';
import { isKnown, type LogEvent, type Payload, type RoundTask, type SiteEvent } from '../events/index.ts';
import type { EventId, Id } from '../ids.ts';
import { sayPrey } from '../stock/index.ts';
import { sayGrams, sayLength } from '../units.ts';

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
    case 'place-set':
      return 'Facts of the place set';
    case 'interval-set':
      return sayInterval(event.payload);
    case 'pool-served':
      return { part: 'Pool changed in part', filter: 'Pool filter cleaned', drain: 'Pool drained' }[event.payload.work];
    case 'health-looked':
      return `${event.payload.well ? 'Looked well' : 'To be looked at again'}${event.payload.words ? ` — ${event.payload.words}` : ''}`;
    case 'task-skipped':
      return `Skipped: ${sayTask(event.payload.task)}${event.payload.why ? ` (${event.payload.why})` : ''}`;
    case 'round-started':
      return `Round started: ${sayTask(event.payload.task)}${event.payload.second ? `, with ${event.payload.second}` : ''}`;
    case 'round-ended':
      return `Round ended: ${sayTask(event.payload.task)}, ${event.payload.done} done, ${event.payload.skipped} skipped`;
    case 'origin-set':
      return `Came from ${event.payload.source ?? 'an unknown source'}${event.payload.licence ? `, licence ${event.payload.licence}` : ''}`;
    case 'microchip-set':
      return `Microchip ${event.payload.code}`;
    case 'animal-measured':
      return `${event.payload.guessed ? 'Guessed' : 'Measured'} ${sayLength(event.payload.lengthMm)}, ${event.payload.of === 'total' ? 'total length' : 'snout to vent'}`;
    case 'paper-kept':
      return `Paper kept${event.payload.words ? `: ${event.payload.words}` : ''}`;
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
      return `Left the site: ${event.payload.how}${event.payload.to ? `, to ${event.payload.to}` : ''}${event.payload.cause ? `, ${event.payload.cause}` : ''}`;
    case 'feed-plan-set':
      return `Feed plan set${sayPlan(event.payload)}`;
    case 'prey-offered':
      return sayOffer(event.payload);
    case 'regurgitation-seen':
      return 'Regurgitated';
    case 'hold-placed':
      return `Hold: ${event.payload.words ?? event.payload.reason}${event.payload.until ? ` until ${sayDayShort(event.payload.until as Day)}` : ''}`;
    case 'hold-lifted':
      return `Hold lifted: ${event.payload.reason}${event.payload.by ? `, by ${event.payload.by}` : ''}`;
    case 'vet-cleared':
      return `Vet cleared: ${event.payload.by}${event.payload.words ? ` — ${event.payload.words}` : ''}`;
    case 'prescription-written':
      return `Prescription: ${event.payload.drug}, ${event.payload.prescriber}`;
    case 'prescription-stopped':
      return `Prescription stopped by ${event.payload.by}${event.payload.why ? ` — ${event.payload.why}` : ''}`;
    case 'dose-given':
      return sayDose(event.payload);
    case 'outcome-noted':
      return `Outcome of the treatment: ${event.payload.words}${event.payload.by ? ` — ${event.payload.by}` : ''}`;
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
    case 'plan-accepted':
      return `Season plan accepted: ${counted(event.payload.pairs.length, 'pair')} of ${event.payload.species}`;
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
      return `Hatched ${event.payload.hatched}${event.payload.last ? ', no more to come' : ''}`;
    case 'lot-received':
      return `Lot received: ${event.payload.count} × ${sayPrey(event.payload.prey)}${event.payload.topical ? `; treated on the outside: ${event.payload.topical}` : ''}`;
    case 'lot-used':
      return `Thawed: ${event.payload.count}${event.payload.forDay ? `, for ${sayDayShort(event.payload.forDay as Day)}` : ''}`;
    case 'lot-wasted':
      return `Thrown away${event.payload.thawed ? ' thawed' : ''}: ${event.payload.count}${event.payload.why ? ` (${event.payload.why})` : ''}`;
    case 'stock-counted':
      return `Counted: ${event.payload.count} left`;
    case 'ware-set':
      return `Ware ${event.payload.name} set`;
    case 'shed-item-made':
      return `Shed of ${event.payload.shown} made into ${counted(event.payload.count, 'piece')} to sell`;
    case 'item-priced':
      return 'New price';
    case 'item-stocked':
      return `Stocked: ${event.payload.count}`;
    case 'item-counted':
      return `Counted: ${event.payload.count} left`;
    case 'item-sold':
      return `Sold: ${event.payload.count}`;
    case 'item-wasted':
      return `Gone: ${event.payload.count}${event.payload.why ? ` (${event.payload.why})` : ''}`;
    case 'item-retired':
      return 'No longer sold';
    case 'animal-offered':
      return `On offer${event.payload.words ? `: ${event.payload.words}` : ''}`;
    case 'offer-ended':
      return `No longer on offer${event.payload.why ? ` (${event.payload.why})` : ''}`;
    case 'tag-printed':
      return `Tag printed, revision ${event.payload.revision.slice(0, 4)}`;
    case 'own-stock-set':
      return `Own stock ${event.payload.name} ${event.payload.removed ? 'taken off' : 'set'}`;
    case 'own-printer-set':
      return `Own printer ${event.payload.name} ${event.payload.removed ? 'taken off' : 'set'}`;
    case 'printer-calibrated':
      return `Printer calibrated for ${event.payload.stock}`;
    case 'run-laid':
      return `Print run laid out: ${counted(event.payload.pages, 'page')}${partWords(event.payload)}`;
    case 'run-printed':
      return `Print run printed to page ${event.payload.toPage}`;
    case 'card-printed':
      return `Card printed, revision ${event.payload.revision.slice(0, 4)}`;
    case 'slip-made':
      return event.payload.how === 'undo' ? 'Taken back' : 'Amended';
    default:
      event satisfies never;
      return '';
  }
}

function partWords({ part }: Payload<'run-laid'>): string {
  return part === undefined ? '' : `, part ${part[0]} of ${part[1]}`;
}

const TASK_WORDS: Readonly<Record<RoundTask, string>> = {
  feeding: 'feeding',
  water: 'water',
  spot: 'spot clean',
  clean: 'full clean',
  weigh: 'weighing',
  treat: 'treatment',
  look: 'health look',
  'pool-part': 'part-change of the pool',
  'pool-filter': 'filter of the pool',
  'pool-drain': 'draining the pool',
};

/** A task of a round in words. */
export function sayTask(task: RoundTask): string {
  return TASK_WORDS[task];
}

function sayDose({ ml, second, lot, note }: Payload<'dose-given'>): string {
  const more = [...(second ? [`with ${second}`] : []), ...(lot ? [`lot ${lot}`] : []), ...(note ? [note] : [])];
  return [`Dose given: ${ml} mL`, ...more].join(', ');
}

function sayInterval({ task, everyDays }: Payload<'interval-set'>): string {
  const often = everyDays === undefined ? 'as learned' : `every ${everyDays[0]}–${everyDays[1]} days`;
  return `Interval for ${sayTask(task)}: ${often}`;
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
  if (kind === 'animal-weighed' || kind === 'animal-measured') return 'weights';
  if (/^(opaque|shed)/.test(kind)) return 'sheds';
  if (/^(plan|pairing|lock|follicles|ovulation|pre-lay|clutch|young|incubation|egg|pip|cooling)/.test(kind))
    return 'season';
  if (/^(hold|vet|prescription|dose|outcome)/.test(kind)) return 'holds';
  if (/^(animal-moved|animal-left|animal-added|origin|microchip|place|water|pool|interval|round|task)/.test(kind))
    return 'moves';
  return /^(card|tag|paper)/.test(kind) ? 'papers' : 'notes';
}
