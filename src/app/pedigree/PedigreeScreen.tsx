import '../look/parts.css';
import './pedigree.css';
import { useMemo } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type AnimalRecord, parseId, problem, sayAnimal, sayId } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { addressOf, readGenerations, readOther } from './address.ts';
import { Compare } from './Compare.tsx';
import { Descendants } from './Descendants.tsx';
import { PedigreeBody } from './PedigreeBody.tsx';
import { pedigreeStanding } from './standing.ts';

/** Where an animal comes from, drawn, with what follows from it. */
export function PedigreeScreen({ id }: { readonly id?: string }) {
  const { site } = useApp();
  const read = parseId(id ?? '');
  const animal = read.ok ? site.facility.value.animals.get(read.value.id) : undefined;
  if (animal === undefined)
    return (
      <section class="page">
        <h1>No pedigree here</h1>
        <ProblemLine problem={read.ok ? problem('unknown-id', { id: sayId(read.value.id) }) : read.problem} />
        <a class="primary" href="/">
          Scan a card
        </a>
      </section>
    );
  return <Pedigree key={animal.id} animal={animal} />;
}

function Pedigree({ animal }: { readonly animal: AnimalRecord }) {
  const { site } = useApp();
  const { query, route } = useLocation();
  const facility = site.facility.value;
  const generations = readGenerations(query);
  const otherId = readOther(query);
  const other = otherId === null ? null : (facility.animals.get(otherId) ?? null);
  const standing = useMemo(() => pedigreeStanding(facility, animal, generations), [facility, animal, generations]);
  return (
    <article class="screen pedigree" aria-labelledby="pedigree-title">
      <header class="ped-head">
        <h1 id="pedigree-title">Pedigree of {sayAnimal(animal)}</h1>
        <a href={`/animal/${animal.id}`}>Record</a>
      </header>
      <PedigreeBody
        standing={standing}
        generations={generations}
        step={(to) => route(addressOf(animal.id, { generations: to, other: otherId }), true)}
      >
        <Compare animal={animal} other={other} address={(id) => addressOf(animal.id, { generations, other: id })} />
      </PedigreeBody>
      <Descendants facility={facility} animal={animal} />
    </article>
  );
}
