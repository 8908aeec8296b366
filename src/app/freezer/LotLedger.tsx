import { useSignal, useSignalEffect } from '@preact/signals';
import { daysBetween, type Id, type LedgerLine, type LogEvent, ledger, nameOf } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { LedgerRow, RECENT_DAYS } from '../record/index.ts';

/** Everything that happened to a lot, newest first; what is recent can be taken back, but not that it came. */
export function LotLedger({ id }: { readonly id: Id }) {
  const { site, clock } = useApp();
  const history = useSignal<readonly LogEvent[]>([]);
  useSignalEffect(() => {
    if (site.revision.value < 0) return;
    void site.history(id).then((events) => {
      history.value = events;
    });
  });
  const facility = site.facility.value;
  const lines = ledger(history.value, (one) => nameOf(facility, one), id);
  const canUndo = ({ kind, day }: LedgerLine): boolean =>
    kind !== 'lot-received' && daysBetween(day, clock.today.value) <= RECENT_DAYS;
  return (
    <section class="ledger" aria-label="Ledger">
      <h2>Ledger</h2>
      <ol class="ledger-lines">
        {lines.map((line) => (
          <LedgerRow
            key={line.id}
            line={line}
            event={canUndo(line) ? history.value.find((event) => event.id === line.id) : undefined}
            subject={id}
          />
        ))}
      </ol>
    </section>
  );
}
