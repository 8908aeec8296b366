import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import '../look/parts.css';
import { useApp } from '../model/app.ts';
import { AddAnimal } from './AddAnimal.tsx';
import { AddPlace } from './AddPlace.tsx';
import './books.css';
import { DeviceLines } from './DeviceLines.tsx';
import { ExportLog } from './ExportLog.tsx';
import { ImportLog } from './ImportLog.tsx';
import { KeeperForm } from './KeeperForm.tsx';
import { ParkedLines } from './ParkedLines.tsx';
import { PackPart } from './pack/index.ts';
import { RulesForm } from './RulesForm.tsx';
import { SiteForm } from './SiteForm.tsx';

/** Keeper, site, device, backup, and what sync set aside; on a fresh site the first steps come first. */
export function BooksScreen() {
  const { site } = useApp();
  const { animals, places } = site.facility.value;
  const fresh = animals.size === 0;
  // The order stays while the page is open: an import that ends must not move its own report away.
  const [began] = useState(fresh);
  return (
    <section class="screen books" aria-labelledby="books-title">
      <h1 id="books-title">Books</h1>
      {fresh ? (
        <p class="empty">
          No animals yet: import a log, or{' '}
          {places.size === 0 ? 'add a rack with its tubs and then an animal' : 'add an animal'}.
        </p>
      ) : null}
      <div class="books-body">
        {began ? <Steps fresh={began} /> : null}
        <Chapter id="keeper" title="Keeper">
          <KeeperForm />
        </Chapter>
        <Chapter id="backup" title="Backup">
          <DeviceLines />
          <ExportLog />
          {began ? null : <ImportLog />}
        </Chapter>
        {began ? null : (
          <Chapter id="pack" title="Inspector’s pack">
            <PackPart />
          </Chapter>
        )}
        <Chapter id="site" title="Site">
          <SiteForm />
          <p>
            <a class="books-link" href="/loci">
              Loci and trade names
            </a>
          </p>
        </Chapter>
        <Chapter id="rules" title="Rules">
          <RulesForm />
        </Chapter>
        {began ? null : <Steps fresh={began} />}
        <Chapter id="parked" title="Set aside">
          <ParkedLines />
        </Chapter>
      </div>
    </section>
  );
}

function Steps({ fresh }: { readonly fresh: boolean }) {
  const { site } = useApp();
  const [noPlaces] = useState(site.facility.value.places.size === 0);
  return (
    <Chapter id="begin" title={fresh ? 'First steps' : 'Add'}>
      {fresh ? <ImportLog /> : null}
      <details class="add" open={noPlaces}>
        <summary>Add a rack or a place</summary>
        <AddPlace />
      </details>
      <details class="add" open={fresh && !noPlaces}>
        <summary>Add an animal</summary>
        <AddAnimal />
      </details>
    </Chapter>
  );
}

interface ChapterProps {
  readonly id: string;
  readonly title: string;
  readonly children: ComponentChildren;
}

function Chapter({ id, title, children }: ChapterProps) {
  return (
    <section class="chapter" aria-labelledby={`chapter-${id}`}>
      <h2 id={`chapter-${id}`}>{title}</h2>
      {children}
    </section>
  );
}
