import { useMemo } from 'preact/hooks';
import {
  type AnimalRecord,
  type ClutchRecord,
  type Day,
  eggsLeft,
  type Facility,
  type Window,
  youngOf,
} from '../../core/index.ts';
import { hatchWindow } from './window.ts';

/** What a clutch’s page needs to know of it on a day. */
export interface ClutchView {
  /** Eggs that are still to hatch. */
  readonly isOpen: boolean;
  readonly left: number;
  readonly window: Window | null;
  readonly young: readonly AnimalRecord[];
  readonly next: NextStep;
}

/** The one thing to do with a clutch now. */
export type NextStep = 'incubate' | 'read' | 'hatch' | 'enter' | 'print' | 'nothing';

export function useClutchView(facility: Facility, clutch: ClutchRecord, today: Day): ClutchView {
  return useMemo(() => viewOf(facility, clutch, today), [facility, clutch, today]);
}

function viewOf(facility: Facility, clutch: ClutchRecord, today: Day): ClutchView {
  const young = youngOf(facility, clutch);
  const window = hatchWindow(facility, clutch);
  const isOpen = clutch.bears === 'eggs' && clutch.hatchedOn === null;
  return { isOpen, left: eggsLeft(clutch), window, young, next: nextStep(clutch, young.length, window, today) };
}

function nextStep(clutch: ClutchRecord, young: number, window: Window | null, today: Day): NextStep {
  if (clutch.hatchedOn !== null) {
    const isAllIn = young >= (clutch.hatched ?? 0);
    if (clutch.bears === 'live young' && !isAllIn) return 'enter';
    return young > 0 ? 'print' : 'nothing';
  }
  if (clutch.pippedOn !== null || (window !== null && window.from <= today)) return 'hatch';
  return clutch.incubation === null ? 'incubate' : 'read';
}
