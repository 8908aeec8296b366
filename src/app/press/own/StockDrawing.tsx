import type { PaperUnit } from '../../../../print/stocks/lengths.ts';
import type { BoxMm } from '../../../../print/stocks/stock.ts';
import { sayLength } from './stockDraft.ts';
import type { StockPicture } from './stockPicture.ts';

interface StockDrawingProps {
  readonly picture: StockPicture | null;
  readonly unit: PaperUnit;
}

/** The page and its labels to scale: hatched where labels lie on each other, heavy and crossed out where one leaves the page. */
export function StockDrawing({ picture, unit }: StockDrawingProps) {
  if (picture === null)
    return (
      <div class="stock-drawing">
        <p class="soft">The sheet is drawn here once its width and height are read.</p>
      </div>
    );
  const { pageMm, insetMm, on, off, overlaps, viewMm } = picture;
  const [width, height] = pageMm;
  const stroke = viewMm[2] / 240;
  const first = on[0] ?? off[0];
  return (
    <figure class="stock-drawing">
      <svg viewBox={viewMm.join(' ')} role="img" aria-label={sayPicture(picture, unit)} style={{ strokeWidth: stroke }}>
        <defs>
          <pattern
            id="lies-on"
            width={stroke * 5}
            height={stroke * 5}
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <rect class="lies-on-line" width={stroke * 2} height={stroke * 5} />
          </pattern>
        </defs>
        <rect class="drawn-page" width={width} height={height} />
        <path class="drawn-label" d={pathOf(on)} />
        <path class="drawn-off" d={off.map(crossed).join('')} style={{ strokeWidth: stroke * 2 }} />
        <path class="drawn-overlap" d={pathOf(overlaps)} fill="url(#lies-on)" />
        {insetMm > 0 && insetMm * 2 < Math.min(width, height) ? (
          <rect class="drawn-reach" x={insetMm} y={insetMm} width={width - 2 * insetMm} height={height - 2 * insetMm} />
        ) : null}
        {first === undefined ? null : (
          <text
            class="drawn-first"
            x={first[0] + first[2] / 2}
            y={first[1] + first[3] / 2}
            font-size={firstSize(first)}
          >
            1
          </text>
        )}
      </svg>
      <figcaption>
        <p role="status">{sayPicture(picture, unit)}</p>
      </figcaption>
    </figure>
  );
}

/** What is drawn in words, and what stays free at the far edges: that is quickly compared with the sheet in hand. */
export function sayPicture({ pageMm, on, off, overlaps }: StockPicture, unit: PaperUnit): string {
  const say = (mm: number): string => sayLength(mm, unit);
  const count = on.length + off.length;
  const labels = count === 1 ? '1 label' : `${count} labels`;
  const page = `on ${say(pageMm[0])} × ${say(pageMm[1])}`;
  if (count === 0) return `An empty page ${page.slice(3)}.`;
  if (overlaps.length > 0) return `${labels} ${page}: hatched where they lie on each other.`;
  if (off.length > 0) return `${labels} ${page}: ${off.length === 1 ? '1 leaves' : `${off.length} leave`} the page.`;
  const right = pageMm[0] - Math.max(...on.map(([x, , width]) => x + width));
  const below = pageMm[1] - Math.max(...on.map(([, y, , height]) => y + height));
  return `${labels} ${page}; ${say(Math.max(0, right))} stay free at the right, ${say(Math.max(0, below))} at the bottom.`;
}

function pathOf(boxes: readonly BoxMm[]): string {
  return boxes.map(([x, y, width, height]) => `M${x} ${y}h${width}v${height}h${-width}z`).join('');
}

function crossed([x, y, width, height]: BoxMm): string {
  return `M${x} ${y}h${width}v${height}h${-width}zl${width} ${height}m0 ${-height}l${-width} ${height}`;
}

function firstSize([, , width, height]: BoxMm): number {
  return Math.min(width, height) * 0.5;
}
