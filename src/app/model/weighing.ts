import { type ReadonlySignal, signal } from '@preact/signals';
import type { ScaleReading } from '../../../scanner/index.ts';
import {
  type Action,
  type AnimalRecord,
  type Day,
  type Id,
  lessBox,
  type Problem,
  parseId,
  parseWeight,
  problem,
  type Result,
  refuse,
  type Stamp,
  sayNumber,
} from '../../core/index.ts';
import type { Clock } from './clock.ts';
import type { ScaleModel } from './scale.ts';
import type { Signs } from './signs.ts';

/** A stamp that wants a number for this card. */
export interface NumberWanted {
  readonly animal: AnimalRecord;
  readonly stamp: Stamp;
  /** Takes the weight as typed, or says why not. */
  give(text: string): Promise<Problem | null>;
  /** Why the last reading of a scale was not taken. */
  readonly unread: ReadonlySignal<Problem | null>;
  leave(): void;
}

/** What weighing needs of the desk. */
export interface WeighingParts {
  readonly clock: Clock;
  readonly signs: Signs;
  readonly scale: ScaleModel;
  act(id: Id, action: Action, day: Day): Promise<unknown>;
  refused(subject: AnimalRecord | null, why: Problem): void;
  /** A question waits for its answer. */
  isAsking(): boolean;
  /** The stamp in hand wants a weight. */
  isHeld(): boolean;
}

/** Weighing: whose weight is waited for, and what becomes of it, typed or sent by a scale. */
export interface Weighing {
  readonly wanted: ReadonlySignal<NumberWanted | null>;
  want(animal: AnimalRecord, stamp: Stamp, day: Day): void;
  weighs(): boolean;
  scaleSent(reading: Result<ScaleReading>): Promise<void>;
}

/** The same reading within this time is the scale's, and not another animal's. */
const TWIN_MS = 5000;

interface Waiting extends NumberWanted {
  /** Gives the weight that the scale shows. */
  weigh(weightG: number): Promise<Problem | null>;
}

export function createWeighing(parts: WeighingParts): Weighing {
  const { clock, signs, scale } = parts;
  const wanted = signal<Waiting | null>(null);
  const unread = signal<Problem | null>(null);
  let sentLast: { readonly weightG: number; readonly atMs: number } | null = null;

  function want(animal: AnimalRecord, stamp: Stamp, day: Day): void {
    async function weigh(weightG: number): Promise<Problem | null> {
      const boxG = scale.boxG.value;
      const net = lessBox(weightG, boxG);
      if (!net.ok) return net.problem;
      wanted.value = null;
      await parts.act(animal.id, { do: 'weighed', weightG, ...(boxG !== null && { boxG }) }, day);
      return null;
    }
    async function give(text: string): Promise<Problem | null> {
      unread.value = null;
      // A card that was scanned too slowly to be known as a scan must not become a weight.
      const read = parseId(text).ok ? refuse('weight-is-id', { text: text.trim() }) : parseWeight(text);
      return read.ok ? weigh(read.value) : read.problem;
    }
    const leave = (): void => {
      wanted.value = null;
    };
    unread.value = null;
    wanted.value = { animal, stamp, give, weigh, unread, leave };
  }

  async function scaleSent(reading: Result<ScaleReading>): Promise<void> {
    const waits = wanted.value;
    if (parts.isAsking()) signs.give('asks');
    else if (waits === null) nobodyWaits(reading);
    else {
      unread.value = null;
      const unfit = reading.ok ? await take(waits, reading.value.weightG) : reading.problem;
      if (unfit === null) return;
      unread.value = unfit;
      parts.refused(waits.animal, unfit);
    }
  }

  async function take(waits: Waiting, weightG: number): Promise<Problem | null> {
    if (!scale.weighsBox.value) {
      sentLast = { weightG, atMs: clock.nowMs() };
      return waits.weigh(weightG);
    }
    const box = scale.setBoxG(weightG);
    if (!box.ok) return box.problem;
    signs.give('accepted');
    return null;
  }

  /** Nobody guesses whose weight it is; a scale that sends the same once more by itself is not heard twice. */
  function nobodyWaits(reading: Result<ScaleReading>): void {
    if (!reading.ok) {
      parts.refused(null, reading.problem);
      return;
    }
    const { weightG } = reading.value;
    if (sentLast?.weightG === weightG && clock.nowMs() - sentLast.atMs < TWIN_MS) return;
    const weight = `${sayNumber(weightG)} g`;
    parts.refused(null, problem(parts.isHeld() ? 'weighed-who' : 'scale-unasked', { weight }));
  }

  return { wanted, want, weighs: () => wanted.value !== null || parts.isHeld(), scaleSent };
}
