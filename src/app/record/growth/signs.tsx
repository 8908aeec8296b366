import type { ComponentChildren } from 'preact';

interface At {
  readonly x: number;
  readonly y: number;
  readonly children?: ComponentChildren;
}

/** A weighing; hollow where the entry check asked about it and it was confirmed. */
export function WeighingDot({ x, y, doubted, children }: At & { readonly doubted: boolean }) {
  return (
    <circle class={doubted ? 'growth-hollow' : 'growth-solid'} cx={x} cy={y} r={doubted ? 4 : 3.4}>
      {children}
    </circle>
  );
}

interface FeedBarProps {
  readonly x: number;
  readonly ground: number;
  readonly width: number;
  readonly height: number;
  readonly taken: boolean;
}

/** A hollow bar that is narrower than this looks filled. */
const LEAST_HOLLOW = 4.5;

/** A feed, as high as its grams; a refused one is hollow. */
export function FeedBar({ x, ground, width: wide, height, taken }: FeedBarProps) {
  const width = taken ? wide : Math.max(wide, LEAST_HOLLOW);
  return (
    <rect
      class={taken ? 'growth-solid' : 'growth-hollow'}
      x={x - width / 2}
      y={ground - height}
      width={width}
      height={height}
    />
  );
}

export function ShedSign({ x, y }: At) {
  return <path class="growth-hollow" d={`M${x - 5} ${y}l5 -6 5 6 -5 6z`} />;
}

export function LayingSign({ x, y }: At) {
  return <path class="growth-solid" d={`M${x - 6} ${y - 5}h12l-6 11z`} />;
}

export function TreatmentSign({ x, y, children }: At) {
  return (
    <path class="growth-solid" d={`M${x - 1.5} ${y - 6}h3v4.5h4.5v3h-4.5v4.5h-3v-4.5h-4.5v-3h4.5z`}>
      {children}
    </path>
  );
}
