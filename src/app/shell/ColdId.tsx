import { useEffect } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type Problem, parseId, problem, sayId } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { RecordScreen } from '../record/index.ts';

/** The address on a card, as a phone's own camera opens it: the record, a place, or why there is none. */
export function ColdId({ id }: { readonly id?: string }) {
  const { site } = useApp();
  const { route } = useLocation();
  const read = parseId(id ?? '');
  const place = read.ok && site.facility.value.places.has(read.value.id) ? read.value.id : null;
  useEffect(() => {
    if (place !== null) route(`/place/${place}`, true);
  }, [place]);
  if (!read.ok) return <NoRecord why={read.problem} />;
  if (site.facility.value.animals.has(read.value.id)) return <RecordScreen id={read.value.id} />;
  return place === null ? <NoRecord why={problem('unknown-id', { id: sayId(read.value.id) })} /> : null;
}

function NoRecord({ why }: { readonly why: Problem }) {
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
