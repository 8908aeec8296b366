import type { Facility } from '../../core/index.ts';
import type { Spot, Tree, Way } from './layout.ts';
import { nodeWords, saySpot } from './nodeWords.ts';

interface AncestorListProps {
  readonly facility: Facility;
  readonly tree: Tree;
}

/** The same as the drawing in nested lines, for readers of the page and for whoever likes words better. */
export function AncestorList({ facility, tree }: AncestorListProps) {
  const byWay = new Map(tree.spots.map((spot) => [spot.way, spot]));
  return (
    <details class="ancestor-list">
      <summary>The same as a list</summary>
      <ul>
        <Line spot={byWay.get('')} byWay={byWay} facility={facility} />
      </ul>
    </details>
  );
}

interface LineProps {
  readonly spot: Spot | undefined;
  readonly byWay: ReadonlyMap<Way, Spot>;
  readonly facility: Facility;
}

function Line({ spot, byWay, facility }: LineProps) {
  if (spot === undefined) return null;
  const words = nodeWords(facility, spot.id);
  const said = saySpot(spot, words);
  const above = byWay.has(`${spot.way}S`);
  return (
    <li>
      {words === null ? said : <a href={`/animal/${words.animal.id}`}>{said}</a>}
      {above && (
        <ul>
          <Line spot={byWay.get(`${spot.way}S`)} byWay={byWay} facility={facility} />
          <Line spot={byWay.get(`${spot.way}D`)} byWay={byWay} facility={facility} />
        </ul>
      )}
    </li>
  );
}
