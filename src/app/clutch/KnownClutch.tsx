import type { ComponentChild } from 'preact';
import { type AnimalRecord, type ClutchRecord, parseId, problem, sayId } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';

interface KnownClutchProps {
  readonly id: string | undefined;
  children(clutch: ClutchRecord, dam: AnimalRecord | null): ComponentChild;
}

/** The clutch of an address and its dam, or why there is none. */
export function KnownClutch({ id = '', children }: KnownClutchProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const read = parseId(id);
  const clutch = read.ok ? facility.clutches.get(read.value.id) : undefined;
  if (clutch !== undefined) return <>{children(clutch, facility.animals.get(clutch.dam) ?? null)}</>;
  return (
    <section class="page">
      <h1>No clutch here</h1>
      <ProblemLine problem={read.ok ? problem('clutch-unknown', { id: sayId(read.value.id) }) : read.problem} />
      <a class="primary" href="/">
        Scan a clutch tag
      </a>
    </section>
  );
}
