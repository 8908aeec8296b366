import type { ComponentChildren } from 'preact';
import { type AnimalRecord, type Problem, parseId, problem, sayId } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';

interface AnimalPageProps {
  readonly id: string | undefined;
  readonly children: (animal: AnimalRecord) => ComponentChildren;
}

/** The page about the animal whose id stands in the address, or what is wrong with that id. */
export function AnimalPage({ id, children }: AnimalPageProps) {
  const { site } = useApp();
  const read = parseId(id ?? '');
  if (!read.ok) return <NoRecord why={read.problem} />;
  const animal = site.facility.value.animals.get(read.value.id);
  if (animal === undefined) return <NoRecord why={problem('unknown-id', { id: sayId(read.value.id) })} />;
  return <>{children(animal)}</>;
}

/** Says why an address leads to no record, and the way on. */
export function NoRecord({ why }: { readonly why: Problem }) {
  return (
    <section class="page">
      <h1>No record here</h1>
      <ProblemLine problem={why} />
      <a class="primary" href="/">
        Scan a card
      </a>
    </section>
  );
}
