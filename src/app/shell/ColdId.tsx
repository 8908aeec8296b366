import { useEffect } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type Facility, type Id, parseId, problem, sayId } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { RecordScreen } from '../record/index.ts';
import { NoRecord } from './AnimalPage.tsx';

/** The address on a card, as a phone's own camera opens it: the record, a place, a clutch, or why there is none. */
export function ColdId({ id }: { readonly id?: string }) {
  const { site } = useApp();
  const { route } = useLocation();
  const read = parseId(id ?? '');
  const page = read.ok ? pageOf(site.facility.value, read.value.id) : null;
  useEffect(() => {
    if (page !== null) route(page, true);
  }, [page]);
  if (!read.ok) return <NoRecord why={read.problem} />;
  if (site.facility.value.animals.has(read.value.id)) return <RecordScreen id={read.value.id} />;
  return page === null ? <NoRecord why={problem('unknown-id', { id: sayId(read.value.id) })} /> : null;
}

/** The page of a place label or a clutch tag; null for anything else. */
function pageOf({ places, clutches, items, lots }: Facility, id: Id): string | null {
  if (places.has(id)) return `/place/${id}`;
  if (items.has(id)) return `/item/${id}`;
  if (lots.has(id)) return `/lot/${id}`;
  return clutches.has(id) ? `/clutch/${id}` : null;
}
