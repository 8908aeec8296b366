import { type ReadonlySignal, signal } from '@preact/signals';
import {
  EVENT_VERSION,
  type EventDraft,
  emptyFacility,
  eventIdFrom,
  type Facility,
  foldFacility,
  fromSnapshot,
  type Id,
  type LogEvent,
  ok,
  type Problem,
  parseEvent,
  problem,
  type Result,
  refold,
  SITE,
  type SiteEvent,
  SNAPSHOT_VERSION,
  toSnapshot,
} from '../../core/index.ts';
import { type Appended, type Cursor, type DeviceLog, LogFailure, type Stamper } from '../../store/index.ts';
import type { Clock } from './clock.ts';

/** As much of a written event as taking it back needs. */
export type Written = Pick<LogEvent, 'id' | 'subjects'>;

/** What is known, and the only way to add to it. Screens read signals and call these; no rule lives above this line. */
export interface SiteModel {
  readonly facility: ReadonlySignal<Facility>;
  readonly state: ReadonlySignal<'opening' | 'ready' | 'failed'>;
  readonly failure: ReadonlySignal<Problem | null>;
  /** How many events the opening has read, for its progress line. */
  readonly readSoFar: ReadonlySignal<number>;
  readonly log: DeviceLog;
  /** Opens the log; one that is still empty is filled by `firstCopy` before anybody sees an empty site. */
  open(firstCopy?: (onCount: (events: number) => void) => Promise<void>): Promise<void>;
  /** Writes drafts in one transaction; resolved means durable. Errors: `storage-full`, `storage-failed`. */
  write(drafts: readonly EventDraft[]): Promise<Result<readonly LogEvent[]>>;
  /** The same for things that get a printed id: the maker mints one for each. Errors as `write`, and `counter-spent`. */
  writeNew(make: (mint: () => Id) => readonly EventDraft[]): Promise<Result<readonly LogEvent[]>>;
  /** Takes in events from elsewhere, all of them or none. Errors: `storage-full`, `storage-failed`. */
  takeIn(events: readonly LogEvent[]): Promise<Result<Appended>>;
  /** The whole log in its order of arrival, for an export. */
  everything(onCount: (count: number) => void): Promise<readonly LogEvent[]>;
  /** Takes an event back by a slip; the event itself stays. */
  undo(event: Written): Promise<Result<readonly LogEvent[]>>;
  /** The same for all that one touch wrote, in one transaction. */
  undoAll(events: readonly Written[]): Promise<Result<readonly LogEvent[]>>;
  history(subject: Id): Promise<readonly LogEvent[]>;
  /** Catches up after events came from elsewhere: the hub, or another tab. */
  heard(): Promise<void>;
  /** Counts every change, so that a screen can reload a history. */
  readonly revision: ReadonlySignal<number>;
}

const PAGE = 5000;
/** Above this many touched subjects one fold of everything is faster than single ones. */
const FOLD_ALL_ABOVE = 200;
const SNAPSHOT_AFTER_MS = 1500;

