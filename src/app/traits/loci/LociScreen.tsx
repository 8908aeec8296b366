import '../traits.css';
import './loci.css';
import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type Facility, GENETIC_SPECIES, type LocusRow, lociFor } from '../../../core/index.ts';
import { useApp } from '../../model/app.ts';
import { lociPage } from '../LociToPick.tsx';
import { searchWords } from '../rowWords.ts';
import { LocusEntry } from './LocusEntry.tsx';
import { LocusSheet } from './LocusSheet.tsx';

/** The loci and trade names of a species as this site has them, and the form for rows of its own. */
export function LociScreen() {
  const { site } = useApp();
  const { query, route } = useLocation();
  const facility = site.facility.value;
  const all = speciesOf(facility, query['species']);
  const species = query['species'] ?? commonest(facility) ?? all[0] ?? '';
  return (
    <section class="screen loci" aria-labelledby="loci-title">
      <h1 id="loci-title">Loci and trade names</h1>
      <SpeciesChoice species={species} all={all} choose={(one) => route(lociPage(one), true)} />
      <SpeciesTable key={species} species={species} />
    </section>
  );
}

interface SpeciesChoiceProps {
  readonly species: string;
  readonly all: readonly string[];
  readonly choose: (species: string) => void;
}

function SpeciesChoice({ species, all, choose }: SpeciesChoiceProps) {
  const id = useId();
  return (
    <p class="field loci-species">
      <label for={id}>Species</label>
      <select id={id} value={species} onChange={(event) => choose(event.currentTarget.value)}>
        {all.map((one) => (
          <option key={one} value={one}>
            {one}
          </option>
        ))}
      </select>
    </p>
  );
}

function SpeciesTable({ species }: { readonly species: string }) {
  const { site } = useApp();
  const facility = site.facility.value;
  const { loci, setAside } = lociFor(facility, species);
  const amending = useSignal<LocusRow | 'new' | null>(null);
  const search = useSignal('');
  const searchId = useId();
  const own = new Set(facility.site.loci.filter((row) => row.species === species).map((row) => row.locus));
  const rows = loci.rows.filter((row) => searchWords(row).includes(search.value.trim().toLowerCase()));
  return (
    <>
      <p class="soft loci-about">{about(loci.rows.length, loci.sexSystem, loci.sexSystemSource)}</p>
      {setAside.map((fault) => (
        <p key={fault.message} class="look-at">
          A row of the site was set aside. {fault.message} {fault.remedy}
        </p>
      ))}
      <div class="loci-ways">
        {loci.rows.length > 0 && (
          <p class="field">
            <label for={searchId}>Find a trade name or sign</label>
            <input
              id={searchId}
              type="search"
              autocomplete="off"
              onInput={(event) => {
                search.value = event.currentTarget.value;
              }}
            />
          </p>
        )}
        <button
          type="button"
          class="secondary"
          onClick={() => {
            amending.value = 'new';
          }}
        >
          Add a row
        </button>
      </div>
      <ul class="loci-rows">
        {rows.map((row) => (
          <LocusEntry
            key={row.locus}
            row={row}
            loci={loci}
            isOwn={own.has(row.locus)}
            onAmend={() => {
              amending.value = row;
            }}
          />
        ))}
      </ul>
      {rows.length === 0 && loci.rows.length > 0 && <p class="empty">No row has this name or sign.</p>}
      {amending.value !== null && (
        <LocusSheet
          species={species}
          row={amending.value === 'new' ? null : amending.value}
          onClose={() => {
            amending.value = null;
          }}
        />
      )}
    </>
  );
}

function about(rows: number, system: string | null, source: string | null): string {
  if (rows === 0) return 'No loci are known here. Add the site’s own row; its names can be used at once.';
  const sexes =
    system === null ? 'How sex is inherited is not known here.' : `Sexes ${system}: ${source ?? 'no source'}.`;
  return `${rows} loci. ${sexes} A row from memory is a starting point: amend it where you know better.`;
}

/** The species that most animals of the site are of; null on a site without any. */
function commonest({ animals }: Facility): string | null {
  const counts = new Map<string, number>();
  for (const { species } of animals.values()) counts.set(species, (counts.get(species) ?? 0) + 1);
  return [...counts].sort(([, a], [, b]) => b - a)[0]?.[0] ?? null;
}

/** The species that have loci or animals here, and the one that was asked for. */
function speciesOf(facility: Facility, asked: string | undefined): readonly string[] {
  const animals = [...facility.animals.values()].map((one) => one.species);
  const own = facility.site.loci.map((row) => row.species);
  return [...new Set([...GENETIC_SPECIES, ...animals, ...own, ...(asked === undefined ? [] : [asked])])].sort();
}
