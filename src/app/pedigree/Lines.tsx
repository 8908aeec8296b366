import type { Form, Spot, Tree, Way } from './layout.ts';
import { heightOf, measuresOf, pointOf, widthOf } from './measures.ts';
import type { Sex } from './SexShape.tsx';
import { Shape } from './SexShape.tsx';

interface LinesProps {
  readonly tree: Tree;
  readonly form: Form;
  readonly look: (spot: Spot) => ShapeLook | null;
  /** Whose parents are related: their line is double, as in drawn pedigrees everywhere. */
  readonly related: ReadonlySet<string>;
}

/** How an animal's shape is drawn. */
export interface ShapeLook {
  readonly sex: Sex;
  readonly isDead: boolean;
}

/** The ruled lines and the shapes, without words. */
export function Lines({ tree, form, look, related }: LinesProps) {
  const byWay = new Map(tree.spots.map((spot) => [spot.way, spot]));
  return (
    <svg class="tree-lines" width={widthOf(tree, form)} height={heightOf(tree, form)} aria-hidden="true">
      {tree.spots.map((spot) => (
        <path key={`line ${spot.way}`} class={`tree-line tree-line-${spot.is}`} d={lineOf(spot, form)} />
      ))}
      {form === 'beside' &&
        tree.spots.map((spot) => <path key={`end ${spot.way}`} class="tree-line tree-line-open" d={openEnd(spot)} />)}
      {tree.spots.map((spot) => (
        <Parents
          key={`parents ${spot.way}`}
          spot={spot}
          byWay={byWay}
          form={form}
          isDouble={related.has(spot.id ?? '')}
        />
      ))}
      {tree.spots.map((spot) => {
        const shape = look(spot);
        const { x, y } = pointOf(spot, measuresOf(form));
        return shape && <Shape key={`shape ${spot.way}`} x={x} y={y} {...shape} isAgain={spot.is !== 'drawn'} />;
      })}
    </svg>
  );
}

/** Beside, the line that the words stand on; below, the tick from the young’s line to the shape. */
function lineOf(spot: Spot, form: Form): string {
  const measures = measuresOf(form);
  const { left, x, y } = pointOf(spot, measures);
  if (form === 'beside') return `M${left} ${y}H${left + measures.columnPx - (spot.above === 'drawn' ? 0 : END_PX)}`;
  return spot.column === 0 ? '' : `M${x - measures.columnPx} ${y}H${x}`;
}

/** Where no parents are drawn, the line ends in dots, short of its word. */
function openEnd(spot: Spot): string {
  const measures = measuresOf('beside');
  const { left, y } = pointOf(spot, measures);
  const end = left + measures.columnPx;
  return spot.above === 'drawn' || spot.is === 'unknown' ? '' : `M${end - END_PX + 4} ${y}H${end}`;
}

/** How far short of the next column open ends stop. */
const END_PX = 26;
/** Half of the gap of a double line. */
const GAP_PX = 2;

interface ParentsProps {
  readonly spot: Spot;
  readonly byWay: ReadonlyMap<Way, Spot>;
  readonly form: Form;
  readonly isDouble: boolean;
}

/** The upright line that joins a sire and a dam, and hangs their young on it. */
function Parents({ spot, byWay, form, isDouble }: ParentsProps) {
  const [sire, dam] = [byWay.get(`${spot.way}S`), byWay.get(`${spot.way}D`)];
  if (sire === undefined || dam === undefined) return null;
  const measures = measuresOf(form);
  const young = pointOf(spot, measures);
  const x = form === 'beside' ? young.left + measures.columnPx : young.x;
  const from = form === 'beside' ? pointOf(sire, measures).y : young.y;
  const upright = (at: number): string => `M${at} ${from}V${pointOf(dam, measures).y}`;
  return <path class="tree-line" d={isDouble ? `${upright(x - GAP_PX)}${upright(x + GAP_PX)}` : upright(x)} />;
}
