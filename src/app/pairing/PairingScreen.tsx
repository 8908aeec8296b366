import { useMemo, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type Facility, type PlannedPairing, type Problem, planPairing, type Result } from '../../core/index.ts';
import '../look/parts.css';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { broodOf } from './brood.ts';
import { type Choice, pairingAddress, type Role, readChoice } from './choice.ts';
import { faultsOf, HalfCard } from './HalfCard.tsx';
import { KinLines } from './KinLines.tsx';
import { Outcomes } from './Outcomes.tsx';
import './pairing.css';
import { useWanted, type Wanting } from './useWanted.ts';
import { Warnings } from './Warnings.tsx';
import { WhichSheet } from './WhichSheet.tsx';
import { WritePairing } from './WritePairing.tsx';

/** Two scans, and what the young of these two can be. */
export function PairingScreen() {
  const { site } = useApp();
  const { query } = useLocation();
  const choice = readChoice(query);
  const facility = site.facility.value;
  const wanting = useWanted(choice);
  const planned = useMemo(() => plan(facility, choice), [facility, choice.sire, choice.dam]);
  const fault = planned === null || planned.ok ? null : planned.problem;
  const [sire, dam] = [animalOf(facility, choice.sire), animalOf(facility, choice.dam)];
  return (
    <section class="screen pairing" aria-labelledby="pairing-title">
      <h1 id="pairing-title">Pairing</h1>
      {facility.animals.size === 0 ? (
        <p class="empty">
          No animals yet, so there is nobody to pair. <a href="/books">Add a rack and an animal in Books.</a>
        </p>
      ) : (
        <>
          <Halves choice={choice} wanting={wanting} fault={fault} />
          {planned?.ok === true && <Planned planned={planned.value} choice={choice} />}
          <WritePairing sire={sire} dam={dam} whyNot={whyNot(choice, facility, fault)} />
        </>
      )}
      <Which choice={choice} wanting={wanting} />
    </section>
  );
}

interface HalvesProps {
  readonly choice: Choice;
  readonly wanting: Wanting;
  readonly fault: Problem | null;
}

/** The two halves of one card; what is wrong with both together stands under them. */
function Halves({ choice, wanting, fault }: HalvesProps) {
  const [open, setOpen] = useState<Role | null>(null);
  const half = (role: Role) => (
    <HalfCard
      role={role}
      choice={choice}
      wanting={wanting}
      fault={fault?.path === role ? fault : null}
      isOpen={open === role}
      open={(isOpen) => {
        setOpen(isOpen ? role : null);
        wanting.waitFor(isOpen ? role : null);
      }}
    />
  );
  const facility = useApp().site.facility.value;
  const said = [choice.sire, choice.dam].flatMap((id) => {
    const animal = animalOf(facility, id);
    return animal === null ? [] : faultsOf(facility, animal, null).map(({ message }) => message);
  });
  const isSaidAbove = fault !== null && (isOfHalf(fault) || said.includes(fault.message));
  const faults = [wanting.refusal?.role === null ? wanting.refusal.problem : null, isSaidAbove ? null : fault].filter(
    (one) => one !== null,
  );
  return (
    <>
      {choice.sire === null && choice.dam === null && (
        <p class="pairing-first">
          Scan two cards, in either order: a male becomes the sire, a female the dam. Or find them by name.
        </p>
      )}
      <div class="halves">
        {half('sire')}
        {half('dam')}
      </div>
      {faults.map((one) => (
        <ProblemLine key={one.message} problem={one} />
      ))}
    </>
  );
}

function Planned({ planned, choice }: { readonly planned: PlannedPairing; readonly choice: Choice }) {
  const { route } = useLocation();
  const brood = broodOf(planned.sire.species);
  return (
    <>
      <Warnings planned={planned} brood={brood} />
      <div class="pairing-grounds">
        <KinLines planned={planned} />
        {planned.assumed.length > 0 && (
          <section class="pairing-assumed" aria-labelledby="assumed-title">
            <h2 id="assumed-title">Taken for granted</h2>
            <ul>
              {planned.assumed.map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
          </section>
        )}
      </div>
      <Outcomes
        planned={planned}
        brood={brood}
        eggs={choice.eggs ?? brood.mean}
        setEggs={(eggs) => route(pairingAddress({ ...choice, eggs }), true)}
      />
      {choice.eggs === null && (
        <p class="soft because">
          The {brood.clutch}: {brood.basis}.
        </p>
      )}
    </>
  );
}

function Which({ choice, wanting }: { readonly choice: Choice; readonly wanting: Wanting }) {
  const { site } = useApp();
  const { route } = useLocation();
  const { either } = choice;
  const animal = animalOf(site.facility.value, either);
  if (animal === null) return null;
  return (
    <WhichSheet
      animal={animal}
      choose={(role) => wanting.choose(animal.id, role)}
      leave={() => route(pairingAddress({ ...choice, either: null }), true)}
    />
  );
}

function plan(facility: Facility, { sire, dam }: Choice): Result<PlannedPairing> | null {
  if (animalOf(facility, sire) === null || animalOf(facility, dam) === null || sire === null || dam === null)
    return null;
  return planPairing(facility, sire, dam);
}

function animalOf(facility: Facility, id: Choice['sire']) {
  return id === null ? null : (facility.animals.get(id) ?? null);
}

/** Why the pairing cannot be written; a trait that cannot be read hinders the figures, not the log. */
function whyNot(choice: Choice, facility: Facility, fault: Problem | null): string | null {
  const [sire, dam] = [animalOf(facility, choice.sire), animalOf(facility, choice.dam)];
  if (sire === null && dam === null) return 'choose a sire and a dam first';
  if (sire === null) return 'choose a sire first';
  if (dam === null) return 'choose a dam first';
  const speaks = fault?.code === 'pairing-self' || fault?.code === 'pairing-species' || fault?.code === 'pairing-sexes';
  return speaks ? `not these two: ${fault.message}` : null;
}

function isOfHalf({ path }: Problem): boolean {
  return path === 'sire' || path === 'dam';
}
