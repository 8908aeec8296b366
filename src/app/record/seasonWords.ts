import type { SeasonMark, Stage } from '../../core/index.ts';

/** A stage as a heading. */
export const STAGE_WORDS: Readonly<Record<Stage, string>> = {
  resting: 'Resting',
  paired: 'Paired',
  locked: 'Locked',
  follicles: 'Follicles',
  ovulated: 'Ovulated',
  'pre-lay shed': 'Pre-lay shed',
  laid: 'Laid',
  born: 'Gave birth',
  hatched: 'Hatched',
};

/** A mark of the season in words, without whom it was with. */
export function sayMark({ kind, largestMm }: SeasonMark): string {
  switch (kind) {
    case 'follicles':
      return largestMm === undefined ? 'follicles' : `follicles, largest ${largestMm} mm`;
    case 'born':
      return 'gave birth';
    case 'paired':
    case 'lock':
    case 'ovulation':
    case 'pre-lay shed':
    case 'laid':
      return kind;
    default:
      return kind satisfies never;
  }
}
