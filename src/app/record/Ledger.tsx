import { useSignal, useSignalEffect } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import {
  daysBetween,
  type Id,
  LEDGER_CHIPS,
  type LedgerChip,
  type LedgerLine,
  type LogEvent,
  ledger,
  nameOf,
} from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { LedgerRow } from './LedgerRow.tsx';

const PAGE = 50;
/** Lines of so many days can be taken back here; older ones are history. */
export const RECENT_DAYS = 14;

/** Everything that happened to an animal, newest first. */
export function Ledger({ id }: { readonly id: Id }) {
  const { site, clock } = useApp();
  const history = useSignal<readonly LogEvent[] | null>(null);
  const chip = useSignal<LedgerChip | 'all'>('all');
  const shown = useSignal(PAGE);
  useSignalEffect(() => {
    if (site.revision.value < 0) return;
    void site.history(id).then((events) => {
      history.value = events;
    });
  });
  const facility = site.facility.value;
  const events = history.value;
  const lines = useMemo(
    () => (events === null ? [] : ledger(events, (one) => nameOf(facility, one), id)),
    [events, id],
  );
  const wanted = chip.value === 'all' ? lines : lines.filter((line) => line.chip === chip.value);
  const today = clock.today.value;
  const isRecent = (line: LedgerLine) => daysBetween(line.day, today) <= RECENT_DAYS;
  return (
    <section class="ledger" aria-label="Ledger">
      <h2>Ledger</h2>
      <Chips
        chosen={chip.value}
        counts={countChips(lines.map((line) => line.chip))}
        onChoose={(next) => {
          chip.value = next;
          shown.value = PAGE;
        }}
      />
      {events !== null && lines.length === 0 && <p class="empty">Nothing was written yet. Feed, weigh or note it.</p>}
      <ol class="ledger-lines">
        {wanted.slice(0, shown.value).map((line) => (
          <LedgerRow
            key={line.id}
            line={line}
            event={isRecent(line) ? events?.find((event) => event.id === line.id) : undefined}
            subject={id}
          />
        ))}
      </ol>
      {wanted.length > shown.value && (
        <button
          type="button"
          class="ledger-more"
          onClick={() => {
            shown.value += PAGE;
          }}
        >
          {Math.min(PAGE, wanted.length - shown.value)} more of {wanted.length}
        </button>
      )}
    </section>
  );
}

interface ChipsProps {
  readonly chosen: LedgerChip | 'all';
  readonly counts: ReadonlyMap<LedgerChip, number>;
  readonly onChoose: (chip: LedgerChip | 'all') => void;
}

/** Which lines are shown; a chip with no lines behind it is not offered. */
function Chips({ chosen, counts, onChoose }: ChipsProps) {
  const offered = LEDGER_CHIPS.filter((chip) => counts.has(chip) || chip === chosen);
  return (
    <fieldset class="chips">
      <legend class="unseen">Show</legend>
      {(['all', ...offered] as const).map((chip) => (
        <button key={chip} type="button" class="chip" aria-pressed={chosen === chip} onClick={() => onChoose(chip)}>
          {chip}
        </button>
      ))}
    </fieldset>
  );
}

function countChips(chips: readonly LedgerChip[]): ReadonlyMap<LedgerChip, number> {
  const counts = new Map<LedgerChip, number>();
  for (const chip of chips) counts.set(chip, (counts.get(chip) ?? 0) + 1);
  return counts;
}
