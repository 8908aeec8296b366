export {
  decideLeaving,
  type Leaving,
  leavingNotes,
  lostCaution,
  saleFault,
  sayLeaving,
} from './decideLeaving.ts';
