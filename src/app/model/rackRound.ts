import { type ReadonlySignal, signal } from '@preact/signals';
import {
  allAsPlanned,
  beginRound,
  type Company,
  companyFor,
  type EventDraft,
  endRound,
  type Id,
  isAtPlace,
  nameOf,
  ok,
  type Problem,
  problem,
  type Result,
  type RoundAt,
  type RoundLine,
  type RoundSummary,
  type RoundTask,
  type Seen,
  sayTask,
  standsIn,
  summaryOf,
} from '../../core/index.ts';
import { keepRound, keptRound, type OpenRound } from './openRound.ts';
import { createRoundDeeds, type DeedParts } from './roundDeeds.ts';

/** What is asked of a new round. */
export interface RoundWanted {
  readonly place: Id;
  readonly task: RoundTask;
  readonly second?: string;
  readonly without?: readonly Id[];
  /** All as planned in the same touch. */
  readonly all?: boolean;
}

/** What a scan means to the open round: written by it, or somebody else’s turn. */
export type RoundScan =
  | { readonly to: 'written' }
  | { readonly to: 'scale'; readonly id: Id }
  | { readonly to: 'dose'; readonly address: string };

/** A home that waits for a word on how its animals look. */
export interface Looking {
  readonly line: RoundLine;
  /** The animal whose card was scanned; null where the label of its home was. */
  readonly animal: Id | null;
}

/** The round that is walked: all as planned, then the exceptions by scan; or one by one. */
export interface RoundModel {
  readonly open: ReadonlySignal<OpenRound | null>;
  /** Who has to be asked how they look. */
  readonly looking: ReadonlySignal<Looking | null>;
  look(looking: Looking | null): void;
  /** Who is needed for a round at a place (CARE-ALONE). */
  company(at: RoundAt): Company;
  /** Errors: those of {@link beginRound} and of writing, and `round-open`. */
  begin(wanted: RoundWanted): Promise<Result<OpenRound>>;
  /** All as planned at a place of the open round, in one transaction; gives how many. Errors: those of writing. */
  sweep(place: Id): Promise<Result<number>>;
  /** What a scanned card or label means to the open round; null where it means nothing to it. */
  scanned(id: Id): Promise<RoundScan | null>;
  /** One line by touch: an open or a skipped one is done, a done one was not after all, a meal was refused or taken. */
  turn(line: RoundLine): Promise<void>;
  skip(line: RoundLine, why: string): Promise<void>;
  /** The skip taken back: the line is open again. */
  reopen(line: RoundLine): Promise<void>;
  /** A look at one animal, in the open round or out of it. Errors: `look-words`, and those of writing. */
  saw(line: RoundLine, seen: Seen): Promise<Result<null>>;
  summary(): RoundSummary | null;
  /** Ends the open round as its summary was confirmed. Errors: those of writing. */
  end(): Promise<Result<null>>;
}

interface RoundParts extends DeedParts {
  readonly keeper: ReadonlySignal<string>;
}

