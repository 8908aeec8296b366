import '../look/parts.css';
import { useApp } from '../model/app.ts';
import './books.css';
import { LookChoice } from './LookChoice.tsx';
import { VERSION } from './version.ts';

/** What is not walked every day: print, books, the look, and the cautions. */
export function MoreScreen() {
  const { site, settings } = useApp();
  const { animals } = site.facility.value;
  return (
    <section class="screen more" aria-labelledby="more-title">
      <h1 id="more-title">More</h1>
      <nav aria-label="More">
        <ul class="more-lines">
          <MoreLine to="/print" words="Print" says="tub cards, place labels, clutch tags, egg marks, stamps" />
          <MoreLine to="/arrive" words="Arrival" says="an animal arrives: papers, quarantine place, its card" />
          <MoreLine to="/quarantine" words="Quarantine" says="who, since when and until when, what is due" />
          <MoreLine to="/season" words="Season" says="females by month, this week, the plan" />
          <MoreLine to="/treatments" words="Treatments" says="who gets a dose today, rechecks" />
          <MoreLine to="/freezer" words="Freezer" says="lots, use by, thawed and thrown away, what to order" />
          <MoreLine to="/shop" words="Shop" says="wares, shed items, animals on offer, sales by scan" />
          <MoreLine to="/pairing" words="Pairings" says="two scans and what the young can be" />
          <MoreLine to="/enclosures" words="Enclosures" says="inside sizes, compared with published rules" />
          <MoreLine
            to="/books"
            words="Books"
            says={
              animals.size === 0
                ? 'begin here: import a log, or add a rack and an animal'
                : 'keeper, backup, export, site'
            }
          />
        </ul>
      </nav>
      {settings.keeper.value === '' ? (
        <p class="more-keeper">
          Nobody’s name is on this device yet. <a href="/books">Write yours in Books</a>.
        </p>
      ) : null}
      <LookChoice />
      <Safety />
      <p class="soft more-version">Tubwright {VERSION}. The log stays on this device and your own hub.</p>
    </section>
  );
}

function MoreLine({ to, words, says }: { readonly to: string; readonly words: string; readonly says: string }) {
  return (
    <li>
      <a href={to}>
        <strong>{words}</strong>
        <span>{says}</span>
      </a>
    </li>
  );
}

const CAUTIONS = [
  [
    'The vet decides',
    'This tool never proposes a drug or a dose. It shows what a vet wrote, and holds what needs a vet’s word.',
  ],
  ['Tube feeding', 'It can kill an animal. Only as a vet showed you, on that animal.'],
  [
    'Big and venomous animals',
    'Never alone: two trained people, the site’s own protocol, licence and local code. A card is no substitute for any of them.',
  ],
  ['Disinfectants', 'Animal out first; dilution and contact time as the label says; never mixed; rinse and dry.'],
  [
    'Salmonella',
    'Reptiles and rodents can carry it. Wash hands after each rack; no food in the room; small children and people with weak immunity stay away.',
  ],
  [
    'Figures',
    'Feed plans are starting points with their source beside them. Look at the animal before you believe a figure.',
  ],
] as const;

function Safety() {
  return (
    <section class="safety" aria-labelledby="safety-title">
      <h2 id="safety-title">Before anything else</h2>
      <dl>
        {CAUTIONS.map(([about, says]) => (
          <div key={about}>
            <dt>{about}</dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
