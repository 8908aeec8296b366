import { type ReadonlySignal, signal } from '@preact/signals';
import { readPayload } from '../../../scanner/index.ts';
import {
  type Action,
  type AnimalRecord,
  type Day,
  type Decision,
  decide,
  decidePairing,
  decideStamp,
  type Id,
  isSeasonStamp,
  type LogEvent,
  type Moment,
  nameOf,
  occupants,
  type Problem,
  pairOf,
  parseWeight,
  problem,
  type Result,
  type Stamp,
  sayAnimal,
  stampOf,
} from '../../core/index.ts';
import type { Clock } from './clock.ts';
import type { RackRoundModel } from './rackRound.ts';
import type { Signs } from './signs.ts';
import type { SiteModel } from './site.ts';
import type { StripEntry, StripModel } from './strip.ts';

/** A question with two big answers; the camera waits no longer than the answer takes. */
export interface Question {
  readonly animal: AnimalRecord;
  readonly problem: Problem;
  readonly said: string;
  yes(): Promise<void>;
  no(): void;
}

/** A stamp that wants a number for this card. */
export interface NumberWanted {
  readonly animal: AnimalRecord;
  readonly stamp: Stamp;
  give(text: string): Promise<Result<readonly LogEvent[]>>;
  leave(): void;
}

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
  | { readonly to: 'wanted'; readonly address: string }
  | { readonly to: 'stamped'; readonly id: Id }
  | { readonly to: 'stamp-taken'; readonly stamp: Stamp }
  | { readonly to: 'layout-test' }
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
  readonly round: RackRoundModel;
}

