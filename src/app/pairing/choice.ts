import { type Id, parseId } from '../../core/index.ts';

/** The two halves of a pairing. */
export type Role = 'sire' | 'dam';

/** What the address says: who is chosen, how many eggs, and an unsexed animal that the keeper is asked about. */
export interface Choice {
  readonly sire: Id | null;
  readonly dam: Id | null;
  /** Null: as many as the species lays on average. */
  readonly eggs: number | null;
  readonly either: Id | null;
}

/** The most eggs that the stepper goes to; no clutch of these species is larger (common practice, no source). */
export const MOST_EGGS = 60;

/** The page of a pairing, with what is known of it. */
export function pairingAddress(choice: Partial<Choice> = {}): string {
  const { sire = null, dam = null, eggs = null, either = null } = choice;
  const said = Object.entries({ sire, dam, eggs, either }).flatMap(([name, value]) =>
    value === null ? [] : [`${name}=${value}`],
  );
  return said.length === 0 ? '/pairing' : `/pairing?${said.join('&')}`;
}

/** Reads the address; whatever is no id and no count of eggs is left out. */
export function readChoice(query: Readonly<Record<string, string>>): Choice {
  const eggs = Number(query['eggs']);
  return {
    sire: idIn(query['sire']),
    dam: idIn(query['dam']),
    eggs: Number.isInteger(eggs) && eggs >= 1 && eggs <= MOST_EGGS ? eggs : null,
    either: idIn(query['either']),
  };
}

function idIn(text: string | undefined): Id | null {
  const read = parseId(text ?? '');
  return read.ok ? read.value.id : null;
}