export function createRound({ keeper, ...parts }: RoundParts): RoundModel {
  const { site, clock, strip, signs } = parts;
  const deeds = createRoundDeeds(parts);
  const open = signal<OpenRound | null>(keptRound(clock.today.value));
  const looking = signal<Looking | null>(null);

  function set(next: OpenRound | null): void {
    open.value = next;
    keepRound(next);
  }

  /** One touch for many: the events of the deeds are what the strip’s undo takes back, not the beginning of the round. */
  async function writeAll(round: OpenRound, at: RoundAt, before: readonly EventDraft[]): Promise<Result<number>> {
    const { drafts, done } = allAsPlanned(site.facility.value, at, deeds.moment());
    const written = await site.write([...before, ...drafts]);
    signs.give(written.ok ? 'accepted' : 'refused');
    if (!written.ok) return written;
    const events = written.value.slice(before.length);
    const name = nameOf(site.facility.value, at.place);
    const said = `${sayTask(at.task)} as planned: ${done.length}`;
    if (events.length > 0) strip.add({ subject: at.place, name, said, result: 'accepted', problem: null, events });
    set({ ...round, swept: [...new Set([...round.swept, ...done.map((line) => line.of)])] });
    return ok(done.length);
  }

  async function begin({ all = false, ...wanted }: RoundWanted): Promise<Result<OpenRound>> {
    const running = open.value;
    const isSame = running?.place === wanted.place && running.task === wanted.task;
    if (running !== null && !isSame) return { ok: false, problem: problem('round-open', { round: sayRound(running) }) };
    const begun = running === null ? newRound(wanted) : ok({ round: running, drafts: [] });
    if (!begun.ok) return begun;
    const { round, drafts } = begun.value;
    const done = all ? await writeAll(round, { ...wanted, without: round.without }, drafts) : await site.write(drafts);
    if (!done.ok) return done;
    if (!all) set(round);
    return ok(open.value ?? round);
  }

  function newRound(
    wanted: RoundWanted,
  ): Result<{ readonly round: OpenRound; readonly drafts: readonly EventDraft[] }> {
    const decision = beginRound(site.facility.value, { ...wanted, keeper: keeper.value }, deeds.moment());
    if (decision.kind !== 'accepted') return { ok: false, problem: decision.problem };
    const { place, task, without = [] } = wanted;
    const [draft] = decision.drafts;
    const second = draft?.kind === 'round-started' ? (draft.payload.second ?? null) : null;
    const name = nameOf(site.facility.value, place);
    const round = { place, name, task, day: clock.today.value, second, without, swept: [] };
    return ok({ round, drafts: decision.drafts });
  }

  async function sweep(place: Id): Promise<Result<number>> {
    const round = open.value;
    if (round === null) return ok(0);
    return writeAll(round, { place, task: round.task, without: round.without }, []);
  }

  async function scanned(id: Id): Promise<RoundScan | null> {
    const round = open.value;
    if (round === null) return null;
    const line = deeds.lineOf(id, round.task);
    if (line === null) return isHolder(round, id) ? sweptBy(id) : null;
    if (line.place === null || !standsIn(site.facility.value, line.place.id, round.place)) return null;
    if (!round.without.includes(line.place.id)) return scannedLine(round, line, id);
    deeds.refused(line, aloneProblem(line, line.place.id));
    return WRITTEN;
  }

  /** The label of a rack within a room that is walked: all as planned there. */
  async function sweptBy(id: Id): Promise<RoundScan> {
    const done = await sweep(id);
    if (!done.ok) signs.give('refused');
    return WRITTEN;
  }

  function isHolder(round: OpenRound, id: Id): boolean {
    const { places } = site.facility.value;
    const isInside = id !== round.place && places.has(id) && standsIn(site.facility.value, id, round.place);
    return isInside && (round.task === 'feeding' || isAtPlace(round.task));
  }

  async function scannedLine(round: OpenRound, line: RoundLine, id: Id): Promise<RoundScan | null> {
    const [animal] = line.animals;
    if (animal !== undefined && round.task === 'weigh') return scaleFor(line, animal.id);
    if (animal !== undefined && round.task === 'treat') return { to: 'dose', address: `/treatments?dose=${animal.id}` };
    if (round.task === 'look') {
      signs.give('asks');
      looking.value = { line, animal: site.facility.value.animals.has(id) ? id : null };
      return WRITTEN;
    }
    // Only what was done in one go has exceptions: a card that is read twice must not undo its own deed.
    if (line.state === 'done' && !round.swept.includes(line.of)) {
      deeds.told(line, `done already today${line.lastDone?.by ? `, by ${line.lastDone.by}` : ''}`);
      return WRITTEN;
    }
    return (await deeds.turn(line)) ? WRITTEN : null;
  }

  function scaleFor(line: RoundLine, id: Id): RoundScan {
    if (line.state !== 'held' || line.problem === null) return { to: 'scale', id };
    deeds.refused(line, line.problem);
    return WRITTEN;
  }

  function aloneProblem({ task }: RoundLine, place: Id): Problem {
    const { reasons, people } = companyFor(site.facility.value, place, { task });
    const why = reasons.map((reason) => reason.words).join('; ');
    return problem('round-alone', { place: nameOf(site.facility.value, place), why, people });
  }

  async function end(): Promise<Result<null>> {
    const round = open.value;
    if (round === null) return ok(null);
    // A round that went past midnight ends on the day that it began.
    const decision = endRound(round, summaryOf(site.facility.value, round, round), round);
    if (decision.kind !== 'accepted') return { ok: false, problem: decision.problem };
    const written = await site.write(decision.drafts);
    signs.give(written.ok ? 'accepted' : 'refused');
    if (!written.ok) return written;
    const entry = { subject: round.place, name: round.name, said: decision.said, problem: null };
    strip.add({ ...entry, result: 'accepted', events: written.value });
    set(null);
    return ok(null);
  }

  return {
    open,
    looking,
    look(next) {
      looking.value = next;
    },
    company: ({ place, ...at }) => companyFor(site.facility.value, place, at),
    begin,
    sweep,
    scanned,
    async turn(line) {
      if (!(await deeds.turn(line)) && line.problem !== null) deeds.refused(line, line.problem);
    },
    skip: deeds.skip,
    reopen: deeds.reopen,
    saw: deeds.saw,
    summary: () => (open.value === null ? null : summaryOf(site.facility.value, open.value, open.value)),
    end,
  };
}

const WRITTEN = { to: 'written' } as const;

/** `water, Rack 3`. */
export function sayRound({ task, name }: Pick<OpenRound, 'task' | 'name'>): string {
  return `${sayTask(task)}, ${name}`;
}