export function createDesk({ site, clock, strip, signs, round }: DeskParts): DeskModel {
  const stamp = signal<Stamp | null>(null);
  const question = signal<Question | null>(null);
  const numberWanted = signal<NumberWanted | null>(null);
  const goes = signal<AnimalRecord | null>(null);
  const waits = signal<AnimalRecord | null>(null);
  const wanted = signal<AnimalWanted | null>(null);

  function refused(subject: Id | null, name: string, said: string, why: Problem): void {
    signs.give('refused');
    strip.add({ subject, name, said, result: 'refused', problem: why });
  }

  async function write(animal: AnimalRecord, decision: Exclude<Decision, { kind: 'refused' }>): Promise<boolean> {
    const name = nameOf(site.facility.value, animal.id);
    const written = await site.write(decision.drafts);
    if (!written.ok) {
      refused(animal.id, name, `not written: ${decision.said}`, written.problem);
      return false;
    }
    signs.give('accepted');
    strip.add({
      subject: animal.id,
      name,
      said: decision.said,
      result: 'accepted',
      problem: null,
      events: written.value,
    });
    return true;
  }

  function ask(animal: AnimalRecord, decision: Extract<Decision, { kind: 'asks' }>): void {
    signs.give('asks');
    question.value = {
      animal,
      problem: decision.problem,
      said: decision.said,
      async yes() {
        question.value = null;
        await write(animal, decision);
      },
      no() {
        question.value = null;
      },
    };
  }

  async function act(id: Id, action: Action, day: Day = clock.today.value): Promise<Decision['kind']> {
    const animal = site.facility.value.animals.get(id);
    if (animal === undefined) {
      refused(null, id, 'unknown', problem('unknown-id', { id }));
      return 'refused';
    }
    return decided(id, decide(animal, action, momentOn(day)));
  }

  function momentOn(day: Day): Moment {
    return { day, today: clock.today.value, nowMs: clock.nowMs() };
  }

  async function decided(id: Id, decision: Decision): Promise<Decision['kind']> {
    const animal = site.facility.value.animals.get(id);
    if (decision.kind === 'refused' || animal === undefined) {
      const why = decision.kind === 'refused' ? decision.problem : problem('unknown-id', { id });
      refused(id, nameOf(site.facility.value, id), 'not written', why);
      return 'refused';
    }
    if (decision.kind === 'asks') ask(animal, decision);
    else if (!(await write(animal, decision))) return 'refused';
    return decision.kind;
  }

  /** The first card of a pairing waits, the second makes it: whichever is the male. */
  async function pairWith(animal: AnimalRecord): Promise<void> {
    const first = waits.value;
    waits.value = first === null ? animal : null;
    if (first === null) return signs.give('asks');
    const pair = pairOf(first, animal);
    if ('code' in pair) return refused(animal.id, nameOf(site.facility.value, animal.id), 'not paired', pair);
    await decided(animal.id, decidePairing('paired', pair, momentOn(clock.today.value)));
  }

  function wantNumber(animal: AnimalRecord, wanted: Stamp, day: Day = clock.today.value): void {
    numberWanted.value = {
      animal,
      stamp: wanted,
      async give(text) {
        const read = parseWeight(text);
        if (!read.ok) return read;
        numberWanted.value = null;
        await act(animal.id, { do: 'weighed', weightG: read.value }, day);
        return { ok: true, value: [] };
      },
      leave() {
        numberWanted.value = null;
      },
    };
  }

  async function put(id: Id, inHand: Stamp): Promise<ScanResult> {
    const animal = site.facility.value.animals.get(id);
    if (animal === undefined) return unknown(id);
    if (inHand.needs === 'place') goes.value = animal;
    if (inHand.needs === 'mate') await pairWith(animal);
    else if (isSeasonStamp(inHand.id)) {
      await decided(id, decideStamp(site.facility.value, animal, inHand.id, momentOn(clock.today.value)));
    } else if (inHand.action !== null) await act(id, inHand.action);
    else signs.give('asks');
    if (inHand.needs === 'weight') wantNumber(animal, inHand);
    return { to: 'stamped', id };
  }

  /** The second scan of a move: the animal was scanned before, this is where it goes. */
  async function moveTo(place: Id): Promise<ScanResult> {
    const facility = site.facility.value;
    const toName = nameOf(facility, place);
    const animal = goes.value;
    goes.value = null;
    if (animal === null) {
      const why = problem('moved-who', { place: toName });
      refused(null, toName, 'nothing moved', why);
      return { to: 'nothing', problem: why };
    }
    const others = (occupants(facility).get(place) ?? []).filter(({ id }) => id !== animal.id);
    const livesThere = others.map(sayAnimal).join(', ') || null;
    await act(animal.id, { do: 'moved', to: place, toName, livesThere });
    return { to: 'stamped', id: animal.id };
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

  async function openId(id: Id): Promise<ScanResult> {
    const { animals, places, clutches } = site.facility.value;
    if (clutches.has(id)) return openClutch(id);
    const isMeant = animals.has(id) ? isWanted('animal') : places.has(id) && isWanted('place');
    if (wanted.value !== null && isMeant) return give(id, wanted.value);
    if (stamp.value !== null && animals.has(id)) return put(id, stamp.value);
    if (await round.except(id)) return { to: 'stamped', id };
    if (animals.has(id)) return { to: 'record', id };
    if (!places.has(id)) return unknown(id);
    return stamp.value?.needs === 'place' ? moveTo(id) : { to: 'place', id };
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
    numberWanted,
    goes,
    wanted,
    waits,
    decided,
    want(next) {
      wanted.value = next;
    },
    take(next) {
      stamp.value = next;
      goes.value = null;
      waits.value = null;
    },
    act,
    scanned,
    async undo(entry) {
      const slips = await site.undoAll(entry.events);
      if (!slips.ok) return refused(entry.subject, entry.name, 'not taken back', slips.problem);
      strip.markUndone(entry.key);
      signs.give('accepted');
    },
    weigh(id, day) {
      const animal = site.facility.value.animals.get(id);
      const weighed = stampOf('weighed');
      if (animal !== undefined && weighed !== undefined) wantNumber(animal, weighed, day);
    },
    async takeBack(subject, event, said) {
      const name = nameOf(site.facility.value, subject);
      const slip = await site.undo(event);
      if (!slip.ok) return refused(subject, name, 'not taken back', slip.problem);
      signs.give('accepted');
      strip.add({ subject, name, said: `taken back: ${said}`, result: 'accepted', problem: null, events: slip.value });
    },
  };
}
