import { type ReadonlySignal, signal } from '@preact/signals';
import { parseWeight, type Result, weightInRange } from '../../core/index.ts';

/** What this device knows of weighing: the box that comes off, and whether the next reading of a scale is the box. */
export interface ScaleModel {
  /** In grams; null where animals are weighed without one. It stays on this device. */
  readonly boxG: ReadonlySignal<number | null>;
  readonly weighsBox: ReadonlySignal<boolean>;
  /** Waits for the box on the scale, or no longer. */
  awaitBox(awaits: boolean): void;
  /** Keeps a box as typed, `120` or `0.12 kg`. Errors: those of a weight. */
  setBox(text: string): Result<number>;
  /** Keeps a box as a scale sent it. Errors: those of a weight. */
  setBoxG(weightG: number): Result<number>;
  noBox(): void;
}

const KEY = 'weigh-box-g';

export function createScale(storage: Storage = localStorage): ScaleModel {
  const boxG = signal(kept(storage));
  const weighsBox = signal(false);
  function keep(weight: Result<number>): Result<number> {
    if (!weight.ok) return weight;
    boxG.value = weight.value;
    weighsBox.value = false;
    storage.setItem(KEY, String(weight.value));
    return weight;
  }
  return {
    boxG,
    weighsBox,
    awaitBox(awaits) {
      weighsBox.value = awaits;
    },
    setBox: (text) => keep(parseWeight(text)),
    setBoxG: (weightG) => keep(weightInRange(weightG)),
    noBox() {
      boxG.value = null;
      storage.removeItem(KEY);
    },
  };
}

function kept(storage: Storage): number | null {
  const read = weightInRange(Number(storage.getItem(KEY) ?? Number.NaN));
  return read.ok ? read.value : null;
}
