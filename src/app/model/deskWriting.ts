import { type ReadonlySignal, signal } from '@preact/signals';
import {
  type Action,
  type AnimalRecord,
  type Day,
  type Decision,
  decide,
  type Id,
  type Moment,
  nameOf,
  type Problem,
  problem,
} from '../../core/index.ts';
import type { Clock } from './clock.ts';
import type { Signs } from './signs.ts';
import type { SiteModel } from './site.ts';
import type { StripModel } from './strip.ts';

/** A question with two big answers; the camera waits no longer than the answer takes. */
export interface Question {
  readonly animal: AnimalRecord;
  readonly problem: Problem;
  readonly said: string;
  yes(): Promise<void>;
  no(): void;
}

/** The one way by which what happens to an animal is written, asked about or refused. */
export interface DeskWriting {
  readonly question: ReadonlySignal<Question | null>;
  /** Says on the strip and by signs why something was not done. */
  refused(subject: Id | null, name: string, said: string, why: Problem): void;
  /** Logs an action on an animal on a day (today if left out). */
  act(id: Id, action: Action, day?: Day): Promise<Decision['kind']>;
  /** Writes what a rule decided of an animal, asks about it, or says why not. */
  decided(id: Id, decision: Decision): Promise<Decision['kind']>;
  /** This moment. */
  today(): Moment;
}

interface DeskWritingParts {
  readonly site: SiteModel;
  readonly clock: Clock;
  readonly strip: StripModel;
  readonly signs: Signs;
}

export function createDeskWriting({ site, clock, strip, signs }: DeskWritingParts): DeskWriting {
  const question = signal<Question | null>(null);

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

  const momentOn = (day: Day): Moment => ({ day, today: clock.today.value, nowMs: clock.nowMs() });

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

  return { question, refused, act, decided, today: () => momentOn(clock.today.value) };
}
