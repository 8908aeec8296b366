import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { type LocusRow, locusWords, type Traits } from '../../core/index.ts';
import { LocusPick } from './LocusPick.tsx';
import { codeAt } from './picks.ts';
import { sayConfidence, sayInheritance, sayNames, searchWords } from './rowWords.ts';
import type { Reading } from './useTraits.ts';

/** The loci of the species, to search and to pick copies from; picking rewrites the text. */
export function LociToPick({ reading }: { readonly reading: Reading }) {
  const { loci, traits } = reading;
  const search = useSignal('');
  const open = useSignal<string | null>(null);
  const id = useId();
  const terms = search.value.toLowerCase().split(/\s+/).filter(Boolean);
  const rows = loci.rows.filter((row) => terms.every((term) => searchWords(row).includes(term)));
  return (
    <section class="loci-to-pick" aria-label="Pick from the loci">
      <p class="field">
        <label for={id}>
          Or pick from the {loci.rows.length} loci of <i>{loci.species}</i>
        </label>
        <input
          id={id}
          type="search"
          placeholder="Trade name"
          autocomplete="off"
          onInput={(event) => {
            search.value = event.currentTarget.value;
          }}
          onKeyDown={(event) => {
            // Enter in a search means found, not written.
            if (event.key === 'Enter') event.preventDefault();
          }}
        />
      </p>
      {traits === null && <p class="look-at">The text cannot be read yet: mend it first, or empty it and pick.</p>}
      {rows.length === 0 && (
        <p class="hint">
          No locus has this name. <a href={lociPage(loci.species)}>Add the site’s own row</a>
        </p>
      )}
      <ul>
        {rows.map((row) => (
          <LocusLine
            key={row.locus}
            row={row}
            reading={reading}
            isOpen={open.value === row.locus && traits !== null}
            onOpen={() => {
              open.value = open.value === row.locus ? null : row.locus;
            }}
          />
        ))}
      </ul>
    </section>
  );
}

/** The page with the loci of a species. */
export function lociPage(species: string): string {
  return `/loci?species=${encodeURIComponent(species)}`;
}

interface LocusLineProps {
  readonly row: LocusRow;
  readonly reading: Reading;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
}

function LocusLine({ row, reading, isOpen, onOpen }: LocusLineProps) {
  const { loci, sex, traits, own, put } = reading;
  const said = traits === null ? null : wordsAt(traits, row, reading);
  return (
    <li class={said === null ? 'locus-line' : 'locus-line locus-line-said'}>
      <button type="button" aria-expanded={isOpen} disabled={traits === null} onClick={onOpen}>
        <strong>{sayNames(row)}</strong>
        <span class="locus-how">
          {sayInheritance(row)} · {sayConfidence(row.confidence)}
          {own.has(row.locus) && <b class="site-row"> · site</b>}
        </span>
        {said !== null && <span class="locus-said">{said}</span>}
      </button>
      {isOpen && traits !== null && (
        <LocusPick
          row={row}
          loci={loci}
          sex={sex}
          code={codeAt(traits, row.locus)}
          put={(copies) => put(row.locus, copies)}
        />
      )}
    </li>
  );
}

function wordsAt(traits: Traits, row: LocusRow, { loci }: Reading): string | null {
  return locusWords(traits, loci).find((one) => one.locus === row.locus)?.long ?? null;
}
