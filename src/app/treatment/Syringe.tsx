import { scaleLinear } from 'd3-scale';
import { type Drawn, sayMl } from '../../core/index.ts';

const WIDE = 340;
const EDGE = 14;
const TOP = 34;
const BARREL = 30;
/** More marks than these cannot be counted on a phone, so those around the volume are drawn again, larger. */
const COUNTABLE = 40;
const AROUND = 5;

/** The syringe as a ruler: its marks, how far it is filled, and the volume as a number. */
export function Syringe({ drawn }: { readonly drawn: Drawn }) {
  const { ml, syringeMl, markMl } = drawn;
  const isFine = syringeMl / markMl > COUNTABLE;
  const from = Math.max(0, ml - AROUND * markMl);
  const to = Math.min(syringeMl, Math.max(ml, from) + AROUND * markMl);
  return (
    <figure class="syringe">
      <Ruler drawn={drawn} from={0} to={syringeMl} />
      {isFine && <Ruler drawn={drawn} from={from} to={to} near />}
      <figcaption>
        {sayMl(syringeMl)} syringe, one mark is {sayMl(markMl)}
        {isFine && '; below, the marks around it'}
      </figcaption>
    </figure>
  );
}

interface RulerProps {
  readonly drawn: Drawn;
  readonly from: number;
  readonly to: number;
  readonly near?: boolean;
}

function Ruler({ drawn, from, to, near = false }: RulerProps) {
  const { ml, markMl } = drawn;
  const x = scaleLinear([from, to], [EDGE, WIDE - EDGE]);
  const at = x(ml);
  const numbers = near ? [...new Set([from, ml, to])] : x.ticks(5);
  return (
    <svg
      class={near ? 'ruler ruler-near' : 'ruler'}
      viewBox={`0 0 ${WIDE} 92`}
      role="img"
      aria-label={near ? `The marks around ${sayMl(ml)}` : `${sayMl(ml)} on the ${sayMl(drawn.syringeMl)} syringe`}
    >
      <rect class="ruler-filled" x={EDGE} y={TOP} width={Math.max(0, at - EDGE)} height={BARREL} />
      <path class="ruler-barrel" d={`M${EDGE} ${TOP}H${WIDE - EDGE}V${TOP + BARREL}H${EDGE}Z`} />
      {marksOf(from, to, markMl).map(({ value, long }) => (
        <path key={value} class="ruler-mark" d={`M${x(value)} ${TOP + BARREL}v${long ? -16 : -9}`} />
      ))}
      {numbers.map((value) => (
        <text key={value} class="ruler-number" x={x(value)} y={TOP + BARREL + 18} text-anchor="middle">
          {clean(value)}
        </text>
      ))}
      <path class="ruler-here" d={`M${at} ${TOP + BARREL}V${TOP - 4}l-7 -10h14l-7 10`} />
      <text class="ruler-volume" x={within(at)} y={14} text-anchor="middle">
        {sayMl(ml)}
      </text>
    </svg>
  );
}

function marksOf(from: number, to: number, markMl: number) {
  const [first, last] = [Math.round(from / markMl), Math.round(to / markMl)];
  return Array.from({ length: last - first + 1 }, (_, at) => ({
    value: clean((first + at) * markMl),
    long: (first + at) % 5 === 0,
  }));
}

/** A number stays inside of the drawing at both ends of the barrel. */
function within(x: number): number {
  return Math.min(Math.max(x, 34), WIDE - 34);
}

function clean(value: number): number {
  return Number(value.toFixed(4));
}
