import { useMemo, useState } from 'preact/hooks';
import type { PackPaper } from '../../../print/index.ts';
import type { Id, ListSheet } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { WhatLine } from './ChooseWhat.tsx';
import { DocumentReadBack } from './DocumentReadBack.tsx';
import {
  askedPlace,
  LIST_WORDS,
  type ListKind,
  type ListPlace,
  listPlaces,
  listSheets,
  sayListed,
  sayLists,
} from './lists.ts';
import { MissingSigns } from './MissingSigns.tsx';
import { PdfPreview } from './PdfPreview.tsx';
import { useListing } from './useListing.ts';

interface ListPressProps {
  readonly kind: ListKind;
  /** The place that the address asked for. */
  readonly only: string | undefined;
}

/** Lists on whole pages: the sale list, or a sheet for each rack. */
export function ListPress({ kind, only }: ListPressProps) {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const today = clock.today.value;
  const places = useMemo(() => listPlaces(facility), [facility]);
  const asked = useMemo(() => askedPlace(facility, only), [facility, only]);
  const [place, setPlace] = useState<Id | null>(asked.id);
  const [paper, setPaper] = useState<PackPaper>(rememberedPaper);
  const sheets = useMemo(() => listSheets(facility, kind, place, today), [facility, kind, place, today]);
  function lay(next: PackPaper): void {
    setPaper(next);
    localStorage.setItem(KEY, next);
  }
  return (
    <div class="press-body">
      <div>
        {asked.problem === null ? null : <ProblemLine problem={asked.problem} />}
        {kind === 'rack-sheet' && places.length > 0 ? (
          <ChoosePlace places={places} place={place} setPlace={setPlace} />
        ) : null}
        <ChoosePage paper={paper} lay={lay} />
      </div>
      <ListPanel kind={kind} sheets={sheets} paper={paper} />
    </div>
  );
}

const KEY = 'press-lists';

function rememberedPaper(): PackPaper {
  return localStorage.getItem(KEY) === 'letter' ? 'letter' : 'a4';
}

interface ChoosePlaceProps {
  readonly places: readonly ListPlace[];
  readonly place: Id | null;
  readonly setPlace: (place: Id | null) => void;
}

function ChoosePlace({ places, place, setPlace }: ChoosePlaceProps) {
  const first = (places.find(({ isRack }) => isRack) ?? places[0])?.id ?? null;
  return (
    <fieldset class="press-what">
      <legend>What</legend>
      <WhatLine
        id="all"
        words="Every rack, each on pages of its own"
        count={null}
        isChosen={place === null}
        choose={() => setPlace(null)}
      />
      <WhatLine
        id="one"
        words="One rack, room or exhibit"
        count={null}
        isChosen={place !== null}
        choose={() => setPlace(first)}
      >
        {place === null ? null : (
          <select
            aria-label="Rack, room or exhibit"
            value={place}
            onChange={(event) => {
              const picked = places.find(({ id }) => id === event.currentTarget.value);
              if (picked !== undefined) setPlace(picked.id);
            }}
          >
            {places.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        )}
      </WhatLine>
    </fieldset>
  );
}

function ChoosePage({ paper, lay }: { readonly paper: PackPaper; readonly lay: (paper: PackPaper) => void }) {
  return (
    <fieldset class="press-paper">
      <legend>Paper</legend>
      <div class="field">
        <label for="list-paper">Page</label>
        <select
          id="list-paper"
          value={paper}
          onChange={(event) => lay(event.currentTarget.value === 'letter' ? 'letter' : 'a4')}
        >
          <option value="a4">A4</option>
          <option value="letter">Letter</option>
        </select>
      </div>
    </fieldset>
  );
}

interface ListPanelProps {
  readonly kind: ListKind;
  readonly sheets: readonly ListSheet[];
  readonly paper: PackPaper;
}

function ListPanel({ kind, sheets, paper }: ListPanelProps) {
  const { listing, make, stop } = useListing(sheets, paper);
  const name = sheets.length === 1 ? LIST_WORDS[kind].one : LIST_WORDS[kind].name.toLowerCase();
  return (
    <section class="run" aria-labelledby="run-title">
      <h2 id="run-title">Run</h2>
      {sheets.length === 0 ? <p class="done-line">{LIST_WORDS[kind].none}</p> : null}
      {sheets.length > 0 && (listing.at === 'idle' || listing.at === 'failed') ? (
        <button type="button" class="primary" onClick={make}>
          Make the PDF of {sayLists(kind, sheets.length)}
        </button>
      ) : null}
      <div aria-live="polite">
        {listing.at === 'working' ? (
          <div class="run-working">
            <label>
              Setting {sayLists(kind, sheets.length)}…
              <progress />
            </label>
            <button type="button" class="secondary" onClick={stop}>
              Stop
            </button>
          </div>
        ) : null}
        {listing.at === 'failed' ? <ProblemLine problem={listing.problem} /> : null}
        {listing.at === 'ready' ? (
          <>
            <p class="made-figures">{sayListed(sheets, listing.manifest.pages.length)}</p>
            <MissingSigns signs={listing.missing} />
            <DocumentReadBack pdf={listing.pdf} manifest={listing.manifest} />
          </>
        ) : null}
      </div>
      {listing.at === 'ready' ? <PdfPreview url={listing.url} name={name} /> : null}
    </section>
  );
}
