import {
  type Decision,
  decide,
  doneAfterAll,
  type Id,
  type LinePast,
  lineFor,
  lookedAt,
  type Moment,
  nameOf,
  notDone,
  ok,
  type Problem,
  type Result,
  type RoundLine,
  type RoundTask,
  type Seen,
  sayHome,
  sayTask,
  skipLine,
  skipTakenBack,
} from '../../core/index.ts';
import { aheadOfUtcMs } from '../treatment/siteTime.ts';
import type { Clock } from './clock.ts';
import type { Signs } from './signs.ts';
import type { SiteModel } from './site.ts';
import type { StripModel } from './strip.ts';

/** What writes the lines of rounds. */
export interface DeedParts {
  readonly site: SiteModel;
  readonly clock: Clock;
  readonly strip: StripModel;
  readonly signs: Signs;
}

/** One line at a time: done, not done after all, skipped, looked at; each on the strip with its undo. */
export interface RoundDeeds {
  moment(): Moment;
  /** The line of a task that an id is about today; null where there is none. */
  lineOf(id: Id, task: RoundTask): RoundLine | null;
  /** Says on the strip why nothing was written. */
  refused(line: RoundLine, why: Problem): void;
  /** Says on the strip that there is nothing to write. */
  told(line: RoundLine, said: string): void;
  /** An open or a skipped line is done, a done one was not after all, a meal was refused or taken; false where it needs its own card. */
  turn(line: RoundLine): Promise<boolean>;
  skip(line: RoundLine, why: string): Promise<void>;
  reopen(line: RoundLine): Promise<void>;
  /** Errors: `look-words`, and those of writing. */
  saw(line: RoundLine, seen: Seen): Promise<Result<null>>;
}

export function createRoundDeeds({ site, clock, strip, signs }: DeedParts): RoundDeeds {
  const moment = (): Moment => ({ day: clock.today.value, today: clock.today.value, nowMs: clock.nowMs() });

  async function pastOf(line: RoundLine): Promise<LinePast> {
    return { line, history: await site.history(line.of) };
  }

  function refused(line: RoundLine, why: Problem): void {
    signs.give('refused');
    strip.add({ subject: line.of, name: nameOfLine(line), said: 'not written', result: 'refused', problem: why });
  }

  async function write(line: RoundLine, decision: Decision): Promise<boolean> {
    const written = decision.kind === 'accepted' ? await site.write(decision.drafts) : null;
    if (decision.kind !== 'accepted') refused(line, decision.problem);
    else if (written?.ok === false) refused(line, written.problem);
    if (decision.kind !== 'accepted' || written?.ok !== true) return false;
    signs.give('accepted');
    const entry = { subject: line.of, name: nameOfLine(line), said: decision.said, problem: null };
    strip.add({ ...entry, result: 'accepted', events: written.value });
    return true;
  }

  async function turn(line: RoundLine): Promise<boolean> {
    if (line.state !== 'done') return doLine(line);
    const past = await pastOf(line);
    const isRefused = line.task === 'feeding' && line.words === 'refused';
    await write(line, isRefused ? doneAfterAll(past, moment()) : notDone(site.facility.value, past, moment()));
    return true;
  }

  /** False for a meal that needs its own card: not due yet, on hold, or a question. */
  async function doLine(line: RoundLine): Promise<boolean> {
    if (line.task === 'feeding') return feed(line);
    if (line.problem !== null) refused(line, line.problem);
    else await write(line, doneAfterAll(await pastOf(line), moment()));
    return true;
  }

  async function feed(line: RoundLine): Promise<boolean> {
    const [animal] = line.animals;
    if (animal === undefined || line.problem !== null || line.state === 'soon' || line.state === 'held') return false;
    const decision = decide(animal, { do: 'fed-as-planned' }, moment());
    return decision.kind === 'accepted' && (await write(line, decision));
  }

  function nameOfLine(line: RoundLine): string {
    const { place, animals } = line;
    return place === null ? nameOf(site.facility.value, line.of) : `${place.name}, ${sayHome({ place, animals })}`;
  }

  return {
    moment,
    lineOf(id, task) {
      const aheadMs = aheadOfUtcMs(clock.nowMs(), clock.timeZone.value);
      return lineFor(site.facility.value, id, { task, on: clock.today.value, aheadMs });
    },
    refused,
    told(line, said) {
      signs.give('asks');
      strip.add({ subject: line.of, name: nameOfLine(line), said, result: 'asks', problem: null });
    },
    turn,
    async skip(line, why) {
      await write(line, skipLine(await pastOf(line), why, moment()));
    },
    async reopen(line) {
      const drafts = skipTakenBack(await pastOf(line), moment());
      await write(line, { kind: 'accepted', drafts, said: `open again: ${sayTask(line.task)}` });
    },
    async saw(line, seen) {
      const decision = lookedAt(site.facility.value, await pastOf(line), seen, moment());
      if (decision.kind !== 'accepted') return { ok: false, problem: decision.problem };
      await write(line, decision);
      return ok(null);
    },
  };
}
