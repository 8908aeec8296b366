import { scaleLinear } from 'd3-scale';
import { STOMACH_SHARE } from '../../core/index.ts';

const WIDE = 340;
const EDGE = 14;

/** Where the stomach lies between snout and vent, for orientation only; the depth in cm is the vet’s. */
export function BodyRuler({ stomachMm: [from, to] }: { readonly stomachMm: readonly [number, number] }) {
  const x = scaleLinear([0, 1], [EDGE, WIDE - EDGE]);
  const [left, right] = [x(STOMACH_SHARE.from), x(STOMACH_SHARE.to)];
  const words = `${sayCm(from)} to ${sayCm(to)} from the snout`;
  return (
    <figure class="syringe">
      <svg class="ruler" viewBox={`0 0 ${WIDE} 66`} role="img" aria-label={`The stomach lies about ${words}`}>
        <path class="body-line" d={`M${EDGE} 30H${WIDE - EDGE}`} />
        <path class="body-stomach" d={`M${left} 22V38M${right} 22V38M${left} 30H${right}`} />
        <text class="ruler-number" x={EDGE} y={14}>
          snout
        </text>
        <text class="ruler-number" x={WIDE - EDGE} y={14} text-anchor="end">
          vent
        </text>
        <text class="ruler-volume" x={(left + right) / 2} y={58} text-anchor="middle">
          {sayCm(from)} – {sayCm(to)}
        </text>
      </svg>
      <figcaption>
        The stomach lies about {words}: for orientation only. The tube never goes past half the body (common practice),
        and the depth in cm is the vet’s.
      </figcaption>
    </figure>
  );
}

function sayCm(mm: number): string {
  return `${Number((mm / 10).toFixed(1))} cm`;
}
