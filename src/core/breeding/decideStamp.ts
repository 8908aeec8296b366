import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import type { Decision, Moment } from '../care/index.ts';
import type { Facility } from '../facility/index.ts';
import { problem } from '../problems.ts';
import { decideFemale } from './decideFemale.ts';
import { decidePairing, type PairingAct } from './decidePairing.ts';
import { marksOfSeason } from './marks.ts';

/** What one scan of one card can mean in the season, because the record knows who is with whom. */
export type SeasonStamp = 'lock' | 'apart' | 'ovulation' | 'pre-lay-shed';

/** Whether a stamp’s id is one of the season’s. */
export function isSeasonStamp(id: string): id is SeasonStamp {
  return id === 'lock' || id === 'apart' || id === 'ovulation' || id === 'pre-lay-shed';
}

/**
 * What a season stamp writes of the animal whose card was scanned: a lock or an end with the one that is in the tub, else
 * with the last partner of the season. Refused where nobody is known: `season-alone`.
 */
export function decideStamp(facility: Facility, animal: AnimalRecord, stamp: SeasonStamp, moment: Moment): Decision {
  switch (stamp) {
    case 'lock':
    case 'apart':
      return withMate(facility, animal, stamp, moment);
    case 'ovulation':
    case 'pre-lay-shed':
      return decideFemale(facility, animal, { do: stamp }, moment);
    default:
      return stamp satisfies never;
  }
}

function withMate(facility: Facility, animal: AnimalRecord, act: PairingAct, moment: Moment): Decision {
  const now = animal.together.at(-1)?.with;
  const last = marksOfSeason(animal, moment.day).findLast((mark) => mark.kind === 'paired')?.with ?? null;
  const mate = facility.animals.get(now ?? last ?? animal.id);
  if (mate === undefined || mate.id === animal.id)
    return { kind: 'refused', problem: problem('season-alone', { animal: sayAnimal(animal) }) };
  const pair = animal.sex === 'male' ? { male: animal, female: mate } : { male: mate, female: animal };
  return decidePairing(act, pair, moment);
}
