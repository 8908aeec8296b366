import type { Signal } from '@preact/signals';
import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import {
  geneticSex,
  type Id,
  occupants,
  type Problem,
  SEXES,
  SPECIES,
  sayId,
  sayPlace,
  walkingOrder,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { lociPage, SaidBack, TraitText, useTraits, Welfare } from '../traits/index.ts';
import { candidates, sayListed } from '../traits/parents/index.ts';
import { animalDrafts, newAnimal } from './animalDrafts.ts';
import { Field, Pick, written } from './Field.tsx';

/** What of the form its other lines are read by. */
interface Kind {
  readonly species: string;
  readonly sex: (typeof SEXES)[number];
}

const NO_KIND: Kind = { species: '', sex: 'unsexed' };

/** Adds an animal with an id of its own; its card can be printed at once. */
export function AddAnimal() {
  const { site, clock } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  const [added, setAdded] = useState<Id | null>(null);
  const kind = useSignal(NO_KIND);
  const traits = useTraits(site.facility.value, kind.value.species, geneticSex(kind.value.sex));
  async function add(form: HTMLFormElement): Promise<void> {
    setAdded(null);
    const today = clock.today.value;
    const read = newAnimal(new FormData(form), site.facility.value, today);
    const result = read.ok
      ? await site.writeNew((mint) => animalDrafts(read.value, mint(), today, site.facility.value))
      : read;
    setFailed(result.ok ? null : result.problem);
    if (!read.ok || !result.ok) return;
    setAdded(result.value[0]?.subjects[0] ?? null);
    form.reset();
    traits.text.value = '';
    kind.value = NO_KIND;
  }
  return (
    <form
      class="form"
      onSubmit={(event) => {
        event.preventDefault();
        void add(event.currentTarget);
      }}
      onInput={(event) => {
        kind.value = kindIn(new FormData(event.currentTarget));
      }}
    >
      <p class="soft">
        For an animal that lives here already. One that comes in now: <a href="/arrive">an animal arrives</a>, with
        quarantine and papers.
      </p>
      <AnimalFields kind={kind} failed={failed}>
        <TraitText label="Traits, in trade words or as trait code" text={traits.text} typed={traits.typed} />
        {traits.typed.kind === 'said' && (
          <>
            <SaidBack said={traits.typed.said} />
            <Welfare words={traits.typed.said.welfare} loci={traits.loci} />
          </>
        )}
        {traits.typed.kind === 'fault' && traits.loci.rows.length === 0 && kind.value.species !== '' && (
          <a class="books-link" href={lociPage(kind.value.species)}>
            Loci and trade names of {kind.value.species}
          </a>
        )}
      </AnimalFields>
      <button type="submit" class="secondary">
        Add the animal
      </button>
      <div role="status">{added === null ? null : <Added id={added} />}</div>
      {failed === null || isAtLine(failed) ? null : <ProblemLine problem={failed} />}
    </form>
  );
}

function kindIn(form: FormData): Kind {
  return { species: written(form, 'species'), sex: SEXES.find((sex) => sex === written(form, 'sex')) ?? 'unsexed' };
}

/** Whether a refusal stands at its own line: a parent's, or that of the traits, which says it while it is typed. */
function isAtLine({ path = '' }: Problem): boolean {
  return path === 'sire' || path === 'dam' || path.startsWith('char ');
}

interface AnimalFieldsProps {
  readonly kind: Signal<Kind>;
  readonly failed: Problem | null;
  /** The line of the traits. */
  readonly children: ComponentChildren;
}

function AnimalFields({ kind, failed, children }: AnimalFieldsProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const lives = occupants(facility);
  const homes = [...walkingOrder(facility).keys()].filter((id) => {
    const kind = facility.places.get(id)?.placeKind;
    return kind !== 'room' && kind !== 'rack' && kind !== 'freezer';
  });
  return (
    <>
      <Field
        name="species"
        words="Species"
        list="species"
        hint="Its scientific name. A species that is not in the list needs a feed plan of your own."
      />
      <datalist id="species">
        {SPECIES.map(({ name, tradeName }) => (
          <option key={name} value={name}>
            {tradeName}
          </option>
        ))}
      </datalist>
      <Field name="animal-name" words="Name" />
      <Field name="number" words="Number" most={20} />
      <Pick name="sex" words="Sex">
        {['unsexed', ...SEXES.filter((sex) => sex !== 'unsexed')].map((sex) => (
          <option key={sex}>{sex}</option>
        ))}
      </Pick>
      <Field name="hatched" words="Hatched on" type="date" />
      <Field name="acquired" words="Acquired on" type="date" />
      <Field name="source" words="Acquired from" />
      <Pick name="place" words="Place">
        <option value="">no place yet</option>
        {homes.map((id) => (
          <option key={id} value={id}>
            {sayPlace(facility, id)}
            {lives.has(id) ? ' (taken)' : ''}
          </option>
        ))}
      </Pick>
      {children}
      <Parent which="sire" kind={kind} failed={failed} />
      <Parent which="dam" kind={kind} failed={failed} />
      <Field name="weight" words="Weight today" most={12} hint="900, 1.2 kg; without a unit it is grams." />
    </>
  );
}

interface ParentProps {
  readonly which: 'sire' | 'dam';
  readonly kind: Signal<Kind>;
  readonly failed: Problem | null;
}

/** A parent by name, number or id, from the animals that can be one. */
function Parent({ which: role, kind, failed }: ParentProps) {
  const { site } = useApp();
  const { species } = kind.value;
  return (
    <div>
      <Field name={role} words={role === 'sire' ? 'Sire' : 'Dam'} list={`${role}s`} hint="Name, number or id." />
      <datalist id={`${role}s`}>
        {candidates(site.facility.value, species, role).map((one) => (
          <option key={one.id} value={sayListed(one)} />
        ))}
      </datalist>
      {failed?.path === role && <ProblemLine problem={failed} />}
    </div>
  );
}

function Added({ id }: { readonly id: Id }) {
  return (
    <p class="done-line">
      Added as <a href={`/animal/${id}`}>{sayId(id)}</a>. <a href={`/print?only=${id}`}>Print its card</a>
    </p>
  );
}
