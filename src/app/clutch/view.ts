import { useMemo } from 'preact/hooks';
import {
  type AnimalRecord,
  type ClutchRecord,
  type Day,
  eggsLeft,
  type Facility,
  stillLies,
  stillToCome,
  type Window,
  youngOf,
} from '../../core/index.ts';
import { hatchWindow } from './window.ts';

/** What a clutch’s page needs to know of it on a day. */
export interface ClutchView {
  /** Eggs that are still to hatch, none of them or some out already. */
  readonly isOpen: boolean;
  readonly isPart: boolean;
  readonly left: number;
  readonly window: Window | null;
  readonly young: readonly AnimalRecord[];
  /** The young whose cards are not printed yet. */
  readonly unprinted: readonly AnimalRecord[];
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
  const isOpen = stillLies(clutch, today);
  const isPart = isOpen && clutch.hatchedOn !== null;
  const left = isPart ? stillToCome(clutch, today) : eggsLeft(clutch);
  const unprinted = young.filter((one) => one.printed === null && one.left === null);
  const known = { isOpen, isPart, left, window, young, unprinted };
  return { ...known, next: nextStep(clutch, known, today) };
}

function nextStep(
  clutch: ClutchRecord,
  { isPart, window, young, unprinted }: Omit<ClutchView, 'next'>,
  today: Day,
): NextStep {
  if (clutch.hatchedOn !== null) {
    const isAllIn = young.length >= (clutch.hatched ?? 0);
    if (clutch.bears === 'live young' && !isAllIn) return 'enter';
    // The young that are out get their cards first; then the rest is waited for.
    if (isPart && unprinted.length === 0) return 'hatch';
    return young.length > 0 ? 'print' : 'nothing';
  }
  if (clutch.pippedOn !== null || (window !== null && window.from <= today)) return 'hatch';
  return clutch.incubation === null ? 'incubate' : 'read';
}
