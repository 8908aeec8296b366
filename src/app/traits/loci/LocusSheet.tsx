import { useSignal } from '@preact/signals';
import {
  type AnimalRecord,
  type Facility,
  geneticSex,
  type LocusRow,
  type LocusTable,
  lociOf,
  type Problem,
  parseTraits,
  type Result,
  sayAnimal,
  traitsOf,
  withRow,
} from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import { type App, useApp } from '../../model/app.ts';
import { Sheet } from '../../shell/Sheet.tsx';
import { LocusFields } from './LocusFields.tsx';
import { locusDraft, rowIn } from './locusDraft.ts';

interface LocusSheetProps {
  readonly species: string;
  /** The row to amend; null adds one. */
  readonly row: LocusRow | null;
  readonly onClose: () => void;
}

/** Adds a row of the site's own or amends one; core checks it with the rest of the table before it is written. */
export function LocusSheet({ species, row, onClose }: LocusSheetProps) {
  const app = useApp();
  const start = useSignal(row);
  const failed = useSignal<Problem | null>(null);
  /** The row that a keeper was told of, and whose codes it would leave unread. */
  const told = useSignal<{ readonly of: string; readonly losers: readonly AnimalRecord[] } | null>(null);
  const brought = row === null ? null : broughtRow(species, row.locus);
  async function write(form: HTMLFormElement): Promise<void> {
    const facility = app.site.facility.value;
    const read = checkedRow(facility, new FormData(form), species, row);
    failed.value = read.ok ? null : read.problem;
    if (!read.ok) return;
    const [of, losers] = [JSON.stringify(read.value.row), unread(facility, read.value.loci)];
    if (losers.length > 0 && told.value?.of !== of) {
      told.value = { of, losers };
      return;
    }
    failed.value = await writeRow(app, read.value.row);
    if (failed.value === null) onClose();
  }
  return (
    <Sheet title={row === null ? `New locus of ${species}` : `${row.locus} of ${species}`} onClose={onClose}>
      <form
        class="locus-sheet"
        onSubmit={(event) => {
          event.preventDefault();
          void write(event.currentTarget);
        }}
      >
        <LocusFields key={start.value === row ? 'row' : 'brought'} row={start.value} isNew={row === null} />
        {brought !== null && start.value !== brought && (
          <button
            type="button"
            onClick={() => {
              start.value = brought;
            }}
          >
            Fill in the row that came with the tool
          </button>
        )}
        <div class="trait-write">
          {failed.value !== null && <ProblemLine problem={failed.value} />}
          {told.value !== null && <Losers losers={told.value.losers} />}
          <button type="submit" class="primary">
            Write the row
          </button>
          <button type="button" class="trait-leave" onClick={onClose}>
            Write nothing
          </button>
        </div>
      </form>
    </Sheet>
  );
}

function Losers({ losers }: { readonly losers: readonly AnimalRecord[] }) {
  return (
    <p class="look-at" role="status">
      With this row the trait code of {losers.map(sayAnimal).join(', ')} can no longer be read: their cards print it as
      it was written. Write the row again if that is meant.
    </p>
  );
}

function checkedRow(
  facility: Facility,
  form: FormData,
  species: string,
  before: LocusRow | null,
): Result<{ readonly row: LocusRow; readonly loci: LocusTable }> {
  const read = rowIn(form, species, before);
  if (!read.ok) return read;
  const table = withRow(facility, read.value);
  return table.ok ? { ok: true, value: { row: read.value, loci: table.value } } : table;
}

/** The animals whose code is read now and could not be with this table. */
function unread(facility: Facility, loci: LocusTable): readonly AnimalRecord[] {
  return [...facility.animals.values()].filter((animal) => {
    if (animal.species !== loci.species || animal.traits === null || !traitsOf(facility, animal).ok) return false;
    return !parseTraits(animal.traits.code, loci, geneticSex(animal.sex)).ok;
  });
}

async function writeRow({ site, strip, signs, clock }: App, row: LocusRow): Promise<Problem | null> {
  const written = await site.write([locusDraft(row, clock.today.value)]);
  signs.give(written.ok ? 'accepted' : 'refused');
  if (!written.ok) return written.problem;
  const said = `locus ${row.locus} written`;
  strip.add({ subject: null, name: row.species, said, result: 'accepted', problem: null, events: written.value });
  return null;
}

function broughtRow(species: string, locus: string): LocusRow | null {
  const table = lociOf(species);
  return table.ok ? (table.value.rows.find((one) => one.locus === locus) ?? null) : null;
}
