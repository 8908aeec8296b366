import {
  type AnimalRecord,
  type ClutchFindings,
  type ClutchRecord,
  candidateSires,
  emptyFacility,
  type Facility,
} from '../../core/index.ts';
import { useAsked } from '../genetics/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { Because } from '../record/Because.tsx';
import { ChangedChances } from './ChangedChances.tsx';
import { Paternity } from './Paternity.tsx';
import { sayOdds, sayTest } from './sayFindings.ts';

interface FindingsProps {
  readonly clutch: ClutchRecord;
  readonly young: readonly AnimalRecord[];
}

/** What the young say of their sire and of what their parents carry. */
export function Findings({ clutch, young }: FindingsProps) {
  const { site } = useApp();
  const facility = kinOnly(site.facility.value, clutch, young);
  const key = JSON.stringify(
    [...facility.animals.values()].map(({ id, sex, traits, season }) => [id, sex, traits, season]),
  );
  const asked = useAsked({ ask: 'findings', facility, clutch }, `${key}${clutch.sire}`);
  return (
    <section class="findings" aria-labelledby="findings-title" aria-busy={asked?.at === 'working'}>
      <header class="part-head">
        <h2 id="findings-title">What the young say</h2>
      </header>
      {asked?.at === 'failed' && <ProblemLine problem={asked.problem} />}
      {asked?.at === 'working' && <p class="soft">Reading the young …</p>}
      {asked?.at === 'done' && <Found clutch={clutch} found={asked.value} />}
    </section>
  );
}

/** The parents that come into question and the young: nobody else is needed, and the worker gets no more. */
function kinOnly(facility: Facility, clutch: ClutchRecord, young: readonly AnimalRecord[]): Facility {
  const dam = facility.animals.get(clutch.dam);
  const sires = dam === undefined ? [] : candidateSires(facility, dam, clutch.laidOn).map(({ id }) => id);
  const parents = [clutch.dam, ...(clutch.sire === null ? [] : [clutch.sire]), ...sires].flatMap(
    (id) => facility.animals.get(id) ?? [],
  );
  const animals = new Map([...parents, ...young].map((one) => [one.id, one]));
  return { ...emptyFacility(), site: facility.site, animals };
}

function Found({ clutch, found }: { readonly clutch: ClutchRecord; readonly found: ClutchFindings }) {
  const { paternity, test, parthenogenesis, changed } = found;
  if (paternity === null)
    return (
      <p class="soft">
        {found.sires.length === 0
          ? 'No male is written for this clutch, so there is nobody to compare the young with.'
          : 'No young has its traits written yet.'}
      </p>
    );
  return (
    <>
      <Paternity clutch={clutch} sires={found.sires} paternity={paternity} />
      {test !== null && (
        <div class="finding">
          <h3>The numbers</h3>
          <p>{sayOdds(test)}</p>
          <Because about="the numbers" why={sayTest(test)} />
        </div>
      )}
      {parthenogenesis !== null && (
        <div class="finding finding-look">
          <h3>Perhaps without a father</h3>
          <p>
            {parthenogenesis.odds} <strong>{parthenogenesis.says}</strong>
          </p>
          <Because about="the flag" why={parthenogenesis.reasons} />
        </div>
      )}
      {changed.map((one) => (
        <ChangedChances key={one.id} id={one.id} chances={one.chances} />
      ))}
    </>
  );
}
