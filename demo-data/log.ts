import {
  type Action,
  type AnimalRecord,
  type Day,
  dayNumber,
  decide,
  EVENT_VERSION,
  type EventDraft,
  type EventKind,
  emptyFacility,
  eventIdFrom,
  type Facility,
  type Id,
  mintId,
  type Payload,
  refold,
  type SiteEvent,
} from '../src/core/index.ts';
import type { Chance } from './chance.ts';

/** Who holds which device. */
export interface Hand {
  readonly keeper: string;
  readonly device: number;
}

/** A keeper's step from one animal to the next, in seconds. */
const STEP_S = [5, 14] as const;
const DAY_MS = 86_400_000;

/**
 * The log while it is written: gives each event its id, time, device and clock, and keeps the facility folded by core,
 * so that every later step sees what a keeper would see.
 */
export class Log {
  readonly events: SiteEvent[] = [];
  #facility: Facility = emptyFacility();
  readonly #histories = new Map<Id, SiteEvent[]>();
  readonly #unfolded = new Set<Id>();
  readonly #seq = new Map<number, number>();
  #chance: Chance;
  #day: Day;
  #ms: number;
  #hand: Hand;
  #minted = 0;

  constructor(chance: Chance, day: Day, hand: Hand) {
    this.#chance = chance;
    this.#day = day;
    this.#ms = dayNumber(day) * DAY_MS;
    this.#hand = hand;
  }

  /** The day that is being written. */
  get day(): Day {
    return this.#day;
  }

  /** The facility as of now, with every animal folded. */
  get facility(): Facility {
    for (const id of this.#unfolded) this.#fold(id);
    this.#unfolded.clear();
    return this.#facility;
  }

  /** Begins the next day. */
  turnTo(day: Day): void {
    this.#day = day;
    this.#ms = dayNumber(day) * DAY_MS;
  }

  /** A round begins, not before that time (UTC, the site's own), in somebody's hands. */
  round(hour: number, minute: number, hand: Hand): void {
    this.#ms = Math.max(this.#ms, dayNumber(this.#day) * DAY_MS + (hour * 60 + minute) * 60_000);
    this.#hand = hand;
  }

  /** Writes with chance of its own and then goes on as before, so that what is added does not change the lives of the animals. */
  aside(chance: Chance, write: () => void): void {
    const [before, hand] = [this.#chance, this.#hand];
    this.#chance = chance;
    write();
    this.#chance = before;
    this.#hand = hand;
  }

  /** A new printed id, minted by the desk. */
  mint(): Id {
    const minted = mintId(1, this.#minted);
    this.#minted += 1;
    if (!minted.ok) throw new RangeError(minted.problem.message);
    return minted.value;
  }

  /** The moment that is being written, in milliseconds since 1970. */
  get nowMs(): number {
    return this.#ms;
  }

  /** What is known of an animal now. */
  animal(id: Id): AnimalRecord {
    if (this.#unfolded.delete(id)) this.#fold(id);
    const record = this.#facility.animals.get(id);
    if (record === undefined) throw new RangeError(`no animal ${id}`);
    return record;
  }

  /** Writes one event. */
  write<K extends EventKind>(kind: K, subjects: readonly Id[], payload: Payload<K>): SiteEvent {
    this.#ms += this.#chance.whole(STEP_S[0], STEP_S[1]) * 1000;
    const { keeper, device } = this.#hand;
    const seq = (this.#seq.get(device) ?? 0) + 1;
    this.#seq.set(device, seq);
    const event = {
      v: EVENT_VERSION,
      id: eventIdFrom(this.#ms, this.#chance.bytes()),
      kind,
      at: new Date(this.#ms).toISOString(),
      day: this.#day,
      subjects,
      keeper,
      device,
      seq,
      clock: [this.#ms, 0],
      payload,
    } as unknown as SiteEvent;
    this.events.push(event);
    // The second subject of a cleaning says who lives there; nothing about that animal changes.
    const about = kind === 'place-cleaned' ? subjects.slice(0, 1) : subjects;
    for (const subject of about) this.#file(subject, event);
    return event;
  }

  /** Lets core decide an action; writes what it accepts, and on a question only if the keeper insists. */
  act(id: Id, action: Action, insists: 'insists' | 'gives way' = 'gives way'): readonly SiteEvent[] {
    const moment = { day: this.#day, today: this.#day, nowMs: this.#ms };
    const decision = decide(this.animal(id), action, moment);
    if (decision.kind === 'refused' || (decision.kind === 'asks' && insists === 'gives way')) return [];
    return decision.drafts.map((draft) => this.#take(draft));
  }

  #take(draft: EventDraft): SiteEvent {
    return this.write(draft.kind, draft.subjects, draft.payload);
  }

  #file(subject: Id, event: SiteEvent): void {
    const history = this.#histories.get(subject);
    if (history === undefined) this.#histories.set(subject, [event]);
    else history.push(event);
    // A place is read for its name only, so what is done there later need not be folded.
    if (event.kind === 'place-added') this.#fold(subject);
    else if (!this.#facility.places.has(subject)) this.#unfolded.add(subject);
  }

  #fold(id: Id): void {
    this.#facility = refold(this.#facility, id, this.#histories.get(id) ?? []);
  }
}
