export type {
  GeneticAnswers,
  GeneticAsk,
  GeneticProgress,
  LineageAnswer,
  Share,
  YoungAnswer,
} from '../workers/geneticsMessages.ts';
export { type Asking, startGenetics } from './asking.ts';
export { Chance, ChanceFigure } from './Chance.tsx';
export { sayAboutPercent, sayExpected, sayPercent } from './sayPercent.ts';
export { type Asked, useAsked } from './useAsked.ts';
