import { useEffect, useRef, useState } from 'preact/hooks';
import type { PackPaper, PrintedDocument } from '../../../print/index.ts';
import type { ListSheet, Problem } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { releaseLater } from '../model/files.ts';
import type { ListsAnswer } from '../workers/printMessages.ts';
import { type Printing, startListing } from './printing.ts';

/** Lists on their way to paper. */
export type Listing =
  | { readonly at: 'idle' }
  | { readonly at: 'working' }
  | ({ readonly at: 'ready'; readonly url: string; readonly pdf: Blob } & Omit<PrintedDocument, 'pdf'>)
  | { readonly at: 'failed'; readonly problem: Problem };

export interface ListingModel {
  readonly listing: Listing;
  make(): void;
  stop(): void;
}

const IDLE: Listing = { at: 'idle' };

/** One PDF of lists at a time; other lists or another paper put the last one away. */
export function useListing(sheets: readonly ListSheet[], paper: PackPaper): ListingModel {
  const { site } = useApp();
  const [listing, setListing] = useState<Listing>(IDLE);
  const printing = useRef<Printing<ListsAnswer> | null>(null);
  const order = [paper, ...sheets.map(({ revision }) => revision)].join();
  function stop(): void {
    printing.current?.stop();
    printing.current = null;
    setListing(IDLE);
  }
  useEffect(() => stop, [order]);
  const url = listing.at === 'ready' ? listing.url : null;
  useEffect(() => (url === null ? undefined : () => releaseLater(url)), [url]);
  function make(): void {
    stop();
    const started = startListing({ lists: { sheets, paper, host: site.facility.value.site.host } });
    printing.current = started;
    setListing({ at: 'working' });
    void started.answer.then((answer) => {
      if (printing.current !== started) return;
      if (answer.kind === 'failed') return setListing({ at: 'failed', problem: answer.problem });
      const { manifest, missing } = answer;
      const pdf = new Blob([answer.pdf], { type: 'application/pdf' });
      setListing({ at: 'ready', url: URL.createObjectURL(pdf), pdf, manifest, missing });
    });
  }
  return { listing, make, stop };
}
