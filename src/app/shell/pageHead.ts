import { useEffect } from 'preact/hooks';
import { nameOf, parseId } from '../../core/index.ts';
import { sayClutch } from '../clutch/sayClutch.ts';
import type { App } from '../model/app.ts';

const WORDS: Readonly<Record<string, string>> = {
  '/': 'Scan',
  '/rounds': 'Rounds',
  '/rounds/run': 'Open round',
  '/racks': 'Racks',
  '/enclosures': 'Enclosures',
  '/find': 'Find',
  '/more': 'More',
  '/print': 'Print',
  '/print/stock': 'Paper of your own',
  '/print/printer': 'Printer of your own',
  '/print/calibration': 'Calibration',
  '/books': 'Books',
  '/pairing': 'Pairing',
  '/freezer': 'Freezer',
  '/freezer/order': 'Order of prey',
  '/arrive': 'Arrival',
  '/quarantine': 'Quarantine',
  '/loci': 'Loci and trade names',
  '/treatments': 'Treatments',
  '/season': 'Season',
  '/season/plan': 'Season plan',
  '/season/project': 'Project sheet',
};

/** Keeps the page's title and the colour of the browser's bar to what is shown. */
export function usePageHead(app: App, path: string): void {
  const title = `${titleOf(app, path)} · Tubwright`;
  const look = app.settings.look.value;
  useEffect(() => {
    document.title = title;
  }, [title]);
  useEffect(() => {
    const paper = getComputedStyle(document.documentElement).getPropertyValue('--paper');
    document.querySelector('meta[name="theme-color"]')?.setAttribute('content', paper.trim());
  }, [look]);
}

function titleOf({ site }: App, path: string): string {
  const words = WORDS[path];
  if (words !== undefined) return words;
  // What a page is about may stand before what it shows of it: /animal/ID/parents.
  const read = path
    .split('/')
    .map(parseId)
    .find((one) => one.ok);
  if (!read?.ok) return 'Not here';
  const facility = site.facility.value;
  const clutch = facility.clutches.get(read.value.id);
  return clutch === undefined ? nameOf(facility, read.value.id) : sayClutch(facility, clutch);
}