export function createSite(log: DeviceLog, clock: Clock, keeper: ReadonlySignal<string>): SiteModel {
  const facility = signal(emptyFacility());
  const state = signal<'opening' | 'ready' | 'failed'>('opening');
  const failure = signal<Problem | null>(null);
  const readSoFar = signal(0);
  const revision = signal(0);
  const others = new BroadcastChannel('tubwright-log');

  let foldedTo: Cursor = 0;
  let queue: Promise<void> = Promise.resolve();

  function countRead(count: number): void {
    readSoFar.value = count;
  }

  async function foldAll(): Promise<void> {
    const { events, cursor } = await readAll(log, 0, countRead);
    facility.value = foldFacility(events);
    foldedTo = cursor;
  }

  /** Folds again whatever subjects the log has heard of since; one at a time, since two tabs and the hub all call it. */
  function catchUp(): Promise<void> {
    queue = queue.then(async () => {
      const { events, cursor } = await readAll(log, foldedTo, () => undefined);
      if (events.length === 0) return;
      const subjects = subjectsOf(events);
      // Many subjects are faster folded all at once.
      if (subjects.size > FOLD_ALL_ABOVE) await foldAll();
      else await refoldSubjects(subjects);
      foldedTo = Math.max(foldedTo, cursor);
      revision.value++;
      saveLater();
    });
    return queue;
  }

  async function refoldSubjects(subjects: ReadonlySet<Id | typeof SITE>): Promise<void> {
    if (subjects.size === 0) return;
    let next = facility.value;
    for (const subject of subjects) next = refold(next, subject, await log.history(subject));
    facility.value = { ...next };
  }

  async function open(firstCopy?: (onCount: (events: number) => void) => Promise<void>): Promise<void> {
    try {
      const kept = await log.readSnapshot(SNAPSHOT_VERSION);
      const known = kept === null ? null : fromSnapshot(kept.json);
      if (kept === null || known === null) {
        if (firstCopy !== undefined && (await log.head()) === 0) await firstCopy(countRead);
        await foldAll();
      } else {
        facility.value = known;
        foldedTo = kept.cursor;
        await catchUp();
      }
      revision.value++;
      state.value = 'ready';
      if (known === null) saveLater();
    } catch (error) {
      failure.value = problemOf(error);
      state.value = 'failed';
    }
  }

  async function heard(): Promise<void> {
    try {
      await catchUp();
    } catch (error) {
      // The chain must go on after a failed reading; what was heard is in the log and is folded next time.
      queue = Promise.resolve();
      failure.value = problemOf(error);
    }
  }

  let timer: ReturnType<typeof setTimeout> | null = null;
  /** The snapshot stays a moment behind the log: writing it at every touch would make each touch slow. */
  function saveLater(): void {
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(() => void saveSnapshot(), SNAPSHOT_AFTER_MS);
  }

  async function saveSnapshot(): Promise<void> {
    try {
      await catchUp();
      await log.writeSnapshot({ cursor: foldedTo, version: SNAPSHOT_VERSION, json: toSnapshot(facility.value) });
      await log.compact();
    } catch {
      // A snapshot is only a short cut: without it the next opening folds the log, so a full device loses nothing here.
    }
  }

  async function writeNew(make: (mint: () => Id) => readonly EventDraft[]): Promise<Result<readonly LogEvent[]>> {
    try {
      const written = await log.log(clock.nowMs(), (stamp) =>
        make(() => mintedBy(stamp)).map((draft) => sound(stampedEvent(draft, stamp.next(), clock, keeper.value))),
      );
      await heard();
      others.postMessage('wrote');
      return ok(written);
    } catch (error) {
      return { ok: false, problem: problemOf(error) };
    }
  }

  const write = (drafts: readonly EventDraft[]): Promise<Result<readonly LogEvent[]>> => writeNew(() => drafts);

  async function takeIn(events: readonly LogEvent[]): Promise<Result<Appended>> {
    try {
      const appended = await log.append(events);
      await heard();
      others.postMessage('wrote');
      return ok(appended);
    } catch (error) {
      return { ok: false, problem: problemOf(error) };
    }
  }

  const undoAll = (events: readonly Written[]): Promise<Result<readonly LogEvent[]>> =>
    write(
      events.map(({ id, subjects }) => ({
        kind: 'slip-made',
        subjects: [...subjects],
        payload: { corrects: id, how: 'undo' },
        day: clock.today.value,
      })),
    );

  others.onmessage = () => void heard();

  return {
    facility,
    state,
    failure,
    readSoFar,
    revision,
    log,
    open,
    write,
    writeNew,
    takeIn,
    everything: async (onCount) => (await readAll(log, 0, onCount)).events,
    undo: (event) => undoAll([event]),
    undoAll,
    history: (subject) => log.history(subject),
    heard,
  };
}

type Stamped = { readonly device: number; readonly seq: number; readonly clock: readonly [number, number] };

function stampedEvent(draft: EventDraft, stamp: Stamped, clock: Clock, keeper: string): SiteEvent {
  const random = crypto.getRandomValues(new Uint8Array(10));
  return {
    v: EVENT_VERSION,
    id: eventIdFrom(clock.nowMs(), random),
    at: clock.instantOn(draft.day),
    keeper,
    ...draft,
    ...stamp,
  } as SiteEvent;
}

/** A refused id ends the transaction, so that nothing of the batch is written. */
function mintedBy(stamp: Stamper): Id {
  const minted = stamp.mint();
  if (!minted.ok) throw new LogFailure(minted.problem);
  return minted.value;
}

/** What cannot be read again must not be written: the log would drop it as a broken line. */
function sound(event: SiteEvent): SiteEvent {
  const read = parseEvent(event);
  if (!read.ok) throw new LogFailure(read.problem);
  return event;
}

async function readAll(
  log: DeviceLog,
  from: Cursor,
  onCount: (count: number) => void,
): Promise<{ events: readonly LogEvent[]; cursor: Cursor }> {
  const events: LogEvent[] = [];
  let cursor = from;
  for (;;) {
    const page = await log.read(cursor, PAGE);
    for (const event of page.events) events.push(event);
    onCount(events.length);
    if (page.events.length === 0 || page.next === cursor) return { events, cursor };
    cursor = page.next;
  }
}

function subjectsOf(events: readonly LogEvent[]): ReadonlySet<Id | typeof SITE> {
  return new Set<Id | typeof SITE>(
    events.flatMap((event): readonly (Id | typeof SITE)[] => (event.subjects.length === 0 ? [SITE] : event.subjects)),
  );
}

/** A failure of the log in words, whatever was thrown. */
export function problemOf(error: unknown): Problem {
  if (error instanceof LogFailure) return error.problem;
  return problem('storage-failed', { why: error instanceof Error ? error.message : String(error) });
}
