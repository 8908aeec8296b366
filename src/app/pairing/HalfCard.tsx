import {
  type AnimalRecord,
  cardTraits,
  type Facility,
  holdsOn,
  type Id,
  lastWeight,
  type Problem,
  sayAnimal,
  sayDayShort,
  sayGrams,
  sayId,
  saySex,
  traitsOf,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import type { Choice, Role } from './choice.ts';
import { ParentSearch } from './ParentSearch.tsx';
import { goneFault } from './taking.ts';
import type { Wanting } from './useWanted.ts';

export interface HalfProps {
  readonly role: Role;
  readonly choice: Choice;
  readonly wanting: Wanting;
  /** What the pairing itself says against this half. */
  readonly fault: Problem | null;
  readonly isOpen: boolean;
  open(isOpen: boolean): void;
}

const TITLES = { sire: 'Sire', dam: 'Dam' } as const;
const SEX_OF = { sire: 'male', dam: 'female' } as const;

/** One half of the pairing: who it is, or how to say who it is. */
export function HalfCard(props: HalfProps) {
  const { role, choice, wanting, fault, isOpen, open } = props;
  const { site } = useApp();
  const id = choice[role];
  const animal = id === null ? undefined : site.facility.value.animals.get(id);
  const refusal = wanting.refusal?.role === role ? wanting.refusal.problem : null;
  const faults = animal === undefined ? [] : faultsOf(site.facility.value, animal, fault);
  return (
    <section class={`half half-${role}`} aria-label={TITLES[role]}>
      <div class="half-role">
        <span>
          {TITLES[role]} {saySex(animal?.sex ?? SEX_OF[role])}
        </span>
        {animal !== undefined && (
          <button type="button" class="link" aria-expanded={isOpen} onClick={() => open(!isOpen)}>
            {isOpen ? `Keep this ${role}` : `Another ${role}`}
          </button>
        )}
      </div>
      {animal === undefined && id !== null && <p class="half-nobody">This site has no animal {sayId(id)}.</p>}
      {animal !== undefined && <Parent animal={animal} />}
      {[...faults, ...(refusal === null ? [] : [refusal])].map((one) => (
        <ProblemLine key={one.message} problem={one} />
      ))}
      {(animal === undefined || isOpen) && <Chooser {...props} />}
    </section>
  );
}

function Chooser({ role, choice, wanting, open }: HalfProps) {
  return (
    <div class="half-chooser">
      <ParentSearch
        role={role}
        choice={choice}
        choose={(id: Id) => {
          open(false);
          wanting.choose(id, role);
        }}
      />
      <button type="button" class="link" onClick={() => wanting.walk(role)}>
        Scan the {role} by camera
      </button>
    </div>
  );
}

function Parent({ animal }: { readonly animal: AnimalRecord }) {
  const { site, clock } = useApp();
  const traits = cardTraits(site.facility.value, animal);
  const weight = lastWeight(animal);
  const hold = animal.left === null ? holdsOn(animal, clock.today.value)[0] : undefined;
  return (
    <>
      <h2 class="half-name">
        <a href={`/animal/${animal.id}`}>{sayAnimal(animal)}</a>
      </h2>
      <p class="half-id">
        {sayId(animal.id)}
        <span>{weight === null ? 'not weighed yet' : `${sayGrams(weight.weightG)}, ${sayDayShort(weight.day)}`}</span>
      </p>
      <p class="half-traits">
        {traits === null ? 'No traits written: taken as wild type' : (traits.words?.long ?? traits.code)}
      </p>
      {hold !== undefined && (
        <p class={`hold-band${hold.kind === 'vet' ? ' hold-vet' : ''}`}>
          <span>On hold: {hold.reason}</span>
        </p>
      )}
    </>
  );
}

/** What is wrong with this animal as a parent, each once. */
export function faultsOf(facility: Facility, animal: AnimalRecord, fault: Problem | null): readonly Problem[] {
  const traits = traitsOf(facility, animal);
  const all = [goneFault(animal), traits.ok ? null : traits.problem, fault].filter((one) => one !== null);
  return all.filter((one, at) => all.findIndex((other) => other.message === one.message) === at);
}
