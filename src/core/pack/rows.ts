import { sayMl } from '../care/index.ts';
import { type Day, sayDayShort } from '../days.ts';
import type { EventOf, SiteEvent } from '../events/index.ts';
import { type Facility, sayPlace } from '../facility/index.ts';
import { type Id, sayId } from '../ids.ts';
import { gramsOfPrey, sayPrey } from '../stock/index.ts';
import type { PackFeed, PackMove, PackTreatment, PackWeight } from './pack.ts';

/** Every meal that was offered. */
export function feedsOf(events: readonly SiteEvent[]): readonly PackFeed[] {
  return ofKind(events, 'prey-offered').map(({ day, keeper, payload }) => ({
    day,
    by: keeper,
    prey: sayPrey(payload.prey),
    count: payload.count,
    totalG: payload.totalG ?? gramsOfPrey(payload.prey, payload.count),
    taken: payload.outcome === 'taken',
  }));
}

/** Every weighing; one that was written with a laying too. */
export function weightsOf(events: readonly SiteEvent[]): readonly PackWeight[] {
  return events.flatMap((event): readonly PackWeight[] => {
    const { day, keeper: by } = event;
    if (event.kind === 'animal-weighed')
      return [{ day, by, weightG: event.payload.weightG, doubted: event.payload.confirmed === true }];
    const damG = event.kind === 'clutch-laid' || event.kind === 'young-born' ? event.payload.damG : undefined;
    return damG === undefined ? [] : [{ day, by, weightG: damG, doubted: false }];
  });
}

/** Prescriptions, doses, the vet’s words, holds, and regurgitations: what a vet or an inspector asks after. */
export function treatmentsOf(events: readonly SiteEvent[]): readonly PackTreatment[] {
  const drugs = new Map(ofKind(events, 'prescription-written').map(({ id, payload }) => [id as string, payload.drug]));
  return events.flatMap((event): readonly PackTreatment[] => {
    const said = sayTreatment(event, (id) => drugs.get(id) ?? 'a prescription that is not on record');
    return said === null ? [] : [{ day: event.day, by: event.keeper, what: said[0], words: said[1] }];
  });
}

function sayTreatment(event: SiteEvent, drugOf: (id: string) => string): readonly [string, string] | null {
  switch (event.kind) {
    case 'prescription-written':
      return ['prescription', sayPrescription(event.payload)];
    case 'prescription-stopped':
      return ['stopped', together([drugOf(event.payload.prescription), `by ${event.payload.by}`, event.payload.why])];
    case 'dose-given':
      return ['dose', sayDose(event.payload, drugOf)];
    case 'outcome-noted':
      return ['outcome', together([drugOf(event.payload.prescription), event.payload.words, event.payload.by])];
    case 'vet-cleared':
      return ['vet’s word', together([event.payload.by, event.payload.words])];
    case 'hold-placed':
      return ['hold', sayHold(event.payload)];
    case 'hold-lifted':
      return ['hold lifted', together([event.payload.reason, event.payload.by && `by ${event.payload.by}`])];
    case 'regurgitation-seen':
      return ['regurgitated', event.payload.note ?? ''];
    default:
      return null;
  }
}

type Said<K extends SiteEvent['kind']> = EventOf<K>['payload'];

/** The vet’s figures as they were written, each with its unit; nothing is worked out here. */
function sayPrescription(written: Said<'prescription-written'>): string {
  const { drug, prescriber, amount, route, everyHours, count, startsOn, endsOn, lot, paper } = written;
  return together([
    drug,
    `written by ${prescriber}`,
    sayAmount(amount),
    route,
    `every ${everyHours} h${count === undefined ? '' : `, ${count} doses`}`,
    `from ${sayDayShort(startsOn as Day)}${endsOn === undefined ? '' : ` to ${sayDayShort(endsOn as Day)}`}`,
    lot && `lot ${lot}`,
    paper,
  ]);
}

function sayAmount(amount: Said<'prescription-written'>['amount']): string {
  if (amount.by === 'volume')
    return amount.strength === undefined ? sayMl(amount.ml) : `${sayMl(amount.ml)} of ${sayStrength(amount.strength)}`;
  return `${amount.dose.mgPerKg} mg/kg of ${sayStrength(amount.strength)}`;
}

function sayStrength({ mgPerMl, percentWv }: { mgPerMl?: number | undefined; percentWv?: number | undefined }): string {
  return mgPerMl === undefined ? `${percentWv ?? '?'} % w/v` : `${mgPerMl} mg/mL`;
}

function sayDose({ prescription, ml, second, lot, note }: Said<'dose-given'>, drugOf: (id: string) => string): string {
  return together([`${drugOf(prescription)}, ${sayMl(ml)}`, second && `with ${second}`, lot && `lot ${lot}`, note]);
}

function sayHold({ reason, words, until, by }: Said<'hold-placed'>): string {
  return together([reason, words, until && `until ${sayDayShort(until as Day)}`, by && `by ${by}`]);
}

/** Where it came, stayed and went. */
export function movesOf(facility: Facility, events: readonly SiteEvent[]): readonly PackMove[] {
  return events.flatMap((event): readonly PackMove[] => {
    const { day, keeper: by } = event;
    switch (event.kind) {
      case 'animal-added':
        return [{ day, by, where: 'onto this record' }];
      case 'animal-moved':
        return [{ day, by, where: placeWords(facility, event.payload.to as Id) }];
      case 'animal-left':
        return [{ day, by, where: sayLeaving(event.payload) }];
      default:
        return [];
    }
  });
}

function sayLeaving({ how, to, cause, note }: Said<'animal-left'>): string {
  return together([`off the site: ${how}`, to && `to ${to}`, cause && `cause: ${cause}`, note]);
}

/** A place in words; one that nobody added is named by its id. */
export function placeWords(facility: Facility, id: Id): string {
  return sayPlace(facility, id) ?? sayId(id);
}

/** The events of one kind. */
export function ofKind<K extends SiteEvent['kind']>(events: readonly SiteEvent[], kind: K): readonly EventOf<K>[] {
  return events.filter((event): event is EventOf<K> => event.kind === kind);
}

function together(parts: readonly (string | undefined)[]): string {
  return parts.filter((part) => part !== undefined && part !== '').join('; ');
}
