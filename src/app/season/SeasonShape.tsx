import type { Shape } from './words.ts';

/** The marks of the chart around a middle of 0, 0; a stroke where something was begun, a body where something was seen. */
export function ShapeBody({ shape }: { readonly shape: Shape }) {
  switch (shape) {
    case 'paired':
      return <path class="mark-line" d="M0 -7V7" />;
    case 'lock':
      return <path class="mark-body" d="M-2.6 -8H2.6V8H-2.6Z" />;
    case 'follicles':
      return (
        <path
          class="mark-body"
          d="M-4.4 -2.4a2.4 2.4 0 1 0 .01 0M3.6 -5.4a2.4 2.4 0 1 0 .01 0M2.6 2.4a2.4 2.4 0 1 0 .01 0"
        />
      );
    case 'ovulation':
      return <path class="mark-body" d="M0 -8L7 0L0 8L-7 0Z" />;
    case 'pre-lay shed':
      return <path class="mark-open" d="M0 -7L6 0L0 7L-6 0Z" />;
    case 'laid':
      return <ellipse class="mark-body" rx="5.6" ry="7.6" />;
    case 'hatched':
      return (
        <>
          <ellipse class="mark-open" rx="5.6" ry="7.6" />
          <path class="mark-line" d="M-5.4 -1L-2 -3.4L0.6 0.8L3 -2L5.4 0" />
        </>
      );
    case 'born':
      return <path class="mark-body" d="M0 -7.5L7 6H-7Z" />;
    default:
      return shape satisfies never;
  }
}

/** A mark beside its word. */
export function SeasonShape({ shape }: { readonly shape: Shape }) {
  return (
    <svg class="season-shape" viewBox="-10 -10 20 20" width="20" height="20" aria-hidden="true">
      <ShapeBody shape={shape} />
    </svg>
  );
}
