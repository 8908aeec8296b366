import type { ComponentChildren } from 'preact';
import {
  type AnimalRecord,
  type CandidateSire,
  type ClutchRecord,
  candidateSires,
  type Id,
  nameOf,
  sayGrams,
  sayId,
  saySex,
} from '../../core/index.ts';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { useApp } from '../model/app.ts';
import { Because } from '../record/Because.tsx';
import { HatchedLine } from './HatchedLine.tsx';
import { sayClutch, sayCount } from './sayClutch.ts';
import type { ClutchView } from './view.ts';
import { WindowLine } from './WindowLine.tsx';

interface ClutchHeadProps {
  readonly clutch: ClutchRecord;
  readonly dam: AnimalRecord | null;
  readonly view: ClutchView;
}

/** The clutch as its tag says it: whose it is, what was laid, and when it is expected to hatch. */
export function ClutchHead({ clutch, dam, view }: ClutchHeadProps) {
  const { site, clock } = useApp();
  const today = clock.today.value;
  const isEggs = clutch.bears === 'eggs';
  return (
    <header class="clutch-tag">
      <p class="clutch-id">{sayId(clutch.id)}</p>
      <h1 id="clutch-title">{sayClutch(site.facility.value, clutch)}</h1>
      <p class="clutch-count">
        {sayCount(clutch)}
        {clutch.clutchG !== null && <span class="soft"> {sayGrams(clutch.clutchG)} together</span>}
      </p>
      <hr class="card-rule" />
      <dl class="clutch-facts">
        <Fact term="Dam">
          <Parent id={clutch.dam} />
        </Fact>
        <Fact term="Sire">
          {clutch.sire === null ? <Sires clutch={clutch} dam={dam} young={view.young} /> : <Parent id={clutch.sire} />}
        </Fact>
        <Fact term={isEggs ? 'Laid' : 'Born'}>
          <SpokenDay day={clutch.laidOn} today={today} />
        </Fact>
        {clutch.pippedOn !== null && (
          <Fact term="Pipped">
            <SpokenDay day={clutch.pippedOn} today={today} />
          </Fact>
        )}
        {isEggs && clutch.hatchedOn !== null && (
          <Fact term="Hatched">
            <HatchedLine clutch={clutch} isPart={view.isPart} />
          </Fact>
        )}
        {view.isOpen && !view.isPart && (
          <Fact term="Hatches">
            {view.window === null ? (
              <span class="soft">nobody has said how long this species takes</span>
            ) : (
              <WindowLine window={view.window} today={today} />
            )}
          </Fact>
        )}
      </dl>
    </header>
  );
}

function Fact({ term, children }: { readonly term: string; readonly children: ComponentChildren }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** An animal by name with its sex as the trade counts it. */
export function Parent({ id }: { readonly id: Id }) {
  const { site } = useApp();
  const animal = site.facility.value.animals.get(id);
  if (animal === undefined) return <span>{sayId(id)}, not on record here</span>;
  return (
    <>
      <a href={`/animal/${id}`}>{nameOf(site.facility.value, id)}</a> <span class="soft">{saySex(animal.sex)}</span>
      {animal.left !== null && <span class="soft">, {animal.left.how}</span>}
    </>
  );
}

interface SiresProps {
  readonly clutch: ClutchRecord;
  readonly dam: AnimalRecord | null;
  readonly young: readonly AnimalRecord[];
}

/** Who comes into question where nobody has said it, with the reasons. */
function Sires({ clutch, dam, young }: SiresProps) {
  const { site } = useApp();
  const named = [...new Set(young.map(({ sire }) => sire))];
  const [only] = named;
  if (named.length === 1 && only !== null && only !== undefined)
    return (
      <>
        <Parent id={only} /> <span class="soft">as written on the young</span>
      </>
    );
  const sires = dam === null ? [] : candidateSires(site.facility.value, dam, clutch.laidOn);
  return (
    <div class="clutch-sires">
      <p>
        unknown
        {sires.map((one: CandidateSire, at) => (
          <span key={one.id}>
            {at === 0 ? ': ' : ' or '}
            <Parent id={one.id} />
          </span>
        ))}
      </p>
      <Because about="possible sires" why={sires.map(({ why }) => `${why}.`)} />
    </div>
  );
}
