import type { Form, Spot, Way } from './layout.ts';
import { measuresOf, pointOf, TAIL_PX } from './measures.ts';
import { type NodeWords, sayAbove, saySpot } from './nodeWords.ts';
import { sayWay } from './walk.ts';

interface TreeNodeProps {
  readonly spot: Spot;
  readonly words: NodeWords;
  readonly form: Form;
  readonly isAt: boolean;
  readonly isOpen: boolean;
  /** The animal stands here more than once, and one of its places is looked at. */
  readonly isSame: boolean;
  peek(way: Way): void;
}

/** The words of one animal, on its line; a touch peeks at it. */
export function TreeNode({ spot, words, form, isAt, isOpen, isSame, peek }: TreeNodeProps) {
  const { name, id, year, gone, traits, traitsLong } = words;
  const isHere = spot.way === '';
  const facts = form === 'beside' ? [id, year, gone] : [words.animal.sex, year, gone, traits];
  return (
    <button
      type="button"
      class={`tree-node${isHere ? ' tree-here' : ''}${isSame ? ' tree-same' : ''}${gone === null ? '' : ' tree-gone'}`}
      data-way={spot.way}
      style={boxOf(spot, form)}
      tabIndex={isAt ? 0 : -1}
      aria-label={saySpot(spot, words)}
      aria-expanded={isOpen}
      onClick={() => peek(spot.way)}
    >
      <span class="tree-name">
        <strong>{name}</strong>
        {spot.mark !== null && <i class="tree-mark">{spot.mark}</i>}
        {form === 'below' && <End spot={spot} />}
      </span>
      <span class="tree-facts">{facts.filter(Boolean).join(' · ')}</span>
      {form === 'beside' && (
        <>
          <span class="tree-traits" title={traitsLong}>
            {traits}
          </span>
          <End spot={spot} />
        </>
      )}
    </button>
  );
}

/** The word at an open end of the line; the mark stands beside the name already. */
function End({ spot }: { readonly spot: Spot }) {
  const isAgain = spot.is === 'again' || spot.is === 'ring';
  const words = isAgain ? (spot.is === 'ring' ? 'again: a ring' : 'again') : sayAbove(spot);
  return words && <em class={spot.is === 'ring' ? 'tree-end tree-ring' : 'tree-end'}>{words}</em>;
}

/** A parent that nobody knows: an open end with the word in it. */
export function UnknownEnd({ spot, form }: { readonly spot: Spot; readonly form: Form }) {
  const role = spot.way.endsWith('S') ? 'sire' : 'dam';
  return (
    <p class="tree-node tree-unknown" style={boxOf(spot, form)} title={sayWay(spot.way)}>
      {role} unknown
    </p>
  );
}

/** Room for the double outline of an animal that is drawn again. */
const SHAPE_PX = 14;

function boxOf(spot: Spot, form: Form): Record<string, string> {
  const measures = measuresOf(form);
  const { top, x } = pointOf(spot, measures);
  const left = x + SHAPE_PX;
  const size = { left: `${left}px`, top: `${Math.round(top)}px`, height: `${measures.rowPx}px` };
  if (form === 'below') return { ...size, right: '0' };
  const tail = spot.above === 'drawn' ? 0 : TAIL_PX;
  return { ...size, width: `${measures.columnPx - 2 * SHAPE_PX + tail}px` };
}
