import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import {
  AGAIN_MINUTES,
  type Decision,
  dayFault,
  type EventDraft,
  holdsOn,
  type Moment,
  needsVet,
} from '../care/index.ts';
import { sayDayShort } from '../days.ts';
import { type EventKind, minutesSince } from '../events/index.ts';
import { type Problem, problem } from '../problems.ts';
import { marksOfSeason } from './marks.ts';

/** What can be written of a male and a female together. */
export type PairingAct = 'paired' | 'lock' | 'apart';

const KIND = { paired: 'pairing-started', lock: 'lock-seen', apart: 'pairing-ended' } as const satisfies Record<
  PairingAct,
  EventKind
>;

/**
 * What a pairing, a lock or their end writes. Refused: two animals that are no pair, a day that cannot be. Asked about:
 * an animal that has left, a hold, a vet’s word that is missing, one that is with the other already, a lock without a
 * pairing, the same again. A lock that nobody wrote a pairing for writes the pairing with it when the answer is yes.
 */
export function decidePairing(
  act: PairingAct,
  pair: { readonly male: AnimalRecord; readonly female: AnimalRecord },
  moment: Moment,
): Decision {
  const { male, female } = pair;
  const refused = pairFault(male, female) ?? dayFault(male, moment) ?? dayFault(female, moment);
  if (refused !== null) return { kind: 'refused', problem: refused };
  const subjects = [female.id, male.id];
  const draft = { kind: KIND[act], subjects, payload: {}, day: moment.day } as EventDraft;
  const start = { kind: 'pairing-started', subjects, payload: {}, day: moment.day } as EventDraft;
  const isTogether = female.together.some((one) => one.with === male.id);
  const said = sayAct(act, male, female);
  const drafts = act === 'lock' && !isTogether && !wasPaired(male, female, moment) ? [start, draft] : [draft];
  const doubt = actFault(act, pair, moment, isTogether) ?? (act === 'apart' ? null : careFault(pair, moment));
  return doubt === null ? { kind: 'accepted', drafts, said } : { kind: 'asks', problem: doubt, drafts, said };
}

/** Which of two scanned animals is the male; a pair of one sex, an unsexed one or two species is told. */
export function pairOf(
  a: AnimalRecord,
  b: AnimalRecord,
): { readonly male: AnimalRecord; readonly female: AnimalRecord } | Problem {
  const [male, female] = a.sex === 'female' || b.sex === 'male' ? [b, a] : [a, b];
  return pairFault(male, female) ?? { male, female };
}

function pairFault(male: AnimalRecord, female: AnimalRecord): Problem | null {
  if (male.id === female.id) return problem('pairing-self', { animal: sayAnimal(male) });
  if (male.species !== female.species) return problem('pairing-species', { sire: male.species, dam: female.species });
  // An unsexed one may be either; the breeder who put them together knows more than the record.
  if (male.sex === 'female') return problem('pairing-sexes', { role: 'sire', sex: 'a female' });
  return female.sex === 'male' ? problem('pairing-sexes', { role: 'dam', sex: 'a male' }) : null;
}

function actFault(
  act: PairingAct,
  { male, female }: { readonly male: AnimalRecord; readonly female: AnimalRecord },
  moment: Moment,
  isTogether: boolean,
): Problem | null {
  const names = { male: sayAnimal(male), female: sayAnimal(female) };
  if (act === 'apart') return isTogether ? null : problem('pairing-not-together', names);
  if (act === 'paired') {
    const with_ = female.together.find((one) => one.with === male.id);
    if (with_ !== undefined) return problem('pairing-already', { ...names, since: sayDayShort(with_.since) });
    return againFault(act, male, female, moment);
  }
  if (!isTogether && !wasPaired(male, female, moment)) return problem('lock-unpaired', names);
  const today = female.season.some((mark) => mark.kind === 'lock' && mark.with === male.id && mark.day === moment.day);
  return today ? problem('lock-twice', { ...names, day: sayDayShort(moment.day) }) : null;
}

function careFault(
  pair: { readonly male: AnimalRecord; readonly female: AnimalRecord },
  { day }: Moment,
): Problem | null {
  const both = [pair.male, pair.female];
  const gone = both.find((one) => one.left !== null);
  if (gone?.left)
    return problem('pairing-gone', { animal: sayAnimal(gone), how: gone.left.how, day: sayDayShort(gone.left.day) });
  for (const animal of both) {
    const reason = needsVet(animal) ?? holdsOn(animal, day).find((hold) => hold.kind !== 'opaque')?.reason;
    if (reason !== undefined) return problem('pairing-on-hold', { animal: sayAnimal(animal), reason });
  }
  return null;
}

function wasPaired(male: AnimalRecord, female: AnimalRecord, { day }: Moment): boolean {
  return marksOfSeason(female, day).some((mark) => mark.kind === 'paired' && mark.with === male.id);
}

function againFault(act: PairingAct, male: AnimalRecord, female: AnimalRecord, { nowMs }: Moment): Problem | null {
  const last = female.season.findLast((mark) => mark.kind === 'paired');
  const minutes = [male, female].map((one) => minutesSince(one.lastWritten, KIND[act], nowMs));
  const isAgain = last?.with === male.id && minutes.every((since) => Math.abs(since) < AGAIN_MINUTES);
  return isAgain ? problem('pairing-again', { minutes: Math.max(1, Math.round(Math.max(...minutes))) }) : null;
}

function sayAct(act: PairingAct, male: AnimalRecord, female: AnimalRecord): string {
  const both = `${sayAnimal(male)} × ${sayAnimal(female)}`;
  switch (act) {
    case 'paired':
      return `paired: ${both}`;
    case 'lock':
      return `lock: ${both}`;
    case 'apart':
      return `apart: ${both}`;
    default:
      return act satisfies never;
  }
}
