import { type ReadonlySignal, signal } from '@preact/signals';
import {
  type AnimalRecord,
  decidePairing,
  type Id,
  moveTo as moveOf,
  nameOf,
  ok,
  pairOf,
  problem,
  type Result,
} from '../../core/index.ts';
import type { DeskWriting } from './deskWriting.ts';
import type { Signs } from './signs.ts';
import type { SiteModel } from './site.ts';

/** Stamps that want a second scan: where an animal goes, and who its mate is. */
export interface SecondScans {
  /** The animal that the next scanned place is for. */
  readonly goes: ReadonlySignal<AnimalRecord | null>;
  /** The animal that waits for its mate to be scanned. */
  readonly waits: ReadonlySignal<AnimalRecord | null>;
  /** An animal was scanned that is to be moved. */
  willGo(animal: AnimalRecord): void;
  pairWith(animal: AnimalRecord): Promise<void>;
  /** Gives the animal that was moved. Errors: `moved-who`. */
  moveTo(place: Id): Promise<Result<Id>>;
  forget(): void;
}

export function createSecondScans(
  { refused, act, decided, today }: DeskWriting,
  site: SiteModel,
  signs: Signs,
): SecondScans {
  const goes = signal<AnimalRecord | null>(null);
  const waits = signal<AnimalRecord | null>(null);

  /** The first card of a pairing waits, the second makes it: whichever is the male. */
  async function pairWith(animal: AnimalRecord): Promise<void> {
    const first = waits.value;
    waits.value = first === null ? animal : null;
    if (first === null) return signs.give('asks');
    const pair = pairOf(first, animal);
    if ('code' in pair) return refused(animal.id, nameOf(site.facility.value, animal.id), 'not paired', pair);
    await decided(animal.id, decidePairing('paired', pair, today()));
  }

  /** The second scan of a move: the animal was scanned before, this is where it goes. */
  async function moveTo(place: Id): Promise<Result<Id>> {
    const facility = site.facility.value;
    const toName = nameOf(facility, place);
    const animal = goes.value;
    goes.value = null;
    if (animal === null) {
      const why = problem('moved-who', { place: toName });
      refused(null, toName, 'nothing moved', why);
      return { ok: false, problem: why };
    }
    await act(animal.id, moveOf(facility, animal, place));
    return ok(animal.id);
  }

  return {
    goes,
    waits,
    pairWith,
    moveTo,
    willGo(animal) {
      goes.value = animal;
    },
    forget() {
      goes.value = null;
      waits.value = null;
    },
  };
}
