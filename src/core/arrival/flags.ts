import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import type { Decision, EventDraft, Moment } from '../care/index.ts';
import { ANIMAL_FLAGS } from '../events/index.ts';
import { problem } from '../problems.ts';

/** What is true of an animal whatever it weighs: that one person is not enough, that it is venomous, that it is not for sale. */
export type AnimalFlag = (typeof ANIMAL_FLAGS)[number];

const WORDS: Readonly<Record<AnimalFlag, string>> = {
  'two-people': 'two people',
  venomous: 'venomous',
  'not-for-sale': 'not for sale',
};

/** The words of a flag. */
export function sayFlag(flag: AnimalFlag): string {
  return WORDS[flag];
}

/**
 * Sets an animal's flags, whole each time. Refused: `flags-same`. Asked about: taking off one that keeps people safe, and a flag
 * “not for sale” on an animal that is on offer.
 */
export function decideFlags(animal: AnimalRecord, wanted: readonly AnimalFlag[], moment: Moment): Decision {
  const flags = ANIMAL_FLAGS.filter((flag) => wanted.includes(flag));
  const off = animal.flags.filter((flag) => !flags.includes(flag));
  const on = flags.filter((flag) => !animal.flags.includes(flag));
  const name = sayAnimal(animal);
  if (off.length === 0 && on.length === 0) return { kind: 'refused', problem: problem('flags-same', { animal: name }) };
  const drafts: readonly EventDraft[] = [
    { kind: 'animal-flagged', subjects: [animal.id], payload: { flags }, day: moment.day },
  ];
  const said = [...on.map(sayFlag), ...off.map((flag) => `no longer ${sayFlag(flag)}`)].join(', ');
  const danger = off.filter((flag) => flag !== 'not-for-sale').map(sayFlag);
  if (danger.length > 0)
    return { kind: 'asks', problem: problem('flags-off', { animal: name, flags: danger.join(', ') }), drafts, said };
  if (on.includes('not-for-sale') && animal.offer !== null)
    return { kind: 'asks', problem: problem('flags-offer', { animal: name }), drafts, said };
  return { kind: 'accepted', drafts, said };
}
