import { type ReadonlySignal, signal } from '@preact/signals';
import { readPayload, type ScaleReading } from '../../../scanner/index.ts';
import {
  type Action,
  type AnimalRecord,
  type CalibrationOf,
  type Day,
  type Decision,
  decideStamp,
  type Id,
  isSeasonStamp,
  itemsByNumber,
  type LogEvent,
  nameOf,
  type Problem,
  problem,
  type Result,
  type Stamp,
  sayAnimal,
  stampOf,
} from '../../core/index.ts';
import type { Clock } from './clock.ts';
import { createDeskWriting, type Question } from './deskWriting.ts';
import type { RoundModel, RoundScan } from './rackRound.ts';
import type { ScaleModel } from './scale.ts';
import { createSecondScans } from './secondScans.ts';
import type { ShelfModel } from './shelf.ts';
import type { Signs } from './signs.ts';
import type { SiteModel } from './site.ts';
import type { StripEntry, StripModel } from './strip.ts';
import { createWeighing, type NumberWanted } from './weighing.ts';

/** What somebody waits for, such as a sire or a shelf: the next card or label of that kind is given to it, and it says where to go then. */
export interface AnimalWanted {
  readonly says: string;
  /** What is waited for; an animal where it is left out. */
  readonly of?: 'animal' | 'place';
  /** Takes its id and gives the address to go to, or says why not; then the next card is waited for. */
  take(id: Id): Result<string>;
}

/** What a scanned text led to. */
export type ScanResult =
  | { readonly to: 'record'; readonly id: Id }
  | { readonly to: 'place'; readonly id: Id }
  | { readonly to: 'clutch'; readonly id: Id }
  | { readonly to: 'lot'; readonly id: Id }
  | { readonly to: 'item'; readonly id: Id }
  | { readonly to: 'wanted'; readonly address: string }
  | { readonly to: 'stamped'; readonly id: Id }
  | { readonly to: 'stamp-taken'; readonly stamp: Stamp }
  | { readonly to: 'layout-test' }
  | { readonly to: 'calibration'; readonly of: CalibrationOf }
  | { readonly to: 'nothing'; readonly problem: Problem };

/** The keeper's desk: the stamp in hand, the question that waits, and the one way by which an action is logged. */
export interface DeskModel {
  readonly stamp: ReadonlySignal<Stamp | null>;
  readonly question: ReadonlySignal<Question | null>;
  readonly numberWanted: ReadonlySignal<NumberWanted | null>;
  /** The animal that the next scanned place is for, with the stamp “moved” in hand. */
  readonly goes: ReadonlySignal<AnimalRecord | null>;
  /** Who waits for the next scanned animal; a stamp in hand stays there meanwhile and stamps nothing. */
  readonly wanted: ReadonlySignal<AnimalWanted | null>;
  want(wanted: AnimalWanted | null): void;
  take(stamp: Stamp | null): void;
  /** The animal that waits for its mate to be scanned, with the stamp “paired” in hand. */
  readonly waits: ReadonlySignal<AnimalRecord | null>;
  /** Writes what a rule decided of an animal, asks about it, or says why not; on the strip and by signs. */
  decided(id: Id, decision: Decision): Promise<Decision['kind']>;
  /** Logs an action on an animal on a day (today if left out); asks or refuses in words, on the strip and by signs. */
  act(id: Id, action: Action, day?: Day): Promise<Decision['kind']>;
  /** What a read text means here: opens, stamps, takes a stamp up, or is refused in words. It is never followed. */
  scanned(text: string): Promise<ScanResult>;
  /** Whether somebody waits for a weight: a number sheet is open, or the stamp in hand wants one. */
  weighs(): boolean;
  /** What a scale typed: the weight of the animal scanned last, or of the box; else it is refused in words. */
  scaleSent(reading: Result<ScaleReading>): Promise<void>;
  undo(entry: StripEntry): Promise<void>;
  /** Asks for an animal's weight, for a day (today if left out). */
  weigh(id: Id, day?: Day): void;
  /** Takes one line of the ledger back; the strip's undo brings it back again. */
  takeBack(subject: Id, event: LogEvent, said: string): Promise<void>;
}

