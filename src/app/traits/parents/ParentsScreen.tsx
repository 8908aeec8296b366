import '../traits.css';
import './parents.css';
import { useSignal } from '@preact/signals';
import { useLocation } from 'preact-iso';
import {
  type AnimalRecord,
  nameOf,
  type Parents,
  type Problem,
  parentsDraft,
  sayAnimal,
  sayId,
} from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import { type App, useApp } from '../../model/app.ts';
import { AnimalPage } from '../../shell/AnimalPage.tsx';
import { writeOn } from '../writing.ts';
import { ROLES } from './choice.ts';
import { ParentLine } from './ParentLine.tsx';
import { useParents } from './useParents.ts';

/** Sets an animal's sire and dam: by scan or by search, each of them perhaps unknown. */
export function ParentsScreen({ id }: { readonly id?: string }) {
  return <AnimalPage id={id}>{(animal) => <ParentsOf key={animal.id} animal={animal} />}</AnimalPage>;
}

function ParentsOf({ animal }: { readonly animal: AnimalRecord }) {
  const app = useApp();
  const { route } = useLocation();
  const choosing = useParents(animal);
  const told = useSignal<Problem | string | null>(null);
  const { parents } = choosing;
  async function write(): Promise<void> {
    told.value = await writeParents(app, animal, parents);
    if (told.value === null) route(`/animal/${animal.id}`);
  }
  return (
    <section class="screen parents" aria-labelledby="parents-title">
      <h1 id="parents-title">Parents of {sayAnimal(animal)}</h1>
      <p class="soft">
        <a href={`/animal/${animal.id}`}>{sayId(animal.id)}</a> · <i>{animal.species}</i>. A card scanned while this
        page is open is taken as the parent that its sex says.
      </p>
      <div class="parent-lines">
        {ROLES.map((role) => (
          <ParentLine key={role} role={role} animal={animal} choosing={choosing} />
        ))}
      </div>
      <div class="parents-write">
        <div role="status">
          {typeof told.value === 'string' ? <p class="parents-told">{told.value}</p> : <Fault why={told.value} />}
        </div>
        <button type="button" class="primary" onClick={() => void write()}>
          Write parents
        </button>
        <a class="parents-leave" href={`/animal/${animal.id}`}>
          Write nothing
        </a>
      </div>
    </section>
  );
}

function Fault({ why }: { readonly why: Problem | null }) {
  return why === null ? null : <ProblemLine problem={why} />;
}

/** Writes both parents; says in words why nothing was written, or null. */
async function writeParents(app: App, animal: AnimalRecord, parents: Parents): Promise<Problem | string | null> {
  const facility = app.site.facility.value;
  if (parents.sire === animal.sire && parents.dam === animal.dam)
    return 'These parents stand on the record already. Nothing was written.';
  const draft = parentsDraft(facility, animal, parents, app.clock.today.value);
  if (!draft.ok) return draft.problem;
  const [sire, dam] = ROLES.map((role) => {
    const id = parents[role];
    return id === null ? 'unknown' : nameOf(facility, id);
  });
  return writeOn(app, animal, draft.value, `parents: ${sire} × ${dam}`);
}
