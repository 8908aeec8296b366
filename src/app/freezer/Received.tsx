import { sayId, sayPrey } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

/** The lot that was received last: its label is printed now, while the box stands there. */
export function Received() {
  const { freezer, site } = useApp();
  const id = freezer.received.value;
  const lot = id === null ? undefined : site.facility.value.lots.get(id);
  if (lot === undefined) return null;
  return (
    <section class="received" aria-label="Received">
      <p role="status">
        <strong>
          {lot.received} × {sayPrey(lot.prey)}
        </strong>{' '}
        is lot <a href={`/lot/${lot.id}`}>{sayId(lot.id)}</a> now.
      </p>
      <a class="primary" href={`/print?what=lot&only=${lot.id}`} onClick={() => freezer.labelled()}>
        Print its label
      </a>
      <button type="button" class="link" onClick={() => freezer.labelled()}>
        Not now
      </button>
    </section>
  );
}