export interface DeskParts {
  readonly site: SiteModel;
  readonly clock: Clock;
  readonly strip: StripModel;
  readonly signs: Signs;
  readonly round: RoundModel;
  readonly scale: ScaleModel;
  readonly shelf: ShelfModel;
}

export function createDesk({ site, clock, strip, signs, round, scale, shelf }: DeskParts): DeskModel {
  const stamp = signal<Stamp | null>(null);
  const wanted = signal<AnimalWanted | null>(null);

  const writing = createDeskWriting({ site, clock, strip, signs });
  const { question, refused, act, decided, today } = writing;
  const second = createSecondScans(writing, site, signs);
  const { goes, waits } = second;

  const weighing = createWeighing({
    clock,
    signs,
    scale,
    act,
    refused: (animal, why) =>
      refused(animal?.id ?? null, animal === null ? 'Scale' : sayAnimal(animal), 'not weighed', why),
    isAsking: () => question.value !== null,
    isHeld: () => stamp.value?.needs === 'weight',
  });

  async function put(id: Id, inHand: Stamp): Promise<ScanResult> {
    const animal = site.facility.value.animals.get(id);
    if (animal === undefined) return unknown(id);
    if (inHand.needs === 'place') second.willGo(animal);
    if (inHand.needs === 'mate') await second.pairWith(animal);
    else if (isSeasonStamp(inHand.id)) {
      await decided(id, decideStamp(site.facility.value, animal, inHand.id, today()));
    } else if (inHand.action !== null) await act(id, inHand.action);
    else signs.give('asks');
    if (inHand.needs === 'weight') weighing.want(animal, inHand, clock.today.value);
    return { to: 'stamped', id };
  }

  async function moved(place: Id): Promise<ScanResult> {
    const result = await second.moveTo(place);
    return result.ok ? { to: 'stamped', id: result.value } : { to: 'nothing', problem: result.problem };
  }

  function unknown(id: Id): ScanResult {
    const why = problem('unknown-id', { id: `${id.slice(0, 4)}-${id.slice(4)}` });
    refused(null, `${id.slice(0, 4)}-${id.slice(4)}`, 'not opened', why);
    return { to: 'nothing', problem: why };
  }

  function isWanted(kind: 'animal' | 'place'): boolean {
    return wanted.value !== null && (wanted.value.of ?? 'animal') === kind;
  }

  function give(id: Id, waiting: AnimalWanted): ScanResult {
    const taken = waiting.take(id);
    if (!taken.ok) {
      refused(id, nameOf(site.facility.value, id), `not taken: ${waiting.says}`, taken.problem);
      return { to: 'nothing', problem: taken.problem };
    }
    // Taking it may already have asked for the next one.
    if (wanted.value === waiting) wanted.value = null;
    signs.give('accepted');
    return { to: 'wanted', address: taken.value };
  }

  /** A clutch is no animal: no stamp is put on it, and nobody who waits for an animal gets it. */
  function openClutch(id: Id): ScanResult {
    if (stamp.value === null && !isWanted('animal')) return { to: 'clutch', id };
    const why = problem('clutch-stamped');
    refused(null, nameOf(site.facility.value, id), 'not stamped', why);
    return { to: 'nothing', problem: why };
  }

  function weigh(id: Id, day: Day = clock.today.value): void {
    const animal = site.facility.value.animals.get(id);
    const weighed = stampOf('weighed');
    if (animal !== undefined && weighed !== undefined) weighing.want(animal, weighed, day);
  }

  /** The round has written it already, or says whose turn it is: the scale's, or the dose's own sheet. */
  function ofRound(id: Id, scan: RoundScan): ScanResult {
    if (scan.to === 'dose') return { to: 'wanted', address: scan.address };
    if (scan.to === 'scale') weigh(scan.id);
    return { to: 'stamped', id };
  }

  function notOnShelf(id: Id): ScanResult {
    const name = nameOf(site.facility.value, id);
    const why = problem('shelf-not-item', { name });
    refused(null, name, 'not counted', why);
    return { to: 'nothing', problem: why };
  }

  async function openId(id: Id): Promise<ScanResult> {
    const { animals, places, clutches, items, lots } = site.facility.value;
    if (clutches.has(id)) return openClutch(id);
    if (lots.has(id)) return { to: 'lot', id };
    if (items.has(id)) return (await shelf.scanned(id)) ? { to: 'stamped', id } : { to: 'item', id };
    // Somebody who sells or counts by scan must not walk away from it by a card that got in between.
    if (shelf.mode.value !== null) return notOnShelf(id);
    const isMeant = animals.has(id) ? isWanted('animal') : places.has(id) && isWanted('place');
    if (wanted.value !== null && isMeant) return give(id, wanted.value);
    if (stamp.value !== null && animals.has(id)) return put(id, stamp.value);
    const inRound = await round.scanned(id);
    if (inRound !== null) return ofRound(id, inRound);
    if (animals.has(id)) return { to: 'record', id };
    if (!places.has(id)) return unknown(id);
    return stamp.value?.needs === 'place' ? moved(id) : { to: 'place', id };
  }

  /** The code of a calibration page: what was measured on it is entered there. It is no card, so a stamp stays in hand. */
  function openCalibration({ stock, printer }: CalibrationOf): ScanResult {
    if (shelf.mode.value === null) return { to: 'calibration', of: { stock, printer } };
    const why = problem('shelf-not-item', { name: 'Calibration page' });
    refused(null, 'Calibration page', 'not opened', why);
    return { to: 'nothing', problem: why };
  }

  /** A bar code, our own or a maker’s: the item that has it, if this shop sells one. */
  async function openNumber(digits: string): Promise<ScanResult> {
    const id = itemsByNumber(site.facility.value.items).get(digits);
    if (id !== undefined) return openId(id);
    const why = problem('ware-unknown', { number: digits });
    refused(null, digits, 'not opened', why);
    return { to: 'nothing', problem: why };
  }

  async function scanned(text: string): Promise<ScanResult> {
    const host = site.facility.value.site.host;
    const read = readPayload(text, host === null ? {} : { host });
    if (!read.ok) {
      refused(null, 'Code', 'not opened', read.problem);
      return { to: 'nothing', problem: read.problem };
    }
    if (read.value.kind === 'id') return openId(read.value.id);
    if (read.value.kind === 'layout-test') return { to: 'layout-test' };
    if (read.value.kind === 'calibration') return openCalibration(read.value);
    if (read.value.kind === 'ware') return openNumber(read.value.digits);
    const taken = stampOf(read.value.stamp);
    if (taken === undefined) {
      const why = problem('foreign-code');
      refused(null, 'Stamp', 'not taken', why);
      return { to: 'nothing', problem: why };
    }
    stamp.value = taken;
    signs.give('accepted');
    return { to: 'stamp-taken', stamp: taken };
  }

  return {
    stamp,
    question,
    numberWanted: weighing.wanted,
    goes,
    wanted,
    waits,
    decided,
    want(next) {
      wanted.value = next;
    },
    take(next) {
      stamp.value = next;
      second.forget();
    },
    act,
    scanned,
    weighs: weighing.weighs,
    scaleSent: weighing.scaleSent,
    async undo(entry) {
      const slips = await site.undoAll(entry.events);
      if (!slips.ok) return refused(entry.subject, entry.name, 'not taken back', slips.problem);
      strip.markUndone(entry.key);
      signs.give('accepted');
    },
    weigh,
    async takeBack(subject, event, said) {
      const name = nameOf(site.facility.value, subject);
      const slip = await site.undo(event);
      if (!slip.ok) return refused(subject, name, 'not taken back', slip.problem);
      signs.give('accepted');
      strip.add({ subject, name, said: `taken back: ${said}`, result: 'accepted', problem: null, events: slip.value });
    },
  };
}
