export { lociPage } from './LociToPick.tsx';
export { SaidBack } from './SaidBack.tsx';
export { SetTraits } from './SetTraits.tsx';
export { TraitText } from './TraitText.tsx';
export { type Reading, useTraits } from './useTraits.ts';
export { Welfare } from './Welfare.tsx';
