import { useLocation } from 'preact-iso';
import {
  type AnimalRecord,
  type Day,
  decideFemale,
  decidePairing,
  decideStamp,
  type FemaleAct,
  type Id,
  ok,
  pairOf,
  problem,
  type Result,
  type SeasonStamp,
  sayAnimal,
  sayId,
} from '../../core/index.ts';
import { momentOn } from '../clutch/writing.ts';
import { type App, useApp } from '../model/app.ts';

/** What can be written of an animal's season, each for a day (today if null). */
export interface SeasonDoing {
  stamp(stamp: SeasonStamp, day: Day | null): void;
  female(act: FemaleAct, day: Day | null): void;
  /** Goes to the Scan screen: the next card is the mate's. */
  pair(day: Day | null): void;
}

export function useSeason(animal: AnimalRecord): SeasonDoing {
  const app = useApp();
  const { route } = useLocation();
  const { desk, site } = app;
  return {
    stamp: (stamp, day) =>
      void desk.decided(animal.id, decideStamp(site.facility.value, animal, stamp, momentOn(app, day))),
    female: (act, day) =>
      void desk.decided(animal.id, decideFemale(site.facility.value, animal, act, momentOn(app, day))),
    pair(day) {
      desk.want({ says: `Scan the mate of ${sayAnimal(animal)}`, take: (mate) => paired(app, animal.id, mate, day) });
      route('/');
    },
  };
}

/** No pair at all is said on the Scan screen, and another card is waited for; what is asked, is asked at the record. */
function paired(app: App, id: Id, mateId: Id, day: Day | null): Result<string> {
  const { animals } = app.site.facility.value;
  const [animal, mate] = [animals.get(id), animals.get(mateId)];
  if (animal === undefined || mate === undefined)
    return { ok: false, problem: problem('unknown-id', { id: sayId(animal === undefined ? id : mateId) }) };
  const pair = pairOf(animal, mate);
  if ('code' in pair) return { ok: false, problem: pair };
  const decision = decidePairing('paired', pair, momentOn(app, day));
  if (decision.kind === 'refused') return { ok: false, problem: decision.problem };
  void app.desk.decided(id, decision);
  return ok(`/animal/${id}`);
}
